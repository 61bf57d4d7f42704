import AVFoundation
import Foundation
import RestwaterKit
import SwiftUI
import UIKit
import UserNotifications

/// The process's one session, with the system's own alarms, Live Activities, sounds and motor.
@MainActor
final class Phone {
    static let shared = Phone()

    let session: PhoneSession
    private let speaker = EchoSpeaker(output: Loudspeaker())
    private let haptics = Haptics()
    private let position = PhonePosition()
    /// The centre holds its delegate only weakly.
    private var notifications: NotificationDelegate?

    private init() {
        let opening = Opening(folder: Self.logFolder, readable: { logMayBeRead(in: Self.logFolder) })
        session = PhoneSession(opening: opening, alarms: Self.alarmCenters, activities: LiveActivities())
        session.onOpen = { [unowned self] state in listen(to: state) }
        session.onRing = { [unowned self] in ring() }
        session.onPlan = { plan in UIApplication.shared.isIdleTimerDisabled = plan.keepsAwake }
        let notifications = NotificationDelegate(
            onDueInFront: { [weak self] title, sounds in
                guard let self else { return sounds(false) }
                session.dueInFront(title)
                ring(then: sounds)
            },
            onOpened: { [weak self] alarm in self?.session.alarmOpened(alarm) })
        UNUserNotificationCenter.current().delegate = notifications
        self.notifications = notifications
        hearClock()
        hearUnlocking()
        hearReset()
        AppTaps.answer = { @MainActor @Sendable [unowned self] ask in try await answer(to: ask) }
        Task.detached(priority: .utility) { Log.attempt("writing the alarm's sound") { try Notifications.writeSound() } }
    }

    /// The system tells when its clock is set, its zone changes, or summer time begins.
    private func hearClock() {
        let changes: [Notification.Name] = [
            .NSSystemClockDidChange, .NSSystemTimeZoneDidChange, UIApplication.significantTimeChangeNotification,
        ]
        for change in changes {
            Task { [session] in
                for await _ in NotificationCenter.default.notifications(named: change).map({ _ in () }) { session.clockWasSet() }
            }
        }
    }

    /// The first unlock after a restart: only then can the log be read.
    private func hearUnlocking() {
        let unlocked = UIApplication.protectedDataDidBecomeAvailableNotification
        Task { [session] in
            for await _ in NotificationCenter.default.notifications(named: unlocked).map({ _ in () }) { session.unlocked() }
        }
    }

    /// The system's audio service ended and came back: what plays sounds is made again.
    private func hearReset() {
        let reset = AVAudioSession.mediaServicesWereResetNotification
        Task { [speaker] in
            for await _ in NotificationCenter.default.notifications(named: reset).map({ _ in () }) { speaker.outputWasReset() }
        }
    }

    private static var logFolder: URL {
        let support = FileManager.default.urls(for: .applicationSupportDirectory, in: .userDomainMask)
        let home = support.first ?? URL(fileURLWithPath: NSHomeDirectory())
        return home.appendingPathComponent("log", isDirectory: true)
    }

    /// In order of preference.
    private static var alarmCenters: [any AlarmCenter] {
        #if canImport(AlarmKit) && (compiler(>=6.2.1) || os(Linux))
        if #available(iOS 26.1, *) { return [SystemAlarms(), Notifications()] }
        #endif
        return [Notifications()]
    }

    /// Returns when the entry is on the disk and the system is up to date: it may then suspend the process at once.
    private func answer(to ask: AppTaps.Ask) async throws -> String {
        switch ask {
        case .next: return try await session.tapNext()
        case .howLong: return try await session.howLong()
        case .alarmStopped(let id):
            guard let alarm = UUID(uuidString: id) else { throw AppTaps.NobodyAnswers() }
            try await session.alarmAnswered(alarm)
            return ""
        case .key(let id, let rod):
            guard let key = OutsideKey(id: id, rod: rod.flatMap(UInt8.init(exactly:))) else { throw AppTaps.NobodyAnswers() }
            return try await session.tap(key)
        }
    }

    private func listen(to state: RestwaterState) {
        state.onEcho = { [unowned self] echo in
            haptics.play(echo)
            speaker.play(echo)
        }
        state.onPositionWanted = { [unowned self] in position.read { state.positionRead($0) } }
    }

    /// Rings, then says whether the alarm can be heard.
    private func ring(then sounds: @escaping @MainActor @Sendable (Bool) -> Void = { _ in }) {
        haptics.play(.alarm)
        speaker.play(.alarm, for: .alarm, then: sounds)
    }

    /// The app goes to the background or comes back; the log is complete on the disk before iOS may suspend the app.
    func phase(_ scene: ScenePhase) {
        switch scene {
        case .active: session.phase(.active)
        case .inactive: session.phase(.inactive)
        case .background:
            let time = BackgroundTime()
            session.phase(.background)
            Task {
                await session.settled()
                time.end()
            }
        @unknown default: break
        }
    }
}

/// Time to finish in the background.
@MainActor
private final class BackgroundTime {
    private var id = UIBackgroundTaskIdentifier.invalid

    init() {
        id = UIApplication.shared.beginBackgroundTask { [weak self] in self?.end() }
    }

    func end() {
        guard id != .invalid else { return }
        UIApplication.shared.endBackgroundTask(id)
        id = .invalid
    }
}
