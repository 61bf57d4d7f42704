// Signatures only; each comment is the page under developer.apple.com/documentation that says so.

// swiftui/color
extension Color: View, ShapeStyle { public var body: Never { fatalError() } }
// swiftui/color
public struct Color: Hashable, Sendable {
    // swiftui/color/rgbcolorspace
    public enum RGBColorSpace: Sendable { case sRGB, sRGBLinear, displayP3 }
    public init(_ space: RGBColorSpace = .sRGB, red: Double, green: Double, blue: Double, opacity: Double = 1) { fatalError() }
    public static let clear: Color = { fatalError() }()
}
// swiftui/shapestyle
public protocol ShapeStyle {}

// swiftui/path
public struct Path {
    public init() { fatalError() }
    // swiftui/path/move(to:)
    public mutating func move(to point: CGPoint) { fatalError() }
    // swiftui/path/addline(to:)
    public mutating func addLine(to point: CGPoint) { fatalError() }
    // swiftui/path/closesubpath()
    public mutating func closeSubpath() { fatalError() }
    // swiftui/path/addrect(_:)
    public mutating func addRect(_ rect: CGRect) { fatalError() }
    // swiftui/path/addroundedrect(in:cornersize:)
    public mutating func addRoundedRect(in rect: CGRect, cornerSize: CGSize) { fatalError() }
    // swiftui/path/addellipse(in:)
    public mutating func addEllipse(in rect: CGRect) { fatalError() }
    // swiftui/path/addarc(center:radius:startangle:endangle:clockwise:)
    public mutating func addArc(center: CGPoint, radius: CGFloat, startAngle: Angle, endAngle: Angle, clockwise: Bool) { fatalError() }
}
// swiftui/degrees(_:)
public struct Angle: Sendable { public static func degrees(_ degrees: Double) -> Angle { fatalError() } }

// swiftui/cglinecap
public enum CGLineCap: Sendable { case butt, round, square }
// swiftui/cglinejoin
public enum CGLineJoin: Sendable { case miter, round, bevel }
// swiftui/strokestyle
public struct StrokeStyle: Sendable {
    public init(
        lineWidth: CGFloat = 1, lineCap: CGLineCap = .butt, lineJoin: CGLineJoin = .miter, miterLimit: CGFloat = 10, dash: [CGFloat] = [],
        dashPhase: CGFloat = 0
    ) { fatalError() }
}

// swiftui/shape
public protocol Shape: View {}
// swiftui/insettableshape
public protocol InsettableShape: Shape {}
extension InsettableShape {
    // swiftui/insettableshape/strokeborder(_:linewidth:antialiased:)
    public func strokeBorder<S: ShapeStyle>(_ content: S, lineWidth: CGFloat = 1, antialiased: Bool = true) -> some View { _never(self) }
}
// swiftui/rectangle
public struct Rectangle: InsettableShape {
    public init() { fatalError() }
    public var body: Never { fatalError() }
}

// swiftui/graphicscontext
public struct GraphicsContext {
    // swiftui/graphicscontext/color(_:)
    public struct Shading: Sendable { public static func color(_ color: Color) -> Shading { fatalError() } }
    // swiftui/graphicscontext/resolvedtext
    public struct ResolvedText {
        // swiftui/graphicscontext/resolvedtext/measure(in:)
        public func measure(in size: CGSize) -> CGSize { fatalError() }
        // swiftui/graphicscontext/resolvedtext/firstbaseline(in:)
        public func firstBaseline(in size: CGSize) -> CGFloat { fatalError() }
    }
    // swiftui/graphicscontext/fill(_:with:)
    public func fill(_ path: Path, with shading: Shading) { fatalError() }
    // swiftui/graphicscontext/stroke(_:with:style:)
    public func stroke(_ path: Path, with shading: Shading, style: StrokeStyle) { fatalError() }
    // swiftui/graphicscontext/clip(to:)
    public mutating func clip(to path: Path) { fatalError() }
    // swiftui/graphicscontext/translateby(x:y:)
    public mutating func translateBy(x: CGFloat, y: CGFloat) { fatalError() }
    // swiftui/graphicscontext/scaleby(x:y:)
    public mutating func scaleBy(x: CGFloat, y: CGFloat) { fatalError() }
    // swiftui/graphicscontext/resolve(_:)
    public func resolve(_ text: Text) -> ResolvedText { fatalError() }
    // swiftui/graphicscontext/draw(_:at:anchor:)
    public func draw(_ text: ResolvedText, at point: CGPoint, anchor: UnitPoint = .center) { fatalError() }
}
// swiftui/unitpoint
public struct UnitPoint: Hashable, Sendable {
    public static let center: UnitPoint = { fatalError() }()
    public static let topLeading: UnitPoint = { fatalError() }()
}
// swiftui/canvas
public struct Canvas<Symbols: View>: View {
    public init(renderer: @escaping (inout GraphicsContext, CGSize) -> Void) where Symbols == EmptyView { fatalError() }
    public var body: Never { fatalError() }
}
