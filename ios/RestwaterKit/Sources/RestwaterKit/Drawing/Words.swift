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
        return layOut(fitted, in: place.with(top: place.top + top), tint: tint, weight: weight, across: across)
    }

    func layOut(_ fitted: Fitted, in place: Rect, tint: Tint, weight: Weight, across: Across = .start) -> [Mark] {
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

    /// The first sentence large, the whole of the second below it, then as many of the others as fit. Large text becomes smaller,
    /// down to `least` of its size, before it drops a sentence that is there at 100 %; where `verdictFirst`, the first two, the
    /// verdict and what it rests on, are not made much smaller for a further one. `optional` others are shown only where they have
    /// room beside the first at that size.
    func sentences(
        _ first: String, _ others: [String], em: Double, small: Double, in place: Rect, least: Double = 1, optional: Bool = false,
        verdictFirst: Bool = false
    ) -> [Mark] {
        let below = others.filter { !$0.isBlank }
        var top = place.top
        let fitted = column(
            first, below, em: em, small: small, in: place, least: least, optional: optional, verdictFirst: verdictFirst)
        return fitted.enumerated().flatMap { i, fitted in
            defer { top += fitted.height }
            return layOut(fitted, in: place.with(top: top), tint: .ink, weight: i == 0 ? .bold : .medium)
        }
    }

    private func column(
        _ first: String, _ below: [String], em: Double, small: Double, in place: Rect, least: Double, optional: Bool,
        verdictFirst: Bool
    ) -> [Fitted] {
        let large = column(first, optional ? [] : below, em: em, small: small, in: place)
        guard least < 1 else { return large }
        let usual: [Fitted]
        if optional {
            let room = (0...below.count).map { all(first, below.prefix($0), em: em * least, small: small * least, in: place) }
            usual = room.last { $0.dropFirst().allSatisfy(\.whole) } ?? large
        } else {
            usual = column(first, below, em: em * least, small: small * least, in: place)
        }
        guard usual.count > large.count else { return large }
        let smallest = verdictFirst && !optional ? max(least, Self.forAFurther) : least
        var share = 1.0
        // Fourteen steps halve a size within this.
        while share > smallest * 0.999 {
            // The first sentence keeps its size longest.
            for before in Self.beforeOthers {
                let all = all(first, below.prefix(usual.count - 1), em: em * share, small: small * max(least, share / before), in: place)
                if all.allSatisfy(\.whole) { return all }
            }
            share *= Letters.smaller
        }
        return optional || verdictFirst ? large : usual
    }

    /// The first two sentences of large text become no smaller than this share of their size for the sake of a further one.
    private static let forAFurther = 0.75

    /// How many times as large as at 100 % the first sentence is in comparison with the others.
    private static let beforeOthers = [1, 1.25, 1.6]

    /// All of them, each in what those above it leave.
    private func all(_ first: String, _ others: ArraySlice<String>, em: Double, small: Double, in place: Rect) -> [Fitted] {
        var all = [head(first, em, in: place)]
        for sentence in others {
            let room = max(0, place.height - all.map(\.height).reduce(0, +))
            all.append(letters.layOut(sentence, em: small, width: place.width, height: room))
        }
        return all
    }

    private func column(_ first: String, _ below: [String], em: Double, small: Double, in place: Rect) -> [Fitted] {
        guard let second = below.first else { return [alone(first, em, in: place)] }
        let (head, why) = two(first, second, em: em, small: small, in: place)
        var shown = [head, why]
        for sentence in below.dropFirst() {
            let room = place.height - shown.map(\.height).reduce(0, +)
            if room < small * Letters.line * 0.8 { break }
            let next = letters.fit(sentence, em: why.em, width: place.width, height: room)
            if !next.whole || next.em < small * 0.7 { break }
            shown.append(next)
        }
        return shown
    }

    /// A first sentence at that em, or hardly smaller if that keeps it on one line.
    private func head(_ text: String, _ em: Double, in place: Rect) -> Fitted {
        var size = em
        while size >= em * Self.hardlySmaller {
            let line = letters.layOut(text, em: size, width: place.width, height: place.height, weight: .bold, most: 1)
            if line.whole { return line }
            size *= Letters.smaller
        }
        return letters.layOut(text, em: em, width: place.width, height: place.height, weight: .bold)
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
            let next = letters.layOut(second, em: small * share, width: place.width, height: max(0, place.height - head.height))
            if share <= Letters.smallest || (head.whole && next.whole) { return (head, next) }
            share *= Letters.smaller
        }
    }

    /// Digits as high as the place, in the widest cut of the clock that fits. If none fits, the minutes stay high in
    /// the narrowest cut and the seconds become small.
    func digits(_ text: String, in place: Rect, tint: Tint = .ink, several: Bool = false) -> [Mark] {
        guard !text.isEmpty, place.width > 0, place.height > 0, let narrowest = Face.widths.clocks.last else { return [] }
        let em = place.height / Letters.cap
        func mark(_ text: String, _ left: Double, _ em: Double, _ cut: ClockCut) -> Mark {
            .text(Letter(text, at: Point(place.left + left, place.bottom), em: em, weight: .bold, tint: tint, clock: cut.percent))
        }
        // The digits of several rods have one form, whether they are few or many: they are compared.
        if !several, let cut = Face.widths.clocks.first(where: { Face.width(text, em, $0) <= place.width }) { return [mark(text, 0, em, cut)] }
        let apart = em * Self.beforeSeconds
        let width = place.width - apart
        let at = text.lastIndex(of: ":") ?? text.startIndex
        let (minutes, seconds) = (String(text[..<at]), String(text[at...]))
        let (long, short) = (Face.width(minutes, em, narrowest), Face.width(seconds, em, narrowest))
        let share = min(Self.mostSeconds, max(Self.leastSeconds, (width - long) / short))
        // If even that does not fit, all of it becomes smaller in the same proportions.
        let fit = min(1, width / (long + short * share))
        return [mark(minutes, 0, em * fit, narrowest), mark(seconds, long * fit + apart, em * fit * share, narrowest)]
    }

    /// Between high minutes and the colon of their seconds, as a share of the minutes' em: a 4 would run into it.
    private static let beforeSeconds = 0.05
    /// Height of the seconds beside high minutes, as a share of the minutes' height.
    private static let mostSeconds = 0.5
    private static let leastSeconds = 0.3
}
