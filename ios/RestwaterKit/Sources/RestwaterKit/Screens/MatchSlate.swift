import RestwaterCore

/// What every page of the Match screen needs to draw itself.
struct MatchSlate {
    let view: MatchView
    let keys: MatchLayout
    let slate: Slate
    let content: ScreenContent
    var body: Double { slate.text.body }

    /// Size of a label and of a value relative to other text.
    static let label = 0.9
    static let value = 1.15

    /// Height of texts below each other.
    func texts(_ all: [String], _ em: Double, _ width: Double, _ weight: Weight = .medium) -> Double {
        all.map { Double(slate.letters.lines(of: $0, em: em, width: width, weight: weight)) }.reduce(0, +) * em * 1.25
    }

    /// Height of a label and its value at their own size.
    func lineHeight(_ line: MatchLine, _ width: Double, em: Double? = nil) -> Double {
        let body = em ?? self.body
        return max(1, texts([line.label], body * Self.label, width) + texts([line.value], body * Self.value, width, .bold) + body * 0.3)
    }
}

/// Things below each other: each with the height it needs if there is room, otherwise all reduced by the same factor.
struct MatchStack {
    private let place: Rect
    private let share: Double
    private var top: Double
    /// Too low for labels above their values.
    var tight: Bool { share < 0.8 }

    init(_ place: Rect, asked: Double) {
        (self.place, top) = (place, place.top)
        share = asked > 0 ? min(1.3, place.height / asked) : 1
    }

    mutating func next(_ height: Double) -> Rect {
        defer { top += height * share }
        return place.with(top: top, height: height * share)
    }
}
