import Foundation
import RestwaterKit
import SwiftUI
import UIKit

/// The one core of the process, and what the phone does beside its screens.
@MainActor
final class Phone {
    static let shared = Phone()

    /// The log, opened at first use.
    let opening: Opening
    let contacts = Contacts()
    private let echoes = EchoPlayer()
    private let alarms = Alarms()
    private let lockScreen = LockScreen()
    private let position = PhonePosition()

    private init() {
        let support = FileManager.default.urls(for: .applicationSupportDirectory, in: .userDomainMask)
        let home = support.first ?? URL(fileURLWithPath: NSHomeDirectory())
        opening = Opening(folder: home.appendingPathComponent("log", isDirectory: true))
        opening.onOpen = { [unowned self] _ in listen() }
        LockScreenKey.onTap = { [unowned self] id in
            if let key = OutsideKey(id: id) { _ = try await tap(key) }
        }
        alarms.onDueInFront = { [echoes] in echoes.play(.recast) }
        listen()
    }

    private func listen() {
        guard case .success(let state) = opening.state else { return }
        state.onEcho = { [echoes] echo in echoes.play(echo) }
        state.onPositionWanted = { [unowned self] in position.read { state.positionRead($0) } }
        state.onPlan = { [unowned self] plan in carryOut(plan) }
        alarms.onNotAllowed = { state.alarmsAreOff() }
        if UIApplication.shared.applicationState == .active { state.phase(.active) }
    }

    private func carryOut(_ plan: PhonePlan) {
        UIApplication.shared.isIdleTimerDisabled = plan.keepsAwake
        // Asked when a session opens, before the first cast: never while a fish is on.
        if plan.keepsAwake { alarms.askOnce() }
        alarms.set(plan.alarms)
        lockScreen.show(plan.wait)
    }

    /// The app goes out of sight or comes back; the log is whole on the disk before iOS may suspend us.
    func phase(_ scene: ScenePhase) {
        guard case .success(let state) = opening.state else { return }
        switch scene {
        case .active: state.phase(.active)
        case .inactive: state.phase(.inactive)
        case .background:
            let time = BackgroundTime()
            state.phase(.background)
            Task {
                await state.settled()
                time.end()
            }
        @unknown default: break
        }
    }

    /// A file that another app hands over.
    func takeIn(_ url: URL) {
        if case .success(let state) = opening.state { state.offer(url) }
    }

    /// A tap from outside the screens: what the core said of it.
    func tap(_ key: OutsideKey) async throws -> String {
        try await opening.state.get().tapFromOutside(key)
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
