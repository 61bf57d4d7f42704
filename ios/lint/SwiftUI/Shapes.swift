// Written from knowledge; signatures only (../README.md).

// swiftui/color
extension Color: View, ShapeStyle { public var body: Never { fatalError() } }
public struct Color: Hashable, Sendable {
    public enum RGBColorSpace: Sendable { case sRGB, sRGBLinear, displayP3 }
    public init(_ space: RGBColorSpace = .sRGB, red: Double, green: Double, blue: Double, opacity: Double = 1) { fatalError() }
    public static let clear: Color = { fatalError() }()
}
public protocol ShapeStyle {}

public struct Path {
    public init() { fatalError() }
    public mutating func move(to point: CGPoint) { fatalError() }
    public mutating func addLine(to point: CGPoint) { fatalError() }
    public mutating func closeSubpath() { fatalError() }
    public mutating func addRect(_ rect: CGRect) { fatalError() }
    public mutating func addRoundedRect(in rect: CGRect, cornerSize: CGSize) { fatalError() }
    public mutating func addEllipse(in rect: CGRect) { fatalError() }
    public mutating func addArc(center: CGPoint, radius: CGFloat, startAngle: Angle, endAngle: Angle, clockwise: Bool) { fatalError() }
}
public struct Angle: Sendable { public static func degrees(_ degrees: Double) -> Angle { fatalError() } }

public enum CGLineCap: Sendable { case butt, round, square }
public enum CGLineJoin: Sendable { case miter, round, bevel }
public struct StrokeStyle: Sendable {
    public init(
        lineWidth: CGFloat = 1, lineCap: CGLineCap = .butt, lineJoin: CGLineJoin = .miter, miterLimit: CGFloat = 10, dash: [CGFloat] = [],
        dashPhase: CGFloat = 0
    ) { fatalError() }
}

public protocol Shape: View {}
// swiftui/insettableshape
public protocol InsettableShape: Shape {}
extension InsettableShape {
    // swiftui/insettableshape/strokeborder(_:linewidth:antialiased:)
    public func strokeBorder<S: ShapeStyle>(_ content: S, lineWidth: CGFloat = 1, antialiased: Bool = true) -> some View { _never(self) }
}
public struct Rectangle: InsettableShape {
    public init() { fatalError() }
    public var body: Never { fatalError() }
}

public struct GraphicsContext {
    public struct Shading: Sendable { public static func color(_ color: Color) -> Shading { fatalError() } }
    public struct ResolvedText {
        public func measure(in size: CGSize) -> CGSize { fatalError() }
        public func firstBaseline(in size: CGSize) -> CGFloat { fatalError() }
    }
    public func fill(_ path: Path, with shading: Shading) { fatalError() }
    public func stroke(_ path: Path, with shading: Shading, style: StrokeStyle) { fatalError() }
    public mutating func clip(to path: Path) { fatalError() }
    public mutating func translateBy(x: CGFloat, y: CGFloat) { fatalError() }
    public mutating func scaleBy(x: CGFloat, y: CGFloat) { fatalError() }
    public func resolve(_ text: Text) -> ResolvedText { fatalError() }
    public func draw(_ text: ResolvedText, at point: CGPoint, anchor: UnitPoint = .center) { fatalError() }
}
public struct UnitPoint: Hashable, Sendable {
    public static let center: UnitPoint = { fatalError() }()
    public static let topLeading: UnitPoint = { fatalError() }()
}
public struct Canvas<Symbols: View>: View {
    public init(renderer: @escaping (inout GraphicsContext, CGSize) -> Void) where Symbols == EmptyView { fatalError() }
    public var body: Never { fatalError() }
}
