import RestwaterCore

/// A point of a drawing, relative to its upper left corner.
public struct Point: Equatable, Sendable {
    public let x, y: Double
    public init(_ x: Double, _ y: Double) { (self.x, self.y) = (x, y) }
}

/// The purpose of a colour; `Ink` has the colours for day and night.
public enum Tint: Equatable, Sendable, CaseIterable {
    case paper, ink, soft, water, accent
}

/// How a line is drawn.
public struct Stroke: Equatable, Sendable {
    public let width: Double
    /// Alternating lengths of dash and gap; empty for a solid line.
    public let dashes: [Double]
    /// Round ends.
    public let round: Bool

    public init(_ width: Double, dashes: [Double] = [], round: Bool = false) {
        (self.width, self.dashes, self.round) = (width, dashes, round)
    }
}

/// How heavy letters are.
public enum Weight: Equatable, Hashable, Sendable {
    case medium, bold
}

/// One line of text.
public struct Letter: Equatable, Sendable {
    public let text: String
    /// The font name of the cut.
    public var cut: String { clock.map(Face.clock) ?? Face.name(weight) }
    /// Left end of the baseline.
    public let at: Point
    public let em: Double
    public let weight: Weight
    public let tint: Tint
    /// The cut of the clock, by its width in per cent; `nil` for words.
    public let clock: UInt32?

    public init(_ text: String, at: Point, em: Double, weight: Weight = .medium, tint: Tint = .ink, clock: UInt32? = nil) {
        (self.text, self.at, self.em, self.weight, self.tint, self.clock) = (text, at, em, weight, tint, clock)
    }
}

/// One drawn thing. A drawing is a list of these, so that it can be tested and drawn on any canvas.
public indirect enum Mark: Equatable, Sendable {
    case fill(Outline, Tint)
    case line(Outline, Tint, Stroke)
    case text(Letter)
    /// Marks that are visible only inside the outline.
    case inside(Outline, [Mark])

    static func line(_ from: Point, _ to: Point, _ tint: Tint, _ width: Double) -> Mark {
        .line(Outline(from, to), tint, Stroke(width))
    }

    static func line(_ from: Point, _ to: Point, _ tint: Tint, _ stroke: Stroke) -> Mark {
        .line(Outline(from, to), tint, stroke)
    }
}
