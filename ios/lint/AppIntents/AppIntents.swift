// Signatures only; each comment is the page under developer.apple.com/documentation that says so.
@_exported import Darwin

// appintents/intentdescription
public struct IntentDescription: Sendable { public init(_ text: LocalizedStringResource) { fatalError() } }
// appintents/intentdialog
public struct IntentDialog: ExpressibleByStringLiteral, Sendable { public init(stringLiteral value: String) { fatalError() } }

// appintents/intentresult
public protocol IntentResult {}
public struct _Plain: IntentResult {}
extension IntentResult where Self == _Plain { public static func result() -> Self { fatalError() } }
// appintents/providesdialog
public protocol ProvidesDialog {}
public struct _Dialogued: IntentResult, ProvidesDialog {}
extension IntentResult where Self == _Dialogued { public static func result(dialog: IntentDialog) -> Self { fatalError() } }

// appintents/appintent
public protocol AppIntent {
    associatedtype PerformResult: IntentResult
    static var title: LocalizedStringResource { get }
    func perform() async throws -> PerformResult
    init()
}

// appintents/liveactivityintent
public protocol LiveActivityIntent: AppIntent {}
// appintents/intentparameter
@propertyWrapper public final class IntentParameter<Value> {
    public init(title: LocalizedStringResource) { fatalError() }
    public var wrappedValue: Value {
        get { fatalError() }
        set { fatalError() }
    }
}
extension AppIntent {
    // appintents/appintent/parameter
    public typealias Parameter = IntentParameter
    public static var isDiscoverable: Bool { fatalError() }
}

// appintents/appshortcutphrase
public struct AppShortcutPhrase: ExpressibleByStringInterpolation, Sendable {
    // appintents/appshortcutphrase/token
    public enum Token: Sendable { case applicationName }
    // appintents/appshortcutphrase/stringinterpolation
    public struct StringInterpolation: StringInterpolationProtocol {
        public init(literalCapacity: Int, interpolationCount: Int) { fatalError() }
        // appintents/appshortcutphrase/stringinterpolation/appendliteral(_:)
        public mutating func appendLiteral(_ literal: String) { fatalError() }
        // appintents/appshortcutphrase/stringinterpolation/appendinterpolation(_:)
        public mutating func appendInterpolation(_ token: Token) { fatalError() }
    }
    public init(stringLiteral value: String) { fatalError() }
    public init(stringInterpolation: StringInterpolation) { fatalError() }
}
// appintents/appshortcut
public struct AppShortcut {
    public init(intent: some AppIntent, phrases: [AppShortcutPhrase], shortTitle: LocalizedStringResource, systemImageName: String) { fatalError() }
}
// appintents/appshortcutsbuilder
@resultBuilder public struct AppShortcutsBuilder {
    // appintents/appshortcutsbuilder/buildblock(_:)
    public static func buildBlock(_ shortcuts: AppShortcut...) -> [AppShortcut] { fatalError() }
}
// appintents/appshortcutsprovider
public protocol AppShortcutsProvider {
    @AppShortcutsBuilder static var appShortcuts: [AppShortcut] { get }
}
