// Signatures only; each comment is the page under developer.apple.com/documentation that says so. The classes are Objective-C
// classes whose pages don't mention Sendable, so these signatures don't either.
@_exported import Foundation

// usernotifications/unauthorizationoptions
public struct UNAuthorizationOptions: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
    public static var sound: UNAuthorizationOptions { fatalError() }
    public static var alert: UNAuthorizationOptions { fatalError() }
}
// usernotifications/unnotificationpresentationoptions
public struct UNNotificationPresentationOptions: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
    // usernotifications/unnotificationpresentationoptions/sound
    public static var sound: UNNotificationPresentationOptions { fatalError() }
}
// usernotifications/unnotificationsoundname
public struct UNNotificationSoundName: Hashable, Sendable { public init(rawValue: String) { fatalError() } }
// usernotifications/unnotificationsound/init(named:)
open class UNNotificationSound: NSObject { public convenience init(named name: UNNotificationSoundName) { fatalError() } }
// usernotifications/unnotificationinterruptionlevel
public enum UNNotificationInterruptionLevel: UInt, Sendable { case passive, active, timeSensitive, critical }
// usernotifications/unnotification
open class UNNotification: NSObject { public var request: UNNotificationRequest { fatalError() } }
// usernotifications/unnotificationcontent
open class UNNotificationContent: NSObject { public var title: String { fatalError() } }
// usernotifications/unmutablenotificationcontent
open class UNMutableNotificationContent: UNNotificationContent {
    override public var title: String {
        get { fatalError() }
        set { fatalError() }
    }
    public var body: String {
        get { fatalError() }
        set { fatalError() }
    }
    public var sound: UNNotificationSound? {
        get { fatalError() }
        set { fatalError() }
    }
    public var interruptionLevel: UNNotificationInterruptionLevel {
        get { fatalError() }
        set { fatalError() }
    }
}
// usernotifications/unnotificationtrigger
open class UNNotificationTrigger: NSObject {}
// usernotifications/untimeintervalnotificationtrigger/init(timeinterval:repeats:)
open class UNTimeIntervalNotificationTrigger: UNNotificationTrigger {
    public convenience init(timeInterval: TimeInterval, repeats: Bool) { fatalError() }
}
// usernotifications/unnotificationrequest
open class UNNotificationRequest: NSObject {
    public convenience init(identifier: String, content: UNNotificationContent, trigger: UNNotificationTrigger?) { fatalError() }
    public var identifier: String { fatalError() }
    public var content: UNNotificationContent { fatalError() }
}
// usernotifications/unauthorizationstatus
public enum UNAuthorizationStatus: Int, Sendable { case notDetermined, denied, authorized, provisional, ephemeral }
// usernotifications/unnotificationsettings
open class UNNotificationSettings: NSObject {
    public var authorizationStatus: UNAuthorizationStatus { fatalError() }
    // usernotifications/unnotificationsettings/soundsetting
    public var soundSetting: UNNotificationSetting { fatalError() }
    // usernotifications/unnotificationsettings/timesensitivesetting
    public var timeSensitiveSetting: UNNotificationSetting { fatalError() }
}
// usernotifications/unnotificationsetting
public enum UNNotificationSetting: Int, Sendable { case notSupported, disabled, enabled }
// usernotifications/unusernotificationcenterdelegate: optional there; what the app implements is here without a default. In
// the form with a completion handler only: the async one, which the importer derives, calls its hidden handler off the main thread
// unless the class is bound to the main actor, and UIKit ends the app then ("Call must be made on main thread").
public protocol UNUserNotificationCenterDelegate: NSObjectProtocol {
    // usernotifications/unusernotificationcenterdelegate/usernotificationcenter(_:willpresent:withcompletionhandler:)
    func userNotificationCenter(
        _ center: UNUserNotificationCenter, willPresent notification: UNNotification,
        withCompletionHandler completionHandler: @escaping (UNNotificationPresentationOptions) -> Void)
    // usernotifications/unusernotificationcenterdelegate/usernotificationcenter(_:didreceive:withcompletionhandler:)
    func userNotificationCenter(
        _ center: UNUserNotificationCenter, didReceive response: UNNotificationResponse,
        withCompletionHandler completionHandler: @escaping () -> Void)
}
// usernotifications/unnotificationresponse
open class UNNotificationResponse: NSObject { public var notification: UNNotification { fatalError() } }
// usernotifications/unusernotificationcenter
open class UNUserNotificationCenter: NSObject {
    // usernotifications/unusernotificationcenter/current()
    public class func current() -> UNUserNotificationCenter { fatalError() }
    public weak var delegate: (any UNUserNotificationCenterDelegate)? {
        get { fatalError() }
        set { fatalError() }
    }
    // usernotifications/unusernotificationcenter/requestauthorization(options:completionhandler:)
    public func requestAuthorization(options: UNAuthorizationOptions = []) async throws -> Bool { fatalError() }
    // usernotifications/unusernotificationcenter/getnotificationsettings(completionhandler:)
    public func notificationSettings() async -> UNNotificationSettings { fatalError() }
    // usernotifications/unusernotificationcenter/add(_:withcompletionhandler:)
    public func add(_ request: UNNotificationRequest) async throws { fatalError() }
    // usernotifications/unusernotificationcenter/getpendingnotificationrequests(completionhandler:)
    public func pendingNotificationRequests() async -> [UNNotificationRequest] { fatalError() }
    // usernotifications/unusernotificationcenter/getdeliverednotifications(completionhandler:)
    public func deliveredNotifications() async -> [UNNotification] { fatalError() }
    // usernotifications/unusernotificationcenter/removependingnotificationrequests(withidentifiers:)
    public func removePendingNotificationRequests(withIdentifiers identifiers: [String]) { fatalError() }
    // usernotifications/unusernotificationcenter/removedeliverednotifications(withidentifiers:)
    public func removeDeliveredNotifications(withIdentifiers identifiers: [String]) { fatalError() }
}
