// Signatures only; each comment is the page under developer.apple.com/documentation that says so.
import UIKit
import UniformTypeIdentifiers

extension View {
    // swiftui/view/modifier(_:)
    public func modifier<M: ViewModifier>(_ modifier: M) -> some View { _never(self) }
    // swiftui/view/environment(_:_:)
    public func environment<V>(_ path: WritableKeyPath<EnvironmentValues, V>, _ value: V) -> some View { _never(self) }
    // swiftui/view/onchange(of:initial:_:)
    public func onChange<V: Equatable>(of value: V, initial: Bool = false, _ action: @escaping (V, V) -> Void) -> some View { _never(self) }
    // swiftui/view/onopenurl(perform:)
    public func onOpenURL(perform action: @escaping (URL) -> Void) -> some View { _never(self) }
    // swiftui/view/task(id:_:)
    public func task<T: Equatable>(id: T, @_inheritActorContext _ action: @escaping @Sendable () async -> Void) -> some View { _never(self) }

    // swiftui/view/task(priority:_:)
    public func task(priority: TaskPriority = .userInitiated, @_inheritActorContext _ action: @escaping @Sendable () async -> Void) -> some View {
        _never(self)
    }
    // swiftui/view/frame(minwidth:idealwidth:maxwidth:minheight:idealheight:maxheight:alignment:)
    public func frame(
        minWidth: CGFloat? = nil, idealWidth: CGFloat? = nil, maxWidth: CGFloat? = nil, minHeight: CGFloat? = nil, idealHeight: CGFloat? = nil,
        maxHeight: CGFloat? = nil, alignment: Alignment = .center
    ) -> some View { _never(self) }
    // swiftui/view/multilinetextalignment(_:)
    public func multilineTextAlignment(_ alignment: TextAlignment) -> some View { _never(self) }
    // swiftui/view/overlay(alignment:content:)
    public func overlay<V: View>(alignment: Alignment = .center, @ViewBuilder content: () -> V) -> some View { _never(self) }
    // swiftui/view/opacity(_:)
    public func opacity(_ opacity: Double) -> some View { _never(self) }
    // swiftui/view/deferssystemgestures(on:)
    public func defersSystemGestures(on edges: Edge.Set) -> some View { _never(self) }
    // swiftui/view/keyboardtype(_:)
    public func keyboardType(_ type: UIKeyboardType) -> some View { _never(self) }
    // swiftui/view/accessibilityrepresentation(representation:)
    public func accessibilityRepresentation<V: View>(@ViewBuilder representation: () -> V) -> some View { _never(self) }
    // swiftui/view/frame(width:height:alignment:)
    public func frame(width: CGFloat? = nil, height: CGFloat? = nil, alignment: Alignment = .center) -> some View { _never(self) }
    // swiftui/view/offset(x:y:)
    public func offset(x: CGFloat = 0, y: CGFloat = 0) -> some View { _never(self) }
    // swiftui/view/padding()
    public func padding() -> some View { _never(self) }
    // swiftui/view/ignoressafearea(_:)
    public func ignoresSafeArea(_ regions: SafeAreaRegions = .all) -> some View { _never(self) }
    // swiftui/view/preferredcolorscheme(_:)
    public func preferredColorScheme(_ scheme: ColorScheme?) -> some View { _never(self) }
    // swiftui/view/persistentsystemoverlays(_:)
    public func persistentSystemOverlays(_ visibility: Visibility) -> some View { _never(self) }

    // swiftui/view/font(_:)
    public func font(_ font: Font?) -> some View { _never(self) }
    // swiftui/view/linelimit(_:)
    public func lineLimit(_ number: Int?) -> some View { _never(self) }
    // swiftui/view/minimumscalefactor(_:)
    public func minimumScaleFactor(_ factor: CGFloat) -> some View { _never(self) }
    // swiftui/view/layoutpriority(_:)
    public func layoutPriority(_ value: Double) -> some View { _never(self) }
    // swiftui/view/dynamictypesize(_:)
    public func dynamicTypeSize<T: RangeExpression>(_ range: T) -> some View where T.Bound == DynamicTypeSize { _never(self) }
    // swiftui/view/monospaceddigit()
    public func monospacedDigit() -> some View { _never(self) }
    // swiftui/view/foregroundstyle(_:)
    public func foregroundStyle<S: ShapeStyle>(_ style: S) -> some View { _never(self) }
    // swiftui/view/tint(_:)
    public func tint(_ color: Color?) -> some View { _never(self) }
    // swiftui/view/focused(_:)
    public func focused(_ condition: FocusState<Bool>.Binding) -> some View { _never(self) }
    // swiftui/view/textinputautocapitalization(_:)
    public func textInputAutocapitalization(_ capitals: TextInputAutocapitalization?) -> some View { _never(self) }
    // swiftui/view/statusbarhidden(_:)
    public func statusBarHidden(_ hidden: Bool = true) -> some View { _never(self) }
    // swiftui/view/submitlabel(_:)
    public func submitLabel(_ label: SubmitLabel) -> some View { _never(self) }
    // swiftui/view/autocorrectiondisabled(_:)
    public func autocorrectionDisabled(_ disable: Bool = true) -> some View { _never(self) }

    // swiftui/view/buttonstyle(_:)
    public func buttonStyle<S: ButtonStyle>(_ style: S) -> some View { _never(self) }
    // swiftui/view/disabled(_:)
    public func disabled(_ disabled: Bool) -> some View { _never(self) }
    // swiftui/view/allowshittesting(_:)
    public func allowsHitTesting(_ enabled: Bool) -> some View { _never(self) }
    // swiftui/view/contentshape(_:)
    public func contentShape<S: Shape>(_ shape: S) -> some View { _never(self) }
    // swiftui/view/ontapgesture(count:coordinatespace:perform:)
    public func onTapGesture(count: Int = 1, coordinateSpace: some CoordinateSpaceProtocol, perform: @escaping (CGPoint) -> Void) -> some View {
        _never(self)
    }

    // swiftui/view/accessibilityelement(children:)
    public func accessibilityElement(children: AccessibilityChildBehavior = .ignore) -> some View { _never(self) }
    // swiftui/view/accessibilitylabel(_:)
    public func accessibilityLabel(_ label: Text) -> some View { _never(self) }
    // swiftui/view/accessibilityhidden(_:)
    public func accessibilityHidden(_ hidden: Bool) -> some View { _never(self) }
    // swiftui/view/accessibilityaddtraits(_:)
    public func accessibilityAddTraits(_ traits: AccessibilityTraits) -> some View { _never(self) }
    // swiftui/view/accessibilitysortpriority(_:)
    public func accessibilitySortPriority(_ priority: Double) -> some View { _never(self) }
    // swiftui/view/accessibilityidentifier(_:)
    public func accessibilityIdentifier(_ identifier: String) -> some View { _never(self) }

    // swiftui/view/fileimporter(ispresented:allowedcontenttypes:oncompletion:)
    public func fileImporter(
        isPresented: Binding<Bool>, allowedContentTypes: [UTType], onCompletion: @escaping (Result<URL, any Error>) -> Void
    ) -> some View { _never(self) }
    // swiftui/view/filemover(ispresented:file:oncompletion:)
    public func fileMover(isPresented: Binding<Bool>, file: URL?, onCompletion: @escaping (Result<URL, any Error>) -> Void) -> some View {
        _never(self)
    }
    // swiftui/view/sheet(ispresented:ondismiss:content:)
    public func sheet<C: View>(isPresented: Binding<Bool>, onDismiss: (() -> Void)? = nil, @ViewBuilder content: @escaping () -> C) -> some View {
        _never(self)
    }
}

func _never<V: View>(_ view: V) -> some View { view }

// swiftui/textalignment
public enum TextAlignment: Hashable, Sendable { case leading, center, trailing }
// swiftui/edge/set
public enum Edge: Int8, Sendable {
    case top, leading, bottom, trailing
    // swiftui/edge/set
    public struct Set: OptionSet, Sendable {
        public let rawValue: Int8
        public init(rawValue: Int8) { self.rawValue = rawValue }
        public static let all = Set(rawValue: 15)
    }
}
// swiftui/safearearegions
public struct SafeAreaRegions: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
    public static let all = SafeAreaRegions(rawValue: 3)
    public static let keyboard = SafeAreaRegions(rawValue: 2)
}
// swiftui/textinputautocapitalization
public struct TextInputAutocapitalization: Sendable {
    public static var never: TextInputAutocapitalization { fatalError() }
    public static var words: TextInputAutocapitalization { fatalError() }
    public static var sentences: TextInputAutocapitalization { fatalError() }
}
// swiftui/submitlabel
public struct SubmitLabel: Sendable { public static var done: SubmitLabel { fatalError() } }
// swiftui/coordinatespaceprotocol
public protocol CoordinateSpaceProtocol {}
// swiftui/localcoordinatespace
public struct LocalCoordinateSpace: CoordinateSpaceProtocol, Sendable {}
extension CoordinateSpaceProtocol where Self == LocalCoordinateSpace { public static var local: LocalCoordinateSpace { fatalError() } }

// swiftui/accessibilitychildbehavior
public struct AccessibilityChildBehavior: Sendable {
    public static let ignore: AccessibilityChildBehavior = { fatalError() }()
    public static let contain: AccessibilityChildBehavior = { fatalError() }()
}
// swiftui/accessibilitytraits
public struct AccessibilityTraits: SetAlgebra, Sendable {
    public static let isHeader: AccessibilityTraits = { fatalError() }()
    public static let isImage: AccessibilityTraits = { fatalError() }()
    public static let isButton: AccessibilityTraits = { fatalError() }()
    public static let isSelected: AccessibilityTraits = { fatalError() }()
    public static let updatesFrequently: AccessibilityTraits = { fatalError() }()
    public init() { fatalError() }
    // swiftui/accessibilitytraits/contains(_:)
    public func contains(_ member: AccessibilityTraits) -> Bool { fatalError() }
    // swiftui/accessibilitytraits/union(_:)
    public func union(_ other: AccessibilityTraits) -> AccessibilityTraits { fatalError() }
    // swiftui/accessibilitytraits/intersection(_:)
    public func intersection(_ other: AccessibilityTraits) -> AccessibilityTraits { fatalError() }
    // swiftui/accessibilitytraits/symmetricdifference(_:)
    public func symmetricDifference(_ other: AccessibilityTraits) -> AccessibilityTraits { fatalError() }
    // swiftui/accessibilitytraits/insert(_:)
    @discardableResult public mutating func insert(_ member: AccessibilityTraits) -> (inserted: Bool, memberAfterInsert: AccessibilityTraits) {
        fatalError()
    }
    // swiftui/accessibilitytraits/remove(_:)
    @discardableResult public mutating func remove(_ member: AccessibilityTraits) -> AccessibilityTraits? { fatalError() }
    // swiftui/accessibilitytraits/update(with:)
    @discardableResult public mutating func update(with member: AccessibilityTraits) -> AccessibilityTraits? { fatalError() }
    // swiftui/accessibilitytraits/formunion(_:)
    public mutating func formUnion(_ other: AccessibilityTraits) { fatalError() }
    // swiftui/accessibilitytraits/formintersection(_:)
    public mutating func formIntersection(_ other: AccessibilityTraits) { fatalError() }
    // swiftui/accessibilitytraits/formsymmetricdifference(_:)
    public mutating func formSymmetricDifference(_ other: AccessibilityTraits) { fatalError() }
}
// swiftui/accessibilitynotification
public enum AccessibilityNotification {
    // swiftui/accessibilitynotification/announcement
    public struct Announcement {
        public init(_ text: String) { fatalError() }
        // swiftui/accessibilitynotification/announcement/post()
        public func post() { fatalError() }
    }
}

// swiftui/uiviewcontrollerrepresentable
@MainActor @preconcurrency public protocol UIViewControllerRepresentable: View where Body == Never {
    associatedtype UIViewControllerType: UIViewController
    typealias Context = UIViewControllerRepresentableContext<Self>
    @MainActor @preconcurrency func makeUIViewController(context: Context) -> UIViewControllerType
    @MainActor @preconcurrency func updateUIViewController(_ controller: UIViewControllerType, context: Context)
}
extension UIViewControllerRepresentable { public var body: Never { fatalError() } }
// swiftui/uiviewcontrollerrepresentablecontext
public struct UIViewControllerRepresentableContext<V> {}

// swiftui/uiapplicationdelegateadaptor
@MainActor @propertyWrapper public struct UIApplicationDelegateAdaptor<D: NSObject & UIApplicationDelegate>: DynamicProperty {
    public init(_ type: D.Type = D.self) { fatalError() }
    public var wrappedValue: D { fatalError() }
}
