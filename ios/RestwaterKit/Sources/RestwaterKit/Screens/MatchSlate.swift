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
    /// Size of what the digits count and of the notes relative to other text.
    static let says = 1.1
    static let note = 0.9

    /// Height of texts below each other.
    func texts(_ all: [String], _ em: Double, _ width: Double, _ weight: Weight = .medium) -> Double {
        all.map { Double(slate.letters.lines(of: $0, em: em, width: width, weight: weight)) }.reduce(0, +) * em * 1.25
    }

    /// Height of a label and its value at their own size.
    func lineHeight(_ line: MatchLine, _ width: Double, em: Double? = nil) -> Double {
        let body = em ?? self.body
        return max(1, texts([line.label], body * Self.label, width) + texts([line.value], body * Self.value, width, .bold) + body * 0.3)
    }

    /// Heights of what is below the digits, at one size of text.
    struct Stacked {
        let says, limit: Double
        let lines, nets: [Double]
        let notes: Double
        /// Whether labels are beside their values.
        let tight: Bool
        var height: Double { says + limit + lines.reduce(0, +) + nets.reduce(0, +) + notes }
    }

    /// All of it on one page at its size, with labels beside their values if they don't fit above them; none if it needs more pages.
    func stacked(in place: Rect) -> Stacked? {
        [false, true].map { stacked(place.width, tight: $0) }.first { $0.height <= place.height }
    }

    private func stacked(_ width: Double, tight: Bool) -> Stacked {
        Stacked(
            says: texts([view.says], body * Self.says, width, .bold), limit: texts([view.limitSays], body, width, .bold),
            lines: view.lines.map { tight ? texts([$0.spoken], body, width, .bold) : lineHeight($0, width) },
            nets: view.nets.map { NetDrawing.shape($0, body: body, width: width, slate: slate).height },
            notes: texts(view.notes, body * Self.note, width), tight: tight)
    }

    /// The pages, each at the size the phone is set to; none if one page has room for all of it.
    func nowParts(_ first: Rect, _ others: Rect) -> (page: LeafPage, parts: [[LeafBlock]]) {
        let leaf = Leaf(
            id: "", title: "", says: view.says, caution: "", lines: view.lines.map(LeafLine.init(match:)), axis: nil, notes: view.notes, list: [],
            typing: nil, rows: [], keys: [], keysLast: false)
        let page = LeafPage(leaf, slate: slate)
        guard stacked(in: first) == nil else { return (page, []) }
        let texts = page.blocks(width: first.width)
        // A net near its limit stays beside the sentence about it.
        let nets = { (clear: Bool) in
            view.nets.enumerated().filter { ($1.warning == .clear) == clear }.map { LeafBlock.net($1, $0) }
        }
        let limit = view.limitSays.isBlank ? [] : [LeafBlock.words(tag: "match-limit", view.limitSays, em: body, .bold)]
        let (lines, notes) = (texts.dropFirst().dropLast(view.notes.count), texts.suffix(view.notes.count))
        let blocks = texts.prefix(1) + limit + nets(false) + lines + nets(true) + notes
        return (page, page.parts(Array(blocks), width: first.width) { $0 == 0 ? first.height : others.height })
    }
}

extension LeafLine {
    init(match line: MatchLine) {
        self.init(
            label: line.label, value: line.value, detail: "", spoken: line.spoken, figureSpoken: line.spoken, span: nil, heads: false)
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
