import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Alarm, running wait and keeping awake, planned from the Bank as it stands.
@MainActor
final class PhonePlanTests: XCTestCase, @unchecked Sendable {
    /// A session with enough bites that there is a minute to recast by.
    private func taught() async throws -> Bankside {
        let day = try Bankside()
        await day.start()
        for (minutes, bite) in [(12, true), (14, true), (13, true), (40, false), (12, true), (13, true), (45, false), (14, true), (50, false)] as [(Int64, Bool)] {
            await day.tap(.cast)
            await day.wait(minutes: minutes)
            await day.tap(bite ? .bite : .woundIn)
            await day.wait(seconds: 30)
            if bite { await day.tap(.landed) }
            await day.wait(minutes: 2)
        }
        return day
    }

    func testTheAlarmComesAtTheMinuteToRecastByWithWhatTheBankSaysThen() async throws {
        let day = try await taught()
        await day.tap(.cast)
        await day.wait(minutes: 1)
        let recast = try XCTUnwrap(day.bank.strip.recastMin)
        let alarm = try XCTUnwrap(day.state.plan.alarms.first)
        XCTAssertEqual(day.state.plan.alarms.count, 1)
        let due = day.clock.moment.date.addingTimeInterval((recast - 1) * 60)
        XCTAssertEqual(alarm.at.timeIntervalSince(due), 1, accuracy: 1)
        // Time goes on to the alarm: the Bank's headline is the alarm's title.
        await day.wait(ms: Int64(alarm.at.timeIntervalSince(day.clock.moment.date) * 1_000))
        XCTAssertEqual(day.bank.advice.headline, alarm.title)
        XCTAssertEqual(day.bank.advice.tone, .past)
        XCTAssertEqual(day.state.plan.alarms, [], "it has gone off")
    }

    func testTheAlarmIsPlannedOnceAndGoesWithTheCast() async throws {
        let day = try await taught()
        await day.tap(.cast)
        await day.wait(minutes: 1)
        XCTAssertEqual(day.state.plan.alarms.count, 1)
        let plans = day.plans.count
        for _ in 0..<5 { await day.wait(seconds: 1) }
        XCTAssertEqual(day.plans.count, plans, "a second that passes is no new plan")
        await day.tap(.bite)
        XCTAssertEqual(day.state.plan.alarms, [])
        await day.wait(seconds: 5)
        await day.tap(.undo)
        XCTAssertEqual(day.state.plan.alarms.count, 1, "undo brings it back")
    }

    func testBeforeTheRecordSpeaksThereIsNoAlarm() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 10)
        XCTAssertNil(day.bank.strip.recastMin)
        XCTAssertEqual(day.state.plan.alarms, [])
    }

    func testTheRunningWaitCountsFromTheSplash() async throws {
        let day = try await taught()
        await day.tap(.cast)
        let splash = day.clock.moment.date
        await day.wait(minutes: 3, seconds: 20)
        let wait = try XCTUnwrap(day.state.plan.waits.first)
        XCTAssertEqual(wait.since, splash)
        XCTAssertEqual(wait.headline, day.bank.advice.headline)
        XCTAssertEqual(wait.recastBy?.timeIntervalSince(splash) ?? 0, try XCTUnwrap(day.bank.strip.recastMin) * 60, accuracy: 1)
        let again = try JSONDecoder().decode(RunningWait.self, from: JSONEncoder().encode(wait))
        XCTAssertEqual(again, wait)
        await day.tap(.woundIn)
        XCTAssertEqual(day.state.plan.waits, [])
    }

    func testTheGlassStaysLitWhileASessionIsOpen() async throws {
        let day = try Bankside()
        await day.look()
        XCTAssertFalse(day.state.plan.keepsAwake)
        await day.start()
        XCTAssertTrue(day.state.plan.keepsAwake)
        day.state.tap(.key(.end))
        await day.state.settled()
        await day.look()
        XCTAssertFalse(day.state.plan.keepsAwake)
    }
}
