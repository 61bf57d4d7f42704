import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// An alarm whose minute moves into the past rings at once, and its old minute rings no more.
@MainActor
final class MovedAlarmTests: XCTestCase, @unchecked Sendable {
    private func rodOneIsOut(alarmAfter minutes: UInt16) async throws -> Handset {
        let phone = Handset()
        await phone.launch()
        try await phone.begin()
        try await phone.act(.phone(tap: .alarm(alarm: .after(minutes))))
        try await phone.act(.cast(rod: 1))
        XCTAssertEqual(phone.alarms.pending.map(\.id), ["rod-1"])
        return phone
    }

    private func rings(_ phone: Handset, after minutes: UInt16) throws {
        let alarm = try XCTUnwrap(phone.alarms.pending.first)
        XCTAssertEqual(phone.alarms.pending.count, 1, "the old one is gone")
        XCTAssertTrue("\(alarm.title) \(alarm.text)".contains("\(minutes) min"), "\(alarm.title) \(alarm.text)")
        XCTAssertLessThanOrEqual(alarm.at, phone.clock.moment.date, "it rings now")
        XCTAssertEqual(alarm.systemId, try phone.state.plan.due.first?.systemId)
    }

    func testAnAlarmChosenForAnEarlierMinuteRingsNowAndNotAtItsOldOne() async throws {
        let phone = try await rodOneIsOut(alarmAfter: 20)
        phone.clock.forward(ms: 15 * 60_000)
        try await phone.act(.phone(tap: .alarm(alarm: .after(12))))
        try rings(phone, after: 12)
        // The same again: it is about to ring, or has rung.
        phone.session.phase(.active)
        await phone.session.settled()
        try rings(phone, after: 12)
        try await phone.act(.woundIn(rod: 1))
        XCTAssertEqual(phone.alarms.pending, [])
    }

    func testAMovedAlarmThatItsCentreRefusesRingsThroughTheNextOne() async throws {
        let (system, notifications) = (PlayedAlarms(), PlayedAlarms())
        let old = PlannedAlarm(id: "rod-1", at: Date(timeIntervalSince1970: 2_000_000_000), title: "20 min", text: "")
        let moved = PlannedAlarm(id: "rod-1", at: Date(timeIntervalSince1970: 1_000_000_000), title: "12 min", text: "")
        let reconciler = Reconciler(alarms: [system, notifications], activities: PlayedActivities())
        reconciler.carryOut(PhonePlan(keepsAwake: false, wait: nil, alarms: [old]))
        await reconciler.settled()
        system.declines = ["rod-1"]
        reconciler.carryOut(PhonePlan(keepsAwake: false, wait: nil, alarms: [], due: [moved]))
        await reconciler.settled()
        XCTAssertEqual([system.pending, notifications.pending], [[], [moved]])
    }
}
