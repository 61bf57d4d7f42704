// Written from knowledge; signatures only (../README.md).
@_exported import Foundation

public struct UNAuthorizationOptions: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
    public static let sound = UNAuthorizationOptions(rawValue: 2)
    public static let alert = UNAuthorizationOptions(rawValue: 4)
}
public struct UNNotificationPresentationOptions: OptionSet, Sendable {
    public let rawValue: UInt
    public init(rawValue: UInt) { self.rawValue = rawValue }
}
open class UNNotificationSound: NSObject, @unchecked Sendable { public static var `default`: UNNotificationSound { fatalError() } }
open class UNNotification: NSObject, @unchecked Sendable {}
open class UNNotificationContent: NSObject {}
open class UNMutableNotificationContent: UNNotificationContent {
    public var title: String { get { fatalError() } set { fatalError() } }
    public var body: String { get { fatalError() } set { fatalError() } }
    public var sound: UNNotificationSound? { get { fatalError() } set { fatalError() } }
}
open class UNNotificationTrigger: NSObject {}
open class UNTimeIntervalNotificationTrigger: UNNotificationTrigger {
    public init(timeInterval: TimeInterval, repeats: Bool) { fatalError() }
}
open class UNNotificationRequest: NSObject {
    public init(identifier: String, content: UNNotificationContent, trigger: UNNotificationTrigger?) { fatalError() }
}
public enum UNAuthorizationStatus: Int, Sendable { case notDetermined, denied, authorized }
open class UNNotificationSettings: NSObject, @unchecked Sendable { public var authorizationStatus: UNAuthorizationStatus { fatalError() } }
public protocol UNUserNotificationCenterDelegate: NSObjectProtocol {
    func userNotificationCenter(_ center: UNUserNotificationCenter, willPresent notification: UNNotification) async -> UNNotificationPresentationOptions
}
open class UNUserNotificationCenter: NSObject, @unchecked Sendable {
    public static func current() -> UNUserNotificationCenter { fatalError() }
    public weak var delegate: (any UNUserNotificationCenterDelegate)? { get { fatalError() } set { fatalError() } }
    public func requestAuthorization(options: UNAuthorizationOptions = []) async throws -> Bool { fatalError() }
    public func notificationSettings() async -> UNNotificationSettings { fatalError() }
    public func add(_ request: UNNotificationRequest) async throws { fatalError() }
    public func removePendingNotificationRequests(withIdentifiers: [String]) { fatalError() }
    public func removeDeliveredNotifications(withIdentifiers: [String]) { fatalError() }
}
