import RestwaterCore

/// Horizontal alignment of text in its place.
enum Across { case start, centre, end }

/// Text as marks.
struct Words {
    let letters: Letters

    /// A text in the requested size, or in the largest smaller size at which all of it is visible.
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

    /// The first sentence large, the whole of the second below it, then as many of the others as fit.
    func sentences(_ first: String, _ others: [String], em: Double, small: Double, in place: Rect) -> [Mark] {
        let below = others.filter { !$0.isBlank }
        guard let second = below.first else { return lay(alone(first, em, in: place), in: place, tint: .ink, weight: .bold) }
        let (head, why) = two(first, second, em: em, small: small, in: place)
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

    /// A first sentence at that em, or hardly smaller if that keeps it on one line.
    private func head(_ text: String, _ em: Double, in place: Rect) -> Fitted {
        var size = em
        while size >= em * Self.hardlySmaller {
            let line = letters.lay(text, em: size, width: place.width, height: place.height, weight: .bold, most: 1)
            if line.whole { return line }
            size *= Letters.smaller
        }
        return letters.lay(text, em: em, width: place.width, height: place.height, weight: .bold)
    }

    /// The largest size at which a first sentence fits that has the place to itself.
    private func alone(_ first: String, _ em: Double, in place: Rect) -> Fitted {
        var size = em
        while true {
            let head = head(first, size, in: place)
            if head.whole || size <= em * Letters.smallest { return head }
            size *= Letters.smaller
        }
    }

    /// A sentence may be made so much smaller to stay on one line.
    private static let hardlySmaller = 0.85

    /// The largest size at which both fit: the second gives the reason for the first, so both become smaller and
    /// neither is left out.
    private func two(_ first: String, _ second: String, em: Double, small: Double, in place: Rect) -> (Fitted, Fitted) {
        var share = 1.0
        while true {
            let head = head(first, em * share, in: place)
            let next = letters.lay(second, em: small * share, width: place.width, height: max(0, place.height - head.height))
            if share <= Letters.smallest || (head.whole && next.whole) { return (head, next) }
            share *= Letters.smaller
        }
    }

    /// Digits as high as the place, in the widest cut of the clock that fits. If none fits, the minutes stay high in
    /// the narrowest cut and the seconds become small.
    func digits(_ text: String, in place: Rect, tint: Tint = .ink) -> [Mark] {
        guard !text.isEmpty, place.width > 0, place.height > 0, let narrowest = Face.widths.clocks.last else { return [] }
        let em = place.height / Letters.cap
        func mark(_ text: String, _ left: Double, _ em: Double, _ cut: ClockCut) -> Mark {
            .text(Letter(text, at: Point(place.left + left, place.bottom), em: em, weight: .bold, tint: tint, clock: cut.percent))
        }
        if let cut = Face.widths.clocks.first(where: { Face.width(text, em, $0) <= place.width }) { return [mark(text, 0, em, cut)] }
        let at = text.lastIndex(of: ":") ?? text.startIndex
        let (minutes, seconds) = (String(text[..<at]), String(text[at...]))
        let (long, short) = (Face.width(minutes, em, narrowest), Face.width(seconds, em, narrowest))
        let share = min(Self.mostSeconds, max(Self.leastSeconds, (place.width - long) / short))
        // If even that does not fit, all of it becomes smaller in the same proportions.
        let fit = min(1, place.width / (long + short * share))
        return [mark(minutes, 0, em * fit, narrowest), mark(seconds, long * fit, em * fit * share, narrowest)]
    }

    /// Height of the seconds beside high minutes, as a share of the minutes' height.
    private static let mostSeconds = 0.5
    private static let leastSeconds = 0.3
}
