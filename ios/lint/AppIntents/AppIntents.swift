// Signatures only; each comment is the page under developer.apple.com/documentation that says so.
@_exported import Darwin

public struct IntentDescription: Sendable { public init(_ text: LocalizedStringResource) { fatalError() } }
public struct IntentDialog: ExpressibleByStringLiteral, Sendable { public init(stringLiteral value: String) { fatalError() } }

public protocol IntentResult: Sendable {}
public struct _Plain: IntentResult {}
extension IntentResult where Self == _Plain { public static func result() -> Self { fatalError() } }
public protocol ProvidesDialog {}
public struct _Dialogued: IntentResult, ProvidesDialog {}
extension IntentResult where Self == _Dialogued { public static func result(dialog: IntentDialog) -> Self { fatalError() } }

public protocol AppIntent: Sendable {
    associatedtype PerformResult: IntentResult
    static var title: LocalizedStringResource { get }
    func perform() async throws -> PerformResult
    init()
}

public protocol LiveActivityIntent: AppIntent {}
@propertyWrapper public final class IntentParameter<Value: Sendable>: @unchecked Sendable {
    public init(title: LocalizedStringResource) { fatalError() }
    public var wrappedValue: Value {
        get { fatalError() }
        set { fatalError() }
    }
}
extension AppIntent {
    public typealias Parameter = IntentParameter
    public static var isDiscoverable: Bool { fatalError() }
}

public struct AppShortcutPhrase: ExpressibleByStringInterpolation, Sendable {
    public enum Token: Sendable { case applicationName }
    public struct StringInterpolation: StringInterpolationProtocol {
        public init(literalCapacity: Int, interpolationCount: Int) { fatalError() }
        public mutating func appendLiteral(_ literal: String) { fatalError() }
        public mutating func appendInterpolation(_ token: Token) { fatalError() }
    }
    public init(stringLiteral value: String) { fatalError() }
    public init(stringInterpolation: StringInterpolation) { fatalError() }
}
public struct AppShortcut {
    public init(intent: some AppIntent, phrases: [AppShortcutPhrase], shortTitle: LocalizedStringResource, systemImageName: String) { fatalError() }
}
@resultBuilder public struct AppShortcutsBuilder {
    public static func buildBlock(_ shortcuts: AppShortcut...) -> [AppShortcut] { fatalError() }
}
public protocol AppShortcutsProvider {
    @AppShortcutsBuilder static var appShortcuts: [AppShortcut] { get }
}
