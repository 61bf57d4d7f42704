import RestwaterCore

/// Where text stands across its place.
enum Across { case start, centre, end }

/// Text as marks.
struct Words {
    let letters: Letters

    /// A text in the size asked for, or the largest below it that shows the whole of it.
    func fit(
        _ text: String, em: Double, in place: Rect, tint: Tint = .ink, weight: Weight = .medium, across: Across = .start,
        middle: Bool = true, oneLine: Bool = false
    ) -> [Mark] {
        guard !text.isBlank, place.width > 0, place.height > 0 else { return [] }
        let fitted = letters.fit(text, em: em, width: place.width, height: place.height, weight: weight, most: oneLine ? 1 : 99)
        let top = middle ? max(0, (place.height - fitted.height) / 2) : 0
        return lay(fitted, in: place.with(top: place.top + top), tint: tint, weight: weight, across: across)
    }

    func lay(_ fitted: Fitted, in place: Rect, tint: Tint, weight: Weight, across: Across = .start) -> [Mark] {
        fitted.lines.enumerated().map { i, line in
            let spare = place.width - letters.width(line, fitted.em, weight)
            let share: Double =
                switch across {
                case .start: 0
                case .centre: 0.5
                case .end: 1
                }
            let left = place.left + max(0, spare) * share
            let base = Letters.baseline(top: place.top + Double(i) * fitted.em * Letters.line, em: fitted.em)
            return .text(Letter(line, at: Point(left, base), em: fitted.em, weight: weight, tint: tint))
        }
    }

    /// The first sentence large, the second whole below it, then as many of the others as fit.
    func sentences(_ first: String, _ others: [String], em: Double, small: Double, in place: Rect) -> [Mark] {
        let below = others.filter { !$0.isBlank }
        let line = em * Letters.line + 1
        let alone = letters.fit(first, em: em, width: place.width, height: min(line, place.height), weight: .bold)
        // The first keeps one line where it is hardly smaller for it.
        let largest = alone.em < em * 0.85 ? em : alone.em
        guard let second = below.first else {
            return lay(letters.fit(first, em: largest, width: place.width, height: place.height, weight: .bold), in: place, tint: .ink, weight: .bold)
        }
        let (head, why) = two(first, second, em: largest, small: small, in: place)
        var marks = lay(head, in: place, tint: .ink, weight: .bold)
        marks += lay(why, in: place.with(top: place.top + head.height), tint: .ink, weight: .medium)
        var y = head.height + why.height
        for sentence in below.dropFirst() {
            let room = place.height - y
            if room < small * Letters.line * 0.8 { break }
            let next = letters.fit(sentence, em: why.em, width: place.width, height: room)
            if !next.whole || next.em < small * 0.7 { break }
            marks += lay(next, in: place.with(top: place.top + y), tint: .ink, weight: .medium)
            y += next.height
        }
        return marks
    }

    /// The largest size at which both stand whole: the second says why the first does, so it is made smaller and never left out.
    private func two(_ first: String, _ second: String, em: Double, small: Double, in place: Rect) -> (Fitted, Fitted) {
        var share = 1.0
        while true {
            let head = letters.lay(first, em: em * max(share, Self.smallestFirst), width: place.width, height: place.height, weight: .bold)
            let next = letters.lay(second, em: small * share, width: place.width, height: max(0, place.height - head.height))
            if share <= Letters.smallest || (head.whole && next.whole) { return (head, next) }
            share *= Letters.smaller
        }
    }

    /// The first sentence is what is looked for: it gives way to the second down to this share of its size.
    private static let smallestFirst = 0.7

    /// Digits as high as the place, narrowed where they would be wider than it.
    func digits(_ text: String, in place: Rect, tint: Tint = .ink) -> [Mark] {
        guard !text.isEmpty, place.width > 0, place.height > 0 else { return [] }
        let em = place.height / Letters.cap
        func mark(_ text: String, _ left: Double, _ em: Double, _ squeeze: Double) -> Mark {
            .text(Letter(text, at: Point(place.left + left, place.bottom), em: em, weight: .bold, tint: tint, squeeze: squeeze))
        }
        let squeeze = min(1, place.width / letters.width(text, em, .bold))
        guard squeeze < Self.narrowest, let cut = text.lastIndex(of: ":") else { return [mark(text, 0, em, squeeze)] }
        // Too narrow to read at arm's length: minutes stay high, seconds become small.
        let (head, tail) = (String(text[..<cut]), String(text[cut...]))
        let (wide, rest) = (letters.width(head, em, .bold), letters.width(tail, em * 0.5, .bold))
        let narrow = min(1, place.width / (wide + rest))
        return [mark(head, 0, em, narrow), mark(tail, wide * narrow, em * 0.5, narrow)]
    }

    /// Digits narrower than this share of their own width are hard to tell apart.
    private static let narrowest = 0.5
}
