import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Who is asked for what, and what is said where nothing rings or nothing is shown.
@MainActor
final class AskedToRingTests: XCTestCase, @unchecked Sendable {
    private let alarm = PlannedAlarm(id: "rod-1", at: Date(timeIntervalSince1970: 2_000_000_000), title: "", text: "")
    private var plan: PhonePlan {
        PhonePlan(keepsAwake: false, wait: RunningWait(title: "", text: "", since: nil, keys: []), alarms: [alarm])
    }

    /// A plan comes in the foreground, as with each tap while a session is open.
    private func comes(_ plan: PhonePlan, to reconciler: Reconciler) async throws {
        reconciler.askForAlarms { plan }
        reconciler.carryOut(plan)
        try await Task.sleep(nanoseconds: 50_000_000)
        await reconciler.settled()
    }

    /// The next day's process: alarms were allowed the day before.
    func testWhoHasAllowedOneCentreIsNotAskedForTheNext() async throws {
        let (system, notifications) = (PlayedAlarms(), PlayedAlarms(.notAsked))
        let reconciler = Reconciler(alarms: [system, notifications], activities: PlayedActivities())
        try await comes(plan, to: reconciler)
        XCTAssertEqual([system.requests, notifications.requests], [0, 0])
        XCTAssertEqual(system.pending, [alarm])
    }

    /// In the phone's settings, while the app is in memory.
    func testAlarmsThatAreTakenBackAreAskedForAtTheNextCentre() async throws {
        let (system, notifications) = (PlayedAlarms(.notAsked), PlayedAlarms(.notAsked))
        let reconciler = Reconciler(alarms: [system, notifications], activities: PlayedActivities())
        var told = 0
        reconciler.onAlarmsRefused = { told += 1 }
        try await comes(plan, to: reconciler)
        XCTAssertEqual([system.requests, notifications.requests, told], [1, 0, 0])
        system.change(to: .refused)
        try await comes(plan, to: reconciler)
        XCTAssertEqual([system.requests, notifications.requests, told], [1, 1, 0])
        XCTAssertEqual(notifications.pending, [alarm])
    }

    func testAlarmsThatAreTakenBackAndRefusedAtTheNextCentreAreReported() async throws {
        let (system, notifications) = (PlayedAlarms(.notAsked), PlayedAlarms(.notAsked, answers: false))
        let reconciler = Reconciler(alarms: [system, notifications], activities: PlayedActivities())
        var told = 0
        reconciler.onAlarmsRefused = { told += 1 }
        try await comes(plan, to: reconciler)
        system.change(to: .refused)
        try await comes(plan, to: reconciler)
        XCTAssertEqual([notifications.requests, told], [1, 1])
        try await comes(plan, to: reconciler)
        XCTAssertEqual([notifications.requests, told], [1, 1], "once")
    }

    /// A call closed the dialog: the system still says that nobody was asked.
    func testAQuestionWithoutAnAnswerIsReported() async throws {
        let notifications = PlayedAlarms(.notAsked)
        notifications.dialogFails = true
        let reconciler = Reconciler(alarms: [notifications], activities: PlayedActivities())
        var told = 0
        reconciler.onAlarmsRefused = { told += 1 }
        for _ in 0..<2 { try await comes(plan, to: reconciler) }
        XCTAssertEqual([notifications.requests, told], [1, 1], "asked once in a process, and said once")
    }

    /// While the dialog is open nothing is refused.
    func testNothingIsReportedBeforeThereIsAnAnswer() async throws {
        let notifications = PlayedAlarms(.notAsked, answers: false)
        notifications.answersAfter = 200_000_000
        let reconciler = Reconciler(alarms: [notifications], activities: PlayedActivities())
        var told = 0
        reconciler.onAlarmsRefused = { told += 1 }
        try await comes(plan, to: reconciler)
        XCTAssertEqual([notifications.requests, told], [1, 0])
        try await Task.sleep(nanoseconds: 400_000_000)
        await reconciler.settled()
        XCTAssertEqual([notifications.requests, told], [1, 1])
    }

    /// "Don't Allow" on the lock screen, or Live Activities off in the settings: no wait and no keys there from then on.
    func testARunningWaitThatMayNotBeShownIsSaidOnceASession() async throws {
        let phone = Handset()
        phone.activities.allow(false)
        await phone.launch()
        let words = shellWords(language: phoneLanguage()).waitHidden
        try await phone.act(.startSession(setup: nil))
        let notice = try phone.state.content.notice
        XCTAssertTrue(notice.hasSuffix(words), notice)
        try await phone.act(.cast(rod: 1))
        XCTAssertFalse(try phone.state.content.notice.contains(words), "not at every tap")
        XCTAssertEqual(phone.activities.list, [])
        try await phone.act(.endSession)
        try await phone.act(.startSession(setup: nil))
        XCTAssertTrue(try phone.state.content.notice.hasSuffix(words), "again in the next session")
        phone.activities.allow(true)
        try await phone.act(.cast(rod: 1))
        XCTAssertEqual(phone.activities.list.count, 1)
    }
}
