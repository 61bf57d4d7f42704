import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Alarms that only the app in the foreground can sound, since the system may not.
@MainActor
final class RingsInForegroundTests: XCTestCase, @unchecked Sendable {
    func testWhereTheSystemMayNotRingTheAppInFrontDoes() async throws {
        let phone = Handset(alarms: PlayedAlarms(.refused))
        await phone.launch()
        try await phone.begin()
        try await phone.act(.cast(rod: 1))
        try await phone.wakeUp()
        XCTAssertEqual(phone.slept.last ?? 0, 15 * 60, accuracy: 1)
        XCTAssertEqual(phone.rung, 1)
        let notice = try phone.state.content.notice
        XCTAssertTrue(notice.contains("15 min"), notice)
        phone.clock.forward(ms: 15 * 60_000)
        try await phone.act(.cast(rod: 1))
        phone.session.phase(.background)
        await phone.session.settled()
        try await phone.wakeUp()
        XCTAssertEqual(phone.rung, 1, "not in the background")
        let allowed = Handset()
        await allowed.launch()
        try await allowed.begin()
        try await allowed.act(.cast(rod: 1))
        XCTAssertEqual(allowed.slept, [], "the system rings")
    }

    func testAnAlarmWhoseMinutePassedWhileAnotherAppWasInFrontRingsOnce() async throws {
        let phone = Handset(alarms: PlayedAlarms(.refused))
        await phone.launch()
        try await phone.begin()
        try await phone.act(.cast(rod: 1))
        phone.session.phase(.inactive)
        await phone.session.settled()
        phone.clock.forward(ms: 15 * 60_000)
        try await phone.wakeUp()
        XCTAssertEqual(phone.rung, 0, "another app is in the foreground")
        for _ in 1...2 {
            phone.session.phase(.active)
            await phone.session.settled()
            try await phone.wakeUp()
            XCTAssertEqual(phone.rung, 1)
        }
        try await phone.act(.woundIn(rod: 1))
        try await phone.act(.cast(rod: 1))
        phone.clock.forward(ms: 15 * 60_000)
        try await phone.wakeUp()
        XCTAssertEqual(phone.rung, 2, "the next cast has an alarm of its own")
    }

    /// The phone corrects its clock by the network every few hours: the alarm has another time then, and is no other alarm.
    func testOneCastRingsInTheForegroundOnceThoughTheClockIsSet() async throws {
        let phone = Handset(alarms: PlayedAlarms(.refused))
        await phone.launch()
        try await phone.begin()
        try await phone.act(.cast(rod: 1))
        phone.clock.forward(ms: 15 * 60_000)
        try await phone.wakeUp()
        XCTAssertEqual(phone.rung, 1)
        for step: Int64 in [5_000, -8_000, 60_000] {
            phone.clock.set(by: step)
            phone.session.clockWasSet()
            await phone.session.settled()
            try await phone.wakeUp()
            XCTAssertEqual(phone.rung, 1, "the clock was set by \(step) ms")
        }
        try await phone.act(.phone(tap: .alarm(alarm: .after(40))))
        phone.clock.forward(ms: 25 * 60_000)
        try await phone.wakeUp()
        XCTAssertEqual(phone.rung, 2, "one planned again rings again")
    }
}
