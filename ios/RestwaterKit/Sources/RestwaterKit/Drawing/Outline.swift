import RestwaterCore

/// Lines and closed shapes, relative to the drawing's corner.
public struct Outline: Equatable, Sendable {
    public enum Part: Equatable, Sendable {
        case move(Point)
        case line(Point)
        case close
        /// A rectangle with round corners of that radius; 0 for sharp ones.
        case rect(Rect, corner: Double)
        case circle(Point, radius: Double)
        /// The left half of a disc.
        case leftHalf(Point, radius: Double)
    }

    public private(set) var parts: [Part]

    init(_ points: Point...) { self.init(points) }

    init(_ points: [Point], closed: Bool = false) {
        parts = points.enumerated().map { $0 == 0 ? .move($1) : .line($1) }
        if closed { parts.append(.close) }
    }

    private init(_ part: Part) { parts = [part] }

    static func closed(_ points: Point...) -> Outline { Outline(points, closed: true) }
    static func rect(_ rect: Rect, corner: Double = 0) -> Outline { Outline(.rect(rect, corner: corner)) }
    static func circle(_ centre: Point, _ radius: Double) -> Outline { Outline(.circle(centre, radius: radius)) }
    static func leftHalf(_ centre: Point, _ radius: Double) -> Outline { Outline(.leftHalf(centre, radius: radius)) }

    static func + (a: Outline, b: Outline) -> Outline {
        var both = a
        both.parts += b.parts
        return both
    }
}

extension Rect {
    /// The same rectangle in coordinates from its own corner.
    var local: Rect { Rect(left: 0, top: 0, width: width, height: height) }
    var right: Double { left + width }
    var bottom: Double { top + height }

    func with(left: Double? = nil, top: Double? = nil, width: Double? = nil, height: Double? = nil) -> Rect {
        Rect(left: left ?? self.left, top: top ?? self.top, width: width ?? self.width, height: height ?? self.height)
    }

    func inset(_ edge: Double) -> Rect {
        Rect(left: left + edge, top: top + edge, width: max(0, width - 2 * edge), height: max(0, height - 2 * edge))
    }
}
