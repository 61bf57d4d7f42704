import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Answers are shown in the order in which the core gave them, even if the caller that asked goes on later.
@MainActor
final class OrderTests: XCTestCase, @unchecked Sendable {
    func testAnOlderReadingFromOutsideDoesNotReplaceANewerPlanOrBank() async throws {
        let day = try Bankside()
        await day.start()
        let (state, gate, at) = (day.state, DispatchSemaphore(value: 0), day.clock.moment)
        // The core is busy; meanwhile the lock screen reads what is so now, and a cast is tapped in the app.
        state.ask({ _ in gate.wait() }) { _, _ in }
        let outside = Task { try await state.waitInWords() }
        for _ in 0..<20 { await Task.yield() }
        state.ask({ core in try core.act(action: .cast(rod: 1), at: at) }) { state, update in state.took(update) }
        state.readPlan()
        gate.signal()
        // The main thread is busy too until the core has answered all of it.
        occupyMain(seconds: 0.5)
        _ = try await outside.value
        await state.settled()
        XCTAssertEqual(day.bank.state, .out)
        XCTAssertTrue(try XCTUnwrap(state.plan.wait).keys.contains { $0.key == .bite }, "\(state.plan)")
        XCTAssertEqual(day.plans.last, state.plan)
    }

    /// The log was being opened meanwhile, or the process had been suspended.
    func testAPlanReadLongAfterItsTapSetsNoAlarmThatIsDueBefore() async throws {
        let day = try Bankside()
        await day.start()
        day.state.act(.phone(tap: .alarm(alarm: .after(15))))
        await day.state.settled()
        await day.tap(.cast)
        await day.wait(minutes: 14)
        let tapped = day.clock.moment
        day.clock.forward(ms: 2 * 60_000)
        let read = day.plans.count
        _ = try await day.state.tapFromOutside(try XCTUnwrap(OutsideKey(id: "LINER")), at: tapped)
        await day.state.settled()
        let now = day.clock.moment.date
        XCTAssertGreaterThan(day.plans.count, read)
        for plan in day.plans.dropFirst(read) {
            XCTAssertEqual(plan.alarms.filter { $0.at < now }, [])
            XCTAssertEqual(plan.due.count, 1)
        }
    }

    /// The screen of the last time may be of another fish, and its keys would go on being about it.
    func testWhileTheCoreIsBusyNoScreenOfAnEarlierTimeComesUp() async throws {
        let (day, gate) = (try Bankside(), DispatchSemaphore(value: 0))
        await day.start()
        await day.open(.waits)
        await day.tap("back")
        let state = day.state
        state.ask({ _ in gate.wait() }) { _, _ in }
        state.tap(.open(.waits))
        for _ in 0..<20 { await Task.yield() }
        XCTAssertEqual(state.content.showing, .bank)
        gate.signal()
        await state.settled()
        XCTAssertEqual(state.content.showing, .waits)
    }

    func testAScreenThatWasAskedForDoesNotComeUpAfterBack() async throws {
        let (day, gate) = (try Bankside(), DispatchSemaphore(value: 0))
        await day.start()
        await day.tap("screens")
        day.state.ask({ _ in gate.wait() }) { _, _ in }
        day.state.tap(.open(.waits))
        day.state.tap(.back)
        gate.signal()
        await day.state.settled()
        XCTAssertEqual(day.state.content.showing, .bank)
    }

    private func occupyMain(seconds: TimeInterval) { Thread.sleep(forTimeInterval: seconds) }
}
