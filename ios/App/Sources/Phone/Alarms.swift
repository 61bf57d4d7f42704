import Foundation
import RestwaterKit
import UserNotifications

/// Hands the planned alarms to the system, which keeps them through a suspended or ended app.
@MainActor
final class Alarms: NSObject, UNUserNotificationCenterDelegate {
    /// An alarm is due while the app is in front: it is felt and heard, and nothing covers a key.
    var onDueInFront: (@MainActor () -> Void)?
    /// Something is to ring, and the system does not let us.
    var onNotAllowed: (@MainActor () -> Void)?
    private let centre = UNUserNotificationCenter.current()
    private var asked = false
    private var set: [PlannedAlarm] = []

    override init() {
        super.init()
        centre.delegate = self
    }

    func askOnce() {
        guard !asked else { return }
        asked = true
        // By await, not by a closure: the system calls those on a thread of its own.
        Task { _ = try? await centre.requestAuthorization(options: [.alert, .sound]) }
    }

    func set(_ alarms: [PlannedAlarm]) {
        guard alarms != set else { return }
        let gone = Set(set.map(\.id)).subtracting(alarms.map(\.id))
        centre.removePendingNotificationRequests(withIdentifiers: Array(gone))
        centre.removeDeliveredNotifications(withIdentifiers: Array(gone))
        for alarm in alarms where !set.contains(alarm) { add(alarm) }
        set = alarms
        if !alarms.isEmpty { lookWhetherAllowed() }
    }

    private func lookWhetherAllowed() {
        Task {
            let settings = await centre.notificationSettings()
            if settings.authorizationStatus == .denied { onNotAllowed?() }
        }
    }

    private func add(_ alarm: PlannedAlarm) {
        let content = UNMutableNotificationContent()
        content.title = alarm.title
        content.body = alarm.text
        content.sound = .default
        let trigger = UNTimeIntervalNotificationTrigger(timeInterval: max(1, alarm.at.timeIntervalSinceNow), repeats: false)
        let request = UNNotificationRequest(identifier: alarm.id, content: content, trigger: trigger)
        Task { try? await centre.add(request) }
    }

    nonisolated func userNotificationCenter(
        _ center: UNUserNotificationCenter, willPresent notification: UNNotification
    ) async -> UNNotificationPresentationOptions {
        await MainActor.run { onDueInFront?() }
        return []
    }
}
