import RestwaterCore
import XCTest

@testable import RestwaterKit

/// The app goes to the background and comes back, is ended and started again.
@MainActor
final class PhaseTests: XCTestCase, @unchecked Sendable {
    func testTheLogIsReleasedInTheBackgroundAndTheWaitIsRightAfterwards() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 3)
        // While the log is held, nobody else can open it; in the background it is released as one complete file.
        XCTAssertThrowsError(try openLog(in: day.folder)) { XCTAssertEqual(($0 as? Refusal)?.kind, .busy) }
        day.state.phase(.background)
        await day.state.settled()
        XCTAssertEqual(try FileManager.default.contentsOfDirectory(atPath: day.folder.path).filter { $0.hasSuffix("-wal") }, [])
        XCTAssertNoThrow(try openLog(in: day.folder))
        // A tick in the background does not open it again.
        day.state.refresh()
        await day.state.settled()
        XCTAssertNoThrow(try openLog(in: day.folder))
        day.clock.forward(ms: 5 * 60_000)
        day.state.phase(.active)
        await day.state.settled()
        XCTAssertEqual(day.bank.rods.map(\.digits), ["8:00"])
    }

    func testATapFromOutsideWhileAwayIsLoggedAndLeavesTheLogReleased() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 20)
        day.state.phase(.background)
        await day.state.settled()
        day.state.tap(.key(.send(action: .woundIn(rod: 1))))
        await day.state.settled()
        XCTAssertEqual(day.bank.state, .ready)
        XCTAssertEqual(day.echoes.last, .logged)
        XCTAssertNoThrow(try openLog(in: day.folder))
    }

    func testARepeatedPhaseDoesNothingMore() async throws {
        let day = try Bankside()
        await day.start()
        for phase in [Phase.inactive, .background, .background, .inactive, .active, .active] { day.state.phase(phase) }
        await day.state.settled()
        XCTAssertEqual(day.bank.state, .ready)
        XCTAssertEqual(day.state.content.notice, day.state.content.notice.trimmingCharacters(in: .whitespaces))
        XCTAssertFalse(day.echoes.contains(.refused))
    }

    func testARestartLosesNothingAndUndoGoesOn() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 12)
        await day.tap(.liner)
        let latest = day.bank.latest
        day.state.phase(.background)
        await day.state.settled()
        day.clock.reboot()
        day.clock.forward(ms: 60_000)
        try day.restart()
        await day.look()
        XCTAssertEqual(day.bank.rods.map(\.digits), ["13:00"])
        XCTAssertEqual(day.bank.latest, latest)
        await day.tap(.undo)
        XCTAssertNotEqual(day.bank.latest, latest)
        await day.wait(seconds: 1)
        await day.turn(to: "key-REDO", by: "more")
        await day.tap(.redo)
        XCTAssertEqual(day.bank.latest.count, latest.count)
    }
}
