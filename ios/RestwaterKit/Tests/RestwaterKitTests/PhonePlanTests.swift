import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Alarm, running wait and keeping awake, planned from the Bank as it is.
@MainActor
final class PhonePlanTests: XCTestCase, @unchecked Sendable {
    /// A session with enough bites to have a minute to recast by.
    private func taught() async throws -> Bankside {
        let day = try Bankside()
        await day.start()
        for (minutes, bite) in [(12, true), (14, true), (13, true), (40, false), (12, true), (13, true), (45, false), (14, true), (50, false)]
            as [(Int64, Bool)]
        {
            await day.tap(.cast)
            await day.wait(minutes: minutes)
            await day.tap(bite ? .bite : .woundIn)
            await day.wait(seconds: 30)
            if bite { await day.tap(.landed) }
            await day.wait(minutes: 2)
        }
        return day
    }

    func testTheAlarmComesAtTheMinuteToRecastByAndEndsWithTheCast() async throws {
        let day = try await taught()
        await day.tap(.cast)
        let splash = day.clock.moment.date
        await day.wait(minutes: 1)
        let recast = try XCTUnwrap(day.bank.strip.recastMin)
        let alarm = try XCTUnwrap(day.state.plan.alarms.first)
        XCTAssertEqual(day.state.plan.alarms.count, 1)
        XCTAssertEqual(alarm.at.timeIntervalSince(splash), recast * 60, accuracy: 1)
        XCTAssertFalse(alarm.title.isEmpty)
        await day.tap(.bite)
        XCTAssertEqual(day.state.plan.alarms, [])
        await day.wait(seconds: 5)
        await day.tap(.undo)
        XCTAssertEqual(day.state.plan.alarms, [alarm], "undo brings it back")
    }

    func testThePassingOfASecondIsNoNewPlan() async throws {
        let day = try await taught()
        await day.tap(.cast)
        let plan = day.state.plan
        for _ in 0..<5 {
            await day.wait(seconds: 1, ms: 137)
            day.state.readPlan()
            await day.state.settled()
        }
        XCTAssertEqual(day.state.plan, plan)
        XCTAssertEqual(day.plans.suffix(5), Array(repeating: plan, count: 5)[...], "told each time: the system may hold another")
    }

    func testWhileTheRecordSaysNothingThereIsNoAlarmUnlessMinutesAreChosen() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        let splash = day.clock.moment.date
        await day.wait(minutes: 2)
        XCTAssertEqual(day.state.plan.alarms, [])
        await day.open(.phone)
        await day.tap("row-alarm")
        await day.tap("choice-alarm-15")
        XCTAssertEqual(day.state.plan.alarms.map { $0.at.timeIntervalSince(splash) }, [15.0 * 60])
    }

    func testTheRunningWaitCountsFromTheSplashAndHasTheMostCommonKeys() async throws {
        let day = try await taught()
        await day.tap(.cast)
        let splash = day.clock.moment.date
        await day.wait(minutes: 3, seconds: 20)
        let wait = try XCTUnwrap(day.state.plan.wait)
        XCTAssertEqual(wait.since, splash)
        XCTAssertFalse(wait.title.isEmpty)
        XCTAssertEqual(wait.keys.map(\.id), ["BITE", "WOUND_IN", "CAST"])
        XCTAssertFalse(wait.keys.contains { $0.label.isEmpty })
    }

    func testATapOnTheLockScreenIsATapOnTheBank() async throws {
        let day = try await taught()
        await day.tap(.cast)
        await day.wait(minutes: 3)
        day.state.phase(.background)
        await day.state.settled()
        let key = try XCTUnwrap(OutsideKey(id: "WOUND_IN"))
        let said = try await day.state.tapFromOutside(key)
        XCTAssertFalse(said.isEmpty)
        XCTAssertEqual(day.bank.state, .ready)
        // Nothing is out any more: the Bank offers no such key, and nothing is logged.
        day.clock.forward(ms: 5_000)
        let latest = day.bank.latest
        do {
            _ = try await day.state.tapFromOutside(key)
            XCTFail("wound in twice")
        } catch {
            XCTAssertEqual(error.kind, .notNow)
            XCTAssertFalse(error.text.isEmpty)
        }
        XCTAssertEqual(day.bank.latest, latest)
        XCTAssertNil(OutsideKey(id: "NO_SUCH_KEY"))
    }

    func testTheScreenStaysOnWhileASessionIsOpen() async throws {
        let day = try Bankside()
        await day.look()
        XCTAssertFalse(day.state.plan.keepsAwake)
        await day.start()
        XCTAssertTrue(day.state.plan.keepsAwake)
        XCTAssertNotNil(day.state.plan.wait)
        day.state.tap(.key(.send(action: .endSession)))
        await day.state.settled()
        await day.look()
        XCTAssertEqual(day.state.plan, .none)
    }
}
