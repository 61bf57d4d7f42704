import RestwaterCore

/// What a key looks like and says.
struct KeyFace: Equatable {
    var label: String
    var sub: String?
    var spoken: String
    var solid = false
    var enabled = true

    init(_ label: String, sub: String? = nil, spoken: String, solid: Bool = false, enabled: Bool = true) {
        (self.label, self.spoken, self.solid, self.enabled) = (label, spoken, solid, enabled)
        self.sub = sub.flatMap { $0.isBlank ? nil : $0 }
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
        let inner = size.local.inset(Self.edgeMm * mm)
        let words = Words(letters: letters)
        let share = face.sub == nil ? 1 : Self.labelShare
        marks += words.fit(face.label, em: em, in: inner.with(height: inner.height * share), tint: text, weight: .bold, across: .centre)
        if let line = face.sub {
            let below = inner.with(top: inner.top + inner.height * share, height: inner.height * (1 - share))
            marks += words.fit(line, em: sub, in: below, tint: text, across: .centre, middle: false)
        }
        return marks
    }

    /// The part of a key that its label may fill, from the key's corner.
    static func labelPlace(_ key: Rect, hasSub: Bool, mm: Double) -> Rect {
        let inner = key.local.inset(edgeMm * mm)
        return Rect(left: 0, top: 0, width: inner.width, height: inner.height * (hasSub ? labelShare : 1))
    }

    /// Between the edge of a key and its words, mm.
    private static let edgeMm = 1.0
    /// Share of a key's height for its label if there is a smaller line below.
    private static let labelShare = 0.6
}
