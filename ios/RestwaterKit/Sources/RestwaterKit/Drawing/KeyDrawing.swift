import RestwaterCore

/// What a key looks like and says.
struct KeyFace: Equatable {
    var label: String
    var sub: String?
    var spoken: String
    var solid = false
    var enabled = true
    /// Whether it is the choice in force: drawn with a head of ink and a tick in it, and told by a screen reader.
    var chosen = false

    init(_ label: String, sub: String? = nil, spoken: String, solid: Bool = false, enabled: Bool = true, chosen: Bool = false) {
        (self.label, self.spoken, self.solid, self.enabled, self.chosen) = (label, spoken, solid, enabled, chosen)
        self.sub = sub.flatMap { $0.isBlank ? nil : $0 }
    }

    /// A key whose weight the core says; solid only while it can be tapped.
    init(_ label: String, sub: String?, spoken: String, weight: KeyWeight, enabled: Bool) {
        self.init(label, sub: sub, spoken: spoken, solid: weight == .solid && enabled, enabled: enabled, chosen: weight == .chosen)
    }

    /// An outlined key of one word.
    init(_ said: Said) { self.init(said.label, spoken: said.spoken) }
}

/// A key of the pad. While a thumb is on it, the whole key swaps ink and paper, so that with numb fingers one still
/// sees that it was touched.
struct KeyDrawing {
    let face: KeyFace
    let size: Rect
    let em, sub, mm: Double
    let letters: Letters

    func marks(pressed: Bool) -> [Mark] {
        let solid = face.solid != pressed
        let edge = (pressed ? 0.9 : 0.5) * mm
        let corner = 2 * mm
        let stroke = face.enabled ? Stroke(edge) : Stroke(0.3 * mm, dashes: [1.2 * mm, 1.2 * mm])
        let text: Tint = solid ? .paper : face.enabled ? .ink : .soft
        var marks: [Mark] = solid ? [.fill(.rect(size.local, corner: corner), .ink)] : []
        marks.append(.line(.rect(size.local.inset(edge / 2), corner: corner), face.enabled ? .ink : .soft, stroke))
        if face.chosen { marks += tickedHead(bar: text, tick: solid ? .ink : .paper) }
        let below = face.chosen ? Self.headMm * mm : 0
        let whole = size.local.inset(Self.edgeMm * mm)
        let inner = whole.with(top: whole.top + below, height: max(0, whole.height - below))
        let words = Words(letters: letters)
        guard let line = face.sub else {
            return marks + words.fit(face.label, em: em, in: inner, tint: text, weight: .bold, across: .centre)
        }
        let (label, small, share) = lines(line, in: inner)
        let top = max(0, (share - label.height) / 2)
        marks += words.layOut(label, in: inner.with(top: inner.top + top), tint: text, weight: .bold, across: .centre)
        return marks + words.layOut(small, in: inner.with(top: inner.top + share), tint: text, weight: .medium, across: .centre)
    }

    /// The head of a key that is chosen: a bar at its upper edge with a tick in it. A key in solid ink is the one to press
    /// next, so that what is in force has to look different.
    private func tickedHead(bar: Tint, tick: Tint) -> [Mark] {
        let (high, middle) = ((Self.headMm + 0.4) * mm, Point(size.width / 2, (Self.headMm + 0.4) * mm / 2))
        let tickLine = Outline(
            Point(middle.x - 1.3 * mm, middle.y), Point(middle.x - 0.4 * mm, middle.y + 0.8 * mm), Point(middle.x + 1.4 * mm, middle.y - 0.8 * mm))
        let line = Mark.line(Point(0, high / 2), Point(size.width, high / 2), bar, high)
        return [.inside(.rect(size.local, corner: 2 * mm), [line]), .line(tickLine, tick, Stroke(0.5 * mm))]
    }

    /// The label and a smaller line that has what the label leaves of the height, and the height above that line.
    private func lines(_ line: String, in inner: Rect) -> (Fitted, Fitted, Double) {
        let share = inner.height * Self.labelShare
        let label = letters.fit(face.label, em: em, width: inner.width, height: share, weight: .bold)
        let usual = letters.fit(line, em: sub, width: inner.width, height: inner.height - share)
        if usual.whole && usual.em == sub { return (label, usual, share) }
        // It grows up to the label, and is never smaller than at 100 %: a large label gives up size before.
        let usualEm = min(sub, subMm() * mm)
        var (above, small) = (label, beside(label, line, usualEm, in: inner))
        while small.em < usualEm && above.em * Letters.smaller * Self.subOfLabel > usualEm {
            above = letters.fit(face.label, em: above.em * Letters.smaller, width: inner.width, height: share, weight: .bold)
            small = beside(above, line, usualEm, in: inner)
        }
        return (above, small, max(above.height, min(share, inner.height - small.height)))
    }

    /// The smaller line below a label, as large as the label leaves it room.
    private func beside(_ label: Fitted, _ line: String, _ usualEm: Double, in inner: Rect) -> Fitted {
        let room = inner.height - min(inner.height * Self.labelShare, label.height)
        let grown = letters.fit(line, em: min(sub, max(label.em * Self.subOfLabel, usualEm)), width: inner.width, height: room)
        let least = letters.fit(line, em: usualEm, width: inner.width, height: room)
        return grown.em >= least.em ? grown : least
    }

    /// The part of a key that its label may fill, from the key's corner.
    static func labelPlace(_ key: Rect, hasSub: Bool, mm: Double) -> Rect {
        let inner = key.local.inset(edgeMm * mm)
        return Rect(left: 0, top: 0, width: inner.width, height: inner.height * (hasSub ? labelShare : 1))
    }

    /// By how much the words of a chosen key are lower, below its head, mm.
    private static let headMm = 2.0
    /// Between the edge of a key and its words, mm.
    private static let edgeMm = 1.0
    /// Size of the smaller line relative to the label at the most.
    private static let subOfLabel = 0.9
    /// Share of a key's height for its label at the most, if there is a smaller line below.
    private static let labelShare = 0.6
}
