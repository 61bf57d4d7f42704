// Written from knowledge; signatures only (../README.md).
@_exported import Foundation

open class UIResponder: NSObject {}

// uikit/uiapplicationdelegate: its methods are optional there; what the app implements stands here without a default, so
// that a misspelt one is found.
@MainActor public protocol UIApplicationDelegate: NSObjectProtocol {
    // uikit/uiapplicationdelegate/application(_:configurationforconnecting:options:)
    func application(
        _ application: UIApplication, configurationForConnecting connectingSceneSession: UISceneSession, options: UIScene.ConnectionOptions
    ) -> UISceneConfiguration
}
// uikit/uikeyboardtype
public enum UIKeyboardType: Int, Sendable { case `default`, asciiCapable, numbersAndPunctuation, numberPad, decimalPad }
public struct UIBackgroundTaskIdentifier: Equatable, Sendable { public static let invalid: UIBackgroundTaskIdentifier = { fatalError() }() }

@MainActor open class UIApplication: UIResponder {
    public static var shared: UIApplication { fatalError() }
    public enum State: Int, Sendable { case active, inactive, background }
    public var applicationState: State { fatalError() }
    public var isIdleTimerDisabled: Bool {
        get { fatalError() }
        set { fatalError() }
    }
    public func beginBackgroundTask(expirationHandler: (@MainActor @Sendable () -> Void)? = nil) -> UIBackgroundTaskIdentifier { fatalError() }
    public func endBackgroundTask(_ id: UIBackgroundTaskIdentifier) { fatalError() }
}

@MainActor open class UIScene: UIResponder { open class ConnectionOptions: NSObject {} }
@MainActor open class UIWindowScene: UIScene { public var keyWindow: UIWindow? { fatalError() } }
@MainActor public protocol UISceneDelegate: NSObjectProtocol { func sceneDidBecomeActive(_ scene: UIScene) }
@MainActor public protocol UIWindowSceneDelegate: UISceneDelegate {}
@MainActor open class UISceneSession: NSObject { public struct Role: Hashable, Sendable {}; public var role: Role { fatalError() } }
@MainActor open class UISceneConfiguration: NSObject {
    public init(name: String?, sessionRole: UISceneSession.Role) { fatalError() }
    public var delegateClass: AnyClass? {
        get { fatalError() }
        set { fatalError() }
    }
}

@MainActor open class UIView: UIResponder {
    public func addGestureRecognizer(_ recogniser: UIGestureRecognizer) { fatalError() }
    public var gestureRecognizers: [UIGestureRecognizer]? { fatalError() }
}
@MainActor open class UIWindow: UIView {}
@MainActor open class UIViewController: UIResponder {}
@MainActor open class UIActivity: NSObject { public struct ActivityType: Hashable, Sendable {} }
@MainActor open class UIActivityViewController: UIViewController {
    public init(activityItems: [Any], applicationActivities: [UIActivity]?) { fatalError() }
    public var completionWithItemsHandler: (@MainActor (UIActivity.ActivityType?, Bool, [Any]?, (any Error)?) -> Void)? {
        get { fatalError() }
        set { fatalError() }
    }
}

@MainActor open class UIScreen: NSObject {
    public static var main: UIScreen { fatalError() }
    public var nativeBounds: CGRect { fatalError() }
    public var nativeScale: CGFloat { fatalError() }
}

@MainActor open class UITouch: NSObject {
    public var majorRadius: CGFloat { fatalError() }
}
@MainActor open class UIEvent: NSObject {}
@MainActor public protocol UIGestureRecognizerDelegate: NSObjectProtocol {
    func gestureRecognizer(_ own: UIGestureRecognizer, shouldRecognizeSimultaneouslyWith other: UIGestureRecognizer) -> Bool
}
@MainActor open class UIGestureRecognizer: NSObject {
    public init(target: Any?, action: Selector?) { fatalError() }
    public weak var delegate: (any UIGestureRecognizerDelegate)? {
        get { fatalError() }
        set { fatalError() }
    }
    public var cancelsTouchesInView: Bool {
        get { fatalError() }
        set { fatalError() }
    }
    public var delaysTouchesBegan: Bool {
        get { fatalError() }
        set { fatalError() }
    }
    public var delaysTouchesEnded: Bool {
        get { fatalError() }
        set { fatalError() }
    }
    open func touchesBegan(_ touches: Set<UITouch>, with event: UIEvent) { fatalError() }
    open func touchesMoved(_ touches: Set<UITouch>, with event: UIEvent) { fatalError() }
    open func touchesEnded(_ touches: Set<UITouch>, with event: UIEvent) { fatalError() }
    open func touchesCancelled(_ touches: Set<UITouch>, with event: UIEvent) { fatalError() }
    open func reset() { fatalError() }
}
public struct Selector {}

public final class UIFont: NSObject, @unchecked Sendable {
    public struct Weight: Hashable, Sendable {
        public static let medium: Weight = { fatalError() }()
        public static let bold: Weight = { fatalError() }()
        public static let heavy: Weight = { fatalError() }()
    }
    public static func monospacedDigitSystemFont(ofSize size: CGFloat, weight: Weight) -> UIFont { fatalError() }
}
extension NSAttributedString.Key { public static let font: NSAttributedString.Key = { fatalError() }() }
extension NSAttributedString { public func size() -> CGSize { fatalError() } }
