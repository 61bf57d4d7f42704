import RestwaterCore

/// One line of a list: its text and details below, its key, and what a screen reader says of either.
struct ListLine {
    let says: String
    var more = ""
    let spoken: String
    let key: String
    let keySpoken: String
    let tag: String
    let ask: Ask
}

extension Sheet {
    /// A list of lines, each with a key of 15 mm on the side of the thumb; the pager turns pages if they don't all fit. Lines of large
    /// text share out the height of their page.
    mutating func list(_ lines: [ListLine], in place: Rect, _ slate: Slate, page number: Int) {
        func page(_ number: Int) -> GridPage {
            listPage(place: place, pxPerMm: slate.mm, lines: UInt32(lines.count), page: UInt32(number), large: slate.layout.apart)
        }
        let pages = Int(page(0).pages)
        let open = page(number % pages)
        for (i, (line, at)) in zip(lines.dropFirst(Int(open.first)), open.places).enumerated() {
            put(line, at: at, slate, order: 20 + Double(i))
        }
        pager(number % pages, of: pages, slate, .moreGrid)
    }

    private mutating func put(_ line: ListLine, at place: Rect, _ slate: Slate, order: Double) {
        let key = keyPlace(place, slate)
        let gap = 2 * slate.mm
        let left = slate.glass.leftHanded ? key.right + gap : place.left
        let text = place.with(left: left, width: place.width - key.width - gap)
        let body = slate.text.body
        let says = slate.letters.height(line.says, em: body, width: text.width, weight: .bold)
        let more = slate.letters.height(line.more, em: body * 0.9, width: text.width)
        let first = line.more.isEmpty ? text.height : lineSays(height: text.height, pxPerMm: slate.mm, says: says, details: more)
        let marks =
            slate.write.fit(line.says, em: body, in: text.local.with(height: first), weight: .bold)
            + slate.write.fit(line.more, em: body * 0.9, in: text.local.with(top: first, height: text.height - first))
        put("says-\(line.tag)", marks, spoken: line.spoken, at: text, order: order)
        self.key(
            line.tag, KeyFace(line.key, spoken: line.keySpoken), em: slate.text.secondary * 0.9, sub: 0, at: key, slate, order: order + 0.5,
            line.ask)
    }

    private func keyPlace(_ place: Rect, _ slate: Slate) -> Rect {
        let width = 21 * slate.mm
        return place.with(left: slate.glass.leftHanded ? place.left : place.right - width, width: width)
    }
}
