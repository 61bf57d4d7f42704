// Signatures only; each comment is the page under developer.apple.com/documentation that says so.

public struct Font: Hashable, Sendable {
    // swiftui/font/textstyle
    public enum TextStyle: Sendable { case largeTitle, title, headline, body, caption }
    // swiftui/font/weight
    public struct Weight: Hashable, Sendable {
        public static let medium: Weight = { fatalError() }()
        public static let bold: Weight = { fatalError() }()
        // swiftui/font/weight/heavy
        public static let heavy: Weight = { fatalError() }()
    }
    // swiftui/font/headline
    public static let headline: Font = { fatalError() }()
    // swiftui/font/system(size:weight:)
    public static func system(size: CGFloat, weight: Weight? = nil) -> Font { fatalError() }
    public static func custom(_ name: String, fixedSize: CGFloat) -> Font { fatalError() }
    // swiftui/font/monospaceddigit()
    public func monospacedDigit() -> Font { fatalError() }
}

// swiftui/text
public struct Text: View, Equatable, Sendable {
    public init(verbatim text: String) { fatalError() }
    public init(timerInterval: ClosedRange<Date>, pauseTime: Date? = nil, countsDown: Bool = true, showsHours: Bool = true) { fatalError() }
    // swiftui/text/font(_:)
    public func font(_ font: Font?) -> Text { fatalError() }
    // swiftui/text/monospaceddigit()
    public func monospacedDigit() -> Text { fatalError() }
    // swiftui/text/foregroundstyle(_:)
    public func foregroundStyle<S: ShapeStyle>(_ style: S) -> Text { fatalError() }
    public var body: Never { fatalError() }
}

// swiftui/textfield
public struct TextField<Label: View>: View {
    public init(_ title: String, text: Binding<String>) where Label == Text { fatalError() }
    public var body: Never { fatalError() }
}

// swiftui/zstack
public struct ZStack<Content: View>: View {
    public init(alignment: Alignment = .center, @ViewBuilder content: () -> Content) { fatalError() }
    public var body: Never { fatalError() }
}
// swiftui/hstack
public struct HStack<Content: View>: View {
    public init(alignment: VerticalAlignment = .center, spacing: CGFloat? = nil, @ViewBuilder content: () -> Content) { fatalError() }
    public var body: Never { fatalError() }
}
// swiftui/vstack
public struct VStack<Content: View>: View {
    public init(alignment: HorizontalAlignment = .center, spacing: CGFloat? = nil, @ViewBuilder content: () -> Content) { fatalError() }
    public var body: Never { fatalError() }
}
// swiftui/alignment
public struct Alignment: Sendable {
    public static let center: Alignment = { fatalError() }()
    public static let topLeading: Alignment = { fatalError() }()
}
// swiftui/verticalalignment
public struct VerticalAlignment: Sendable {
    public static let center: VerticalAlignment = { fatalError() }()
    public static let firstTextBaseline: VerticalAlignment = { fatalError() }()
}
// swiftui/horizontalalignment
public struct HorizontalAlignment: Sendable {
    public static let center: HorizontalAlignment = { fatalError() }()
    public static let leading: HorizontalAlignment = { fatalError() }()
}

// swiftui/foreach
public struct ForEach<Data: RandomAccessCollection, ID: Hashable, Content>: View where Data.Element: Identifiable, ID == Data.Element.ID {
    public init(_ data: Data, @ViewBuilder content: @escaping (Data.Element) -> Content) where Content: View { fatalError() }
    public var body: Never { fatalError() }
}

// swiftui/geometryreader
public struct GeometryReader<Content: View>: View {
    public init(@ViewBuilder content: @escaping (GeometryProxy) -> Content) { fatalError() }
    public var body: Never { fatalError() }
}
// swiftui/geometryproxy
public struct GeometryProxy {
    public var size: CGSize { fatalError() }
    public var safeAreaInsets: EdgeInsets { fatalError() }
}
// swiftui/edgeinsets
public struct EdgeInsets: Sendable { public var top, leading, bottom, trailing: CGFloat }

// swiftui/button
public struct Button<Label: View>: View {
    @preconcurrency public init(action: @escaping @MainActor () -> Void, @ViewBuilder label: () -> Label) { fatalError() }
    public var body: Never { fatalError() }
}
// swiftui/label
public struct Label<Title: View, Icon: View>: View {
    public init(_ title: String, systemImage name: String) where Title == Text, Icon == Image { fatalError() }
    public var body: Never { fatalError() }
}
// swiftui/image
public struct Image: View { public var body: Never { fatalError() } }
// swiftui/group
public struct Group<Content: View>: View {
    public init(@ViewBuilder content: () -> Content) { fatalError() }
    public var body: Never { fatalError() }
}
// swiftui/previewprovider
@MainActor @preconcurrency public protocol PreviewProvider {
    associatedtype Previews: View
    @ViewBuilder @MainActor @preconcurrency static var previews: Previews { get }
}

// swiftui/buttonstyle
@MainActor @preconcurrency public protocol ButtonStyle {
    associatedtype Body: View
    typealias Configuration = ButtonStyleConfiguration
    @ViewBuilder @MainActor @preconcurrency func makeBody(configuration: Configuration) -> Body
}
// swiftui/buttonstyleconfiguration
public struct ButtonStyleConfiguration {
    // swiftui/buttonstyleconfiguration/label
    public struct Label: View { public var body: Never { fatalError() } }
    public let label: Label
    public let isPressed: Bool
}
