// Signatures only; each comment is the page under developer.apple.com/documentation that says so.
@_exported import Foundation

// uikit/uiresponder
open class UIResponder: NSObject {}

// uikit/uiapplicationdelegate: its methods are optional there; what the app implements is here without a default, so
// that a misspelt one is found.
@MainActor public protocol UIApplicationDelegate: NSObjectProtocol {
    // uikit/uiapplicationdelegate/application(_:configurationforconnecting:options:)
    func application(
        _ application: UIApplication, configurationForConnecting connectingSceneSession: UISceneSession, options: UIScene.ConnectionOptions
    ) -> UISceneConfiguration
}
// uikit/uikeyboardtype
public enum UIKeyboardType: Int, Sendable { case `default`, asciiCapable, numbersAndPunctuation, numberPad, decimalPad }
// uikit/uibackgroundtaskidentifier
public struct UIBackgroundTaskIdentifier: Equatable, Sendable { public static let invalid: UIBackgroundTaskIdentifier = { fatalError() }() }

// uikit/uiapplication
@MainActor open class UIApplication: UIResponder {
    public static var shared: UIApplication { fatalError() }
    // uikit/uiapplication/state
    public enum State: Int, Sendable { case active, inactive, background }
    public var applicationState: State { fatalError() }
    public var isIdleTimerDisabled: Bool {
        get { fatalError() }
        set { fatalError() }
    }
    // uikit/uiapplication/isprotecteddataavailable
    public var isProtectedDataAvailable: Bool { fatalError() }
    // uikit/uiapplication/protecteddatadidbecomeavailablenotification
    public nonisolated class var protectedDataDidBecomeAvailableNotification: NSNotification.Name { fatalError() }
    // uikit/uiapplication/beginbackgroundtask(expirationhandler:)
    public func beginBackgroundTask(expirationHandler: (@MainActor @Sendable () -> Void)? = nil) -> UIBackgroundTaskIdentifier { fatalError() }
    // uikit/uiapplication/endbackgroundtask(_:)
    public func endBackgroundTask(_ id: UIBackgroundTaskIdentifier) { fatalError() }
    // uikit/uiapplication/significanttimechangenotification
    public nonisolated class var significantTimeChangeNotification: NSNotification.Name { fatalError() }
}

// Foundation on Linux lacks these.
extension NSNotification.Name {
    // foundation/nsnotification/name-swift.struct/nssystemclockdidchange
    // swift-format-ignore: AlwaysUseLowerCamelCase
    public static var NSSystemClockDidChange: NSNotification.Name { fatalError() }
}

extension NotificationCenter {
    // foundation/notificationcenter/notifications
    public final class Notifications: AsyncSequence, Sendable {
        public typealias Element = Notification
        public struct Iterator: AsyncIteratorProtocol {
            public mutating func next() async -> Notification? { fatalError() }
        }
        public func makeAsyncIterator() -> Iterator { fatalError() }
    }

    // foundation/notificationcenter/notifications(named:object:)
    public func notifications(named name: Notification.Name, object: AnyObject? = nil) -> Notifications { fatalError() }
}

// uikit/uiscene
@MainActor open class UIScene: UIResponder { open class ConnectionOptions: NSObject {} }
// uikit/uiwindowscene
@MainActor open class UIWindowScene: UIScene { public var keyWindow: UIWindow? { fatalError() } }
// uikit/scenedidbecomeactive(_:)
@MainActor public protocol UISceneDelegate: NSObjectProtocol { func sceneDidBecomeActive(_ scene: UIScene) }
// uikit/uiwindowscenedelegate
@MainActor public protocol UIWindowSceneDelegate: UISceneDelegate {}
// uikit/uiscenesession
@MainActor open class UISceneSession: NSObject { public struct Role: Hashable, Sendable {}; public var role: Role { fatalError() } }
// uikit/uisceneconfiguration
@MainActor open class UISceneConfiguration: NSObject {
    public init(name: String?, sessionRole: UISceneSession.Role) { fatalError() }
    public var delegateClass: AnyClass? {
        get { fatalError() }
        set { fatalError() }
    }
}

// uikit/uiview
@MainActor open class UIView: UIResponder {
    // uikit/uiview/addgesturerecognizer(_:)
    public func addGestureRecognizer(_ recogniser: UIGestureRecognizer) { fatalError() }
    public var gestureRecognizers: [UIGestureRecognizer]? { fatalError() }
}
// uikit/uiwindow
@MainActor open class UIWindow: UIView {}
// uikit/uiviewcontroller
@MainActor open class UIViewController: UIResponder {}
// uikit/uiactivity
@MainActor open class UIActivity: NSObject { public struct ActivityType: Hashable, Sendable {} }
// uikit/uiactivityviewcontroller
@MainActor open class UIActivityViewController: UIViewController {
    public init(activityItems: [Any], applicationActivities: [UIActivity]?) { fatalError() }
    public var completionWithItemsHandler: (@MainActor (UIActivity.ActivityType?, Bool, [Any]?, (any Error)?) -> Void)? {
        get { fatalError() }
        set { fatalError() }
    }
}

// uikit/uiscreen
@MainActor open class UIScreen: NSObject {
    public static var main: UIScreen { fatalError() }
    public var nativeBounds: CGRect { fatalError() }
    public var nativeScale: CGFloat { fatalError() }
}

// uikit/uitouch
@MainActor open class UITouch: NSObject {
    public var majorRadius: CGFloat { fatalError() }
}
// uikit/uievent
@MainActor open class UIEvent: NSObject {}
// uikit/uigesturerecognizerdelegate
@MainActor public protocol UIGestureRecognizerDelegate: NSObjectProtocol {
    func gestureRecognizer(_ own: UIGestureRecognizer, shouldRecognizeSimultaneouslyWith other: UIGestureRecognizer) -> Bool
}
// uikit/uigesturerecognizer
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
    // uikit/uigesturerecognizer/touchesbegan(_:with:)
    open func touchesBegan(_ touches: Set<UITouch>, with event: UIEvent) { fatalError() }
    // uikit/uigesturerecognizer/touchesmoved(_:with:)
    open func touchesMoved(_ touches: Set<UITouch>, with event: UIEvent) { fatalError() }
    // uikit/uigesturerecognizer/touchesended(_:with:)
    open func touchesEnded(_ touches: Set<UITouch>, with event: UIEvent) { fatalError() }
    // uikit/uigesturerecognizer/touchescancelled(_:with:)
    open func touchesCancelled(_ touches: Set<UITouch>, with event: UIEvent) { fatalError() }
    // uikit/uigesturerecognizer/reset()
    open func reset() { fatalError() }
}
// uikit/selector
public struct Selector {}

// uikit/uifont
public final class UIFont: NSObject {
    // uikit/uifont/weight
    public struct Weight: Hashable, Sendable {
        public static let medium: Weight = { fatalError() }()
        public static let bold: Weight = { fatalError() }()
        public static let heavy: Weight = { fatalError() }()
    }
    // uikit/uifont/monospaceddigitsystemfont(ofsize:weight:)
    public static func monospacedDigitSystemFont(ofSize size: CGFloat, weight: Weight) -> UIFont { fatalError() }
}
extension NSAttributedString.Key { public static let font: NSAttributedString.Key = { fatalError() }() }
extension NSAttributedString { public func size() -> CGSize { fatalError() } }
