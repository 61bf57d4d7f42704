// Xcode 26.1 (Swift 6.2.1) has the alert without a stop button; on Linux the signatures of ios/lint have it.
#if canImport(AlarmKit) && (compiler(>=6.2.1) || os(Linux))
import AlarmKit
import Foundation
import RestwaterKit
import SwiftUI

/// The system's own alarms, which ring in spite of the ring switch and a Focus. The permission is asked for once;
/// without it notifications ring. Available from iOS 26.1, where the system provides the stop key and its words.
@available(iOS 26.1, *)
struct SystemAlarms: AlarmCenter {
    /// Only the alarm's own words are passed on.
    struct Label: AlarmMetadata {}

    func permission() async -> AlarmPermission {
        switch AlarmManager.shared.authorizationState {
        case .notDetermined: .notAsked
        case .denied: .refused
        case .authorized: .granted
        @unknown default: .refused
        }
    }

    func requestPermission() async throws -> Bool { try await AlarmManager.shared.requestAuthorization() == .authorized }

    func known() async throws -> KnownAlarms {
        let alarms = try AlarmManager.shared.alarms
        let rung = Set(alarms.filter { $0.state == .alerting }.map(\.id))
        return KnownAlarms(pending: Set(alarms.map(\.id)).subtracting(rung), rung: rung)
    }

    func schedule(_ alarm: PlannedAlarm) async throws {
        let alert = AlarmPresentation.Alert(title: LocalizedStringResource(stringLiteral: alarm.title))
        let attributes = AlarmAttributes<Label>(
            presentation: AlarmPresentation(alert: alert), metadata: nil, tintColor: Color(.day, .accent)
        )
        // A time that has passed would not come again.
        let at = max(alarm.at, Date().addingTimeInterval(1))
        let stopped = AlarmStopped(id: alarm.systemId.uuidString)
        _ = try await AlarmManager.shared.schedule(
            id: alarm.systemId, configuration: .alarm(schedule: .fixed(at), attributes: attributes, stopIntent: stopped)
        )
    }

    func cancel(_ ids: Set<UUID>) async throws {
        // An alarm that has rung and gone in the meantime must not prevent cancelling the others.
        for id in ids { Log.attempt("cancelling an alarm") { try AlarmManager.shared.cancel(id: id) } }
    }
}
#endif
