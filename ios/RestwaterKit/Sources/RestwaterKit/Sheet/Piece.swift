import RestwaterCore

/// How a screen reader treats a piece.
public enum Role: Equatable, Sendable {
    case words, heading, picture, key, tab
}

/// One thing on a screen: where it is, what is drawn, what is spoken, and what a tap on it asks for.
public struct Piece: Equatable, Sendable, Identifiable {
    /// The tag by which tests and the system find it; the same as on Android.
    public let tag: String
    /// Where it is on the screen, in points.
    public let place: Rect
    /// What is drawn, relative to its corner.
    public var marks: [Mark] = []
    /// What is drawn while a thumb is on it.
    public var pressed: [Mark] = []
    public var role = Role.words
    /// What a screen reader says; a piece without it is skipped.
    public var spoken = ""
    /// Read in rising order.
    public var order = 0.0
    public var enabled = true
    public var selected = false
    /// What a screen reader announces by itself when this changes; empty if nothing.
    public var announced = ""
    /// Whether the answer to a tap already tells of it, as of a clock that the tap started.
    public var runsByItself = false
    public var ask: Ask?
    /// Whether a tap on the picture aims there.
    public var aims = false
    public var field: Field?

    public var id: String { tag }

    init(_ tag: String, at place: Rect) { (self.tag, self.place) = (tag, place) }
}

/// A line that is typed.
public struct Field: Equatable, Sendable {
    public let label: String
    public let value: String
    public let em: Double
    /// Where its text goes.
    public let to: FieldGoal
    /// The keyboard it opens with.
    public let keyboard: Keyboard
    /// The part of the piece that is typed in; its label is drawn beside it.
    public let box: Rect

    /// What is asked when the text has changed.
    public func ask(_ text: String) -> Ask {
        switch to {
        case .core(let into): .type(.typed(into: into, text: text))
        case .source: .files(.source(text))
        case .typed(let into): .typed(into, text)
        }
    }
}

/// Where a typed line goes.
public enum FieldGoal: Equatable, Sendable {
    case core(TypedInto)
    case source
    case typed(TypedInto)
}

extension String {
    /// `woundIn` as `WOUND_IN`: a case's name in the form that both shells use in tags.
    static func tag(_ value: Any) -> String {
        String(describing: value).reduce(into: "") { name, letter in
            if letter.isUppercase && !name.isEmpty { name += "_" }
            name += letter.uppercased()
        }
    }
}
