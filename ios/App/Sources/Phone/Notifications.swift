import Foundation
import RestwaterKit
import UserNotifications

/// Alarms as local notifications, which the system keeps while the app is suspended or after it has ended.
/// Time-sensitive: they are shown at once and break through a Focus. They obey the ring switch; `SystemAlarms` do not.
struct Notifications: AlarmCenter {
    /// The sound's file in the app's Library/Sounds, where the system looks for it.
    static let sound = "recast.wav"

    func permission() async -> AlarmPermission {
        let settings = await UNUserNotificationCenter.current().notificationSettings()
        return switch settings.authorizationStatus {
        case .notDetermined: .notAsked
        case .denied: .refused
        default: settings.soundSetting == .disabled || settings.timeSensitiveSetting == .disabled ? .silent : .granted
        }
    }

    func requestPermission() async throws -> Bool {
        try await UNUserNotificationCenter.current().requestAuthorization(options: [.alert, .sound])
    }

    func known() async throws -> KnownAlarms {
        let center = UNUserNotificationCenter.current()
        let pending = await center.pendingNotificationRequests().map(\.identifier)
        let rung = await center.deliveredNotifications().map(\.request.identifier)
        return KnownAlarms(pending: Set(pending.compactMap(UUID.init(uuidString:))), rung: Set(rung.compactMap(UUID.init(uuidString:))))
    }

    func schedule(_ alarm: PlannedAlarm) async throws {
        let content = UNMutableNotificationContent()
        content.title = alarm.title
        content.body = alarm.text
        content.interruptionLevel = .timeSensitive
        content.sound = UNNotificationSound(named: UNNotificationSoundName(rawValue: Self.sound))
        let trigger = UNTimeIntervalNotificationTrigger(timeInterval: max(1, alarm.at.timeIntervalSinceNow), repeats: false)
        try await UNUserNotificationCenter.current().add(
            UNNotificationRequest(identifier: alarm.systemId.uuidString, content: content, trigger: trigger)
        )
    }

    func cancel(_ ids: Set<UUID>) async throws {
        let center = UNUserNotificationCenter.current()
        let names = ids.map(\.uuidString)
        center.removePendingNotificationRequests(withIdentifiers: names)
        center.removeDeliveredNotifications(withIdentifiers: names)
        // Both return before a secondary thread has removed them; the centre's next answer comes after that.
        _ = await center.pendingNotificationRequests()
    }

    /// Writes the sound's file; blocks.
    static func writeSound() throws {
        let library = try FileManager.default.url(for: .libraryDirectory, in: .userDomainMask, appropriateFor: nil, create: true)
        let folder = library.appendingPathComponent("Sounds", isDirectory: true)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        try Echo.alarm.wav(rate: 22_050).write(to: folder.appendingPathComponent(sound), options: .atomic)
    }
}

/// Answers the notification centre while the app is in the foreground, and when an alarm is tapped.
final class NotificationDelegate: NSObject, UNUserNotificationCenterDelegate {
    private let onDueInFront: @MainActor @Sendable (String, @escaping @MainActor @Sendable (Bool) -> Void) -> Void
    private let onOpened: @MainActor @Sendable (UUID) -> Void

    /// `onDueInFront` is called with an alarm's title and then says whether the app itself sounds, `onOpened` with the identifier of one that was tapped.
    init(
        onDueInFront: @escaping @MainActor @Sendable (String, @escaping @MainActor @Sendable (Bool) -> Void) -> Void,
        onOpened: @escaping @MainActor @Sendable (UUID) -> Void
    ) {
        (self.onDueInFront, self.onOpened) = (onDueInFront, onOpened)
    }

    /// The alarm's rod, not the one that was chosen last, has to be the one that the keys are about. The handler is called on the main
    /// thread, where UIKit takes a picture of the screen then.
    func userNotificationCenter(
        _ center: UNUserNotificationCenter, didReceive response: UNNotificationResponse,
        withCompletionHandler completionHandler: @escaping () -> Void
    ) {
        let id = UUID(uuidString: response.notification.request.identifier)
        // Called once, and only there.
        nonisolated(unsafe) let done = completionHandler
        Task { @MainActor [onOpened] in
            if let id { onOpened(id) }
            done()
        }
    }

    /// In the foreground the app rings itself and says for what, whatever the ring switch says, and no banner covers
    /// the clock. If its own sound fails, the notification's is heard.
    func userNotificationCenter(
        _ center: UNUserNotificationCenter, willPresent notification: UNNotification,
        withCompletionHandler completionHandler: @escaping (UNNotificationPresentationOptions) -> Void
    ) {
        let title = notification.request.content.title
        nonisolated(unsafe) let done = completionHandler
        Task { @MainActor [onDueInFront] in
            onDueInFront(title) { sounds in done(sounds ? [] : [.sound]) }
        }
    }
}
