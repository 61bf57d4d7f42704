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
        let (height, gap) = (15 * slate.mm, 3 * slate.mm)
        let perPage = max(1, Int((place.height + gap) / (height + gap)))
        let pages = max(1, (lines.count + perPage - 1) / perPage)
        let shown = lines.dropFirst(number % pages * perPage).prefix(perPage)
        let roomy = (place.height + gap) / Double(max(1, shown.count)) - gap
        let high = slate.layout.apart ? max(height, min(roomy, 26 * slate.mm)) : height
        func row(_ i: Int) -> Rect { place.with(top: place.top + Double(i) * (high + gap), height: high) }
        for (i, line) in shown.enumerated() {
            put(line, at: row(i), slate, order: 20 + Double(i))
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
        let least = 15 * slate.mm
        // Neither has less than at 100 %; beyond that each has its share of the lines.
        let first = line.more.isEmpty ? text.height : max(least * 0.42, min(text.height * says / (says + more), text.height - least * 0.58))
        let marks =
            slate.write.fit(line.says, em: slate.text.body, in: text.local.with(height: first), weight: .bold)
            + slate.write.fit(line.more, em: slate.text.body * 0.9, in: text.local.with(top: first, height: text.height - first))
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
