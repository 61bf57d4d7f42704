// Signatures only; each comment is the page under developer.apple.com/documentation that says so.
@_exported import Combine
@_exported import Foundation

// swiftui/view
@MainActor @preconcurrency public protocol View {
    associatedtype Body: View
    @ViewBuilder @MainActor @preconcurrency var body: Body { get }
}

extension Never: View { public var body: Never { fatalError() } }

// swiftui/anyview
public struct AnyView: View { public var body: Never { fatalError() } }
// swiftui/equatableview
public struct EquatableView<Content: View & Equatable>: View { public var body: Never { fatalError() } }
extension View where Self: Equatable {
    // swiftui/view/equatable()
    nonisolated public func equatable() -> EquatableView<Self> { fatalError() }
}
// swiftui/emptyview
public struct EmptyView: View { public init() { fatalError() }; public var body: Never { fatalError() } }
// swiftui/tupleview
public struct TupleView<T>: View { public var body: Never { fatalError() } }
public struct _Conditional<A, B>: View { public var body: Never { fatalError() } }
extension Optional: View where Wrapped: View { public var body: Never { fatalError() } }

// swiftui/viewbuilder
@resultBuilder public struct ViewBuilder {
    // swiftui/viewbuilder/buildblock()
    public static func buildBlock() -> EmptyView { fatalError() }
    // swiftui/viewbuilder/buildblock(_:)
    public static func buildBlock<V: View>(_ view: V) -> V { fatalError() }
    // swiftui/viewbuilder/buildblock(_:)
    public static func buildBlock<each V: View>(_ view: repeat each V) -> TupleView<(repeat each V)> { fatalError() }
    // swiftui/viewbuilder/buildif(_:)
    public static func buildIf<V: View>(_ view: V?) -> V? { fatalError() }
    // swiftui/viewbuilder/buildeither(first:)
    public static func buildEither<A: View, B: View>(first: A) -> _Conditional<A, B> { fatalError() }
    // swiftui/viewbuilder/buildeither(second:)
    public static func buildEither<A: View, B: View>(second: B) -> _Conditional<A, B> { fatalError() }
    // swiftui/viewbuilder/buildlimitedavailability(_:)
    public static func buildLimitedAvailability<V: View>(_ view: V) -> AnyView { fatalError() }
}

// swiftui/viewmodifier
@MainActor @preconcurrency public protocol ViewModifier {
    associatedtype Body: View
    typealias Content = _ModifiedContent
    @ViewBuilder @MainActor @preconcurrency func body(content: Content) -> Body
}
public struct _ModifiedContent: View { public var body: Never { fatalError() } }

// swiftui/scene
@MainActor @preconcurrency public protocol Scene {
    associatedtype Body: Scene
    @SceneBuilder @MainActor @preconcurrency var body: Body { get }
}
extension Never: Scene {}
// swiftui/scenebuilder
@resultBuilder public struct SceneBuilder {
    // swiftui/scenebuilder/buildblock(_:)
    public static func buildBlock<S: Scene>(_ scene: S) -> S { fatalError() }
}
// swiftui/windowgroup
public struct WindowGroup<Content: View>: Scene {
    public init(@ViewBuilder content: () -> Content) { fatalError() }
    public var body: Never { fatalError() }
}
// swiftui/app
@MainActor @preconcurrency public protocol App {
    associatedtype Body: Scene
    @SceneBuilder @MainActor @preconcurrency var body: Body { get }
    @MainActor @preconcurrency init()
}
extension App { @MainActor @preconcurrency public static func main() { fatalError() } }
