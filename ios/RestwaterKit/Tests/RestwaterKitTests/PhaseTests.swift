import Foundation
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

    /// While the core is held, as by a long import, the seconds must not stand before the taps.
    func testSecondsDoNotQueueUpBeforeATap() async throws {
        let day = try Bankside()
        await day.start()
        let before = day.state.waiting
        day.state.ask({ _ in usleep(300_000) }) { _, _ in }
        for _ in 0..<5 { day.state.tick() }
        XCTAssertLessThanOrEqual(day.state.waiting - before, 2)
        await day.state.settled()
        day.clock.forward(ms: 5_000)
        day.state.tick()
        await day.state.settled()
        XCTAssertEqual(day.state.content.bank?.header.clock.isEmpty, false)
    }

    /// The file is made, the dialog is up, and the system ends the process.
    func testAFileThatWasNotSavedWhenTheProcessEndedIsSaid() async throws {
        let words = shellWords(language: phoneLanguage()).fileUnfinished
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 3)
        func nextProcess() async throws {
            day.state.phase(.background)
            await day.state.settled()
            try day.restart()
            day.state.comeUp()
            day.state.phase(.active)
            await day.look()
        }
        day.state.tap(.files(.save))
        await day.state.settled()
        try await nextProcess()
        XCTAssertEqual(day.state.content.notice, words)
        try await nextProcess()
        XCTAssertNotEqual(day.state.content.notice, words, "once")
        for end in [{ $0.dialogSaved() }, { $0.dialogCancelled() }, { _ in }] as [@MainActor (RestwaterState) -> Void] {
            day.state.tap(.files(.save))
            await day.state.settled()
            day.state.dialogClosed()
            end(day.state)
            try await nextProcess()
            XCTAssertNotEqual(day.state.content.notice, words, "it was answered")
        }
        // It is still being made.
        day.state.unfinished.isMarked = false
        day.state.tap(.files(.send))
        XCTAssertTrue(day.state.unfinished.isMarked)
        await day.state.settled()
    }

    /// The file of before was given up in the system's picker, which reports nothing then.
    func testAFileThatCannotBeMadeLeavesNoMark() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 3)
        day.state.tap(.files(.save))
        await day.state.settled()
        day.state.dialogClosed()
        let outgoing = day.folder.appendingPathComponent("outgoing")
        try FileManager.default.removeItem(at: outgoing)
        try Data().write(to: outgoing)
        day.state.tap(.files(.save))
        await day.state.settled()
        XCTAssertEqual(day.echoes.last, .refused)
        XCTAssertNil(day.state.content.files.dialog)
        XCTAssertFalse(day.state.unfinished.isMarked)
    }

    /// A task's thread is one of a few that every other task waits for; a checkpoint with fsync is slow on a full disk.
    func testTheWayIntoTheBackgroundBlocksNoThreadOfATask() async throws {
        let day = try Bankside()
        await day.start()
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("restwater-\(UUID().uuidString)")
        let real = try openLog(in: folder, clock: { [clock = day.clock] in clock.moment })
        let core = WatchedCore(unsafeFromHandle: real.uniffiCloneHandle())
        let state = RestwaterState(core: core, defaults: day.defaults, clock: { [clock = day.clock] in clock.moment })
        state.phase(.background)
        await state.settled()
        XCTAssertEqual(core.calls.all.map(\.name), ["latestBackup", "pause"])
        XCTAssertEqual(core.calls.all.map(\.inTask), [false, false])
    }

    func testARepeatedPhaseDoesNothingMore() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 3)
        for phase in [Phase.inactive, .background, .background, .inactive, .active, .active] { day.state.phase(phase) }
        await day.state.settled()
        XCTAssertEqual(day.bank.state, .out)
        XCTAssertFalse(day.echoes.contains(.refused), day.state.content.notice)
        await day.open(.files)
        XCTAssertEqual(day.state.content.files.view?.backups.count, 1, "one backup")
        for _ in 0..<2 { day.state.phase(.background) }
        await day.state.settled()
        XCTAssertNoThrow(try openLog(in: day.folder), "the log is released")
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

    /// A session in the background whose backup is being copied to a folder that does not answer.
    private func copying(_ files: SlowFiles) async throws -> Bankside {
        let day = try Bankside(files: files)
        await day.start()
        try await day.copiesBackups()
        await day.tap(.cast)
        await day.wait(minutes: 3)
        day.state.phase(.background)
        try await until("no backup is copied") { files.isWriting.isSet }
        return day
    }

    private func until(_ what: String, _ there: () -> Bool) async throws {
        for _ in 0..<500 where !there() { try await Task.sleep(nanoseconds: 10_000_000) }
        XCTAssertTrue(there(), what)
    }

    func testATapFromOutsideWaitsForNoOtherWorkAndHasItsOwnMoment() async throws {
        let files = SlowFiles()
        let day = try await copying(files)
        let answered = Flag(false)
        let tap = Task {
            let said = try await day.state.tapFromOutside(.bite)
            answered.set(true)
            return said
        }
        for _ in 0..<100 where !answered.isSet { try await Task.sleep(nanoseconds: 10_000_000) }
        XCTAssertTrue(answered.isSet, "it waits for the copy")
        day.clock.forward(ms: 5 * 60_000)
        files.release()
        let said = try await tap.value
        XCTAssertFalse(said.isEmpty)
        await day.state.settled()
        day.state.phase(.active)
        await day.state.settled()
        XCTAssertEqual(day.bank.state, .fishOn)
        XCTAssertTrue(day.bank.latest.contains { $0.contains("09:03") }, "\(day.bank.latest)")
    }

    func testATapFromOutsideIsNotBlamedForAnotherCall() async throws {
        let files = SlowFiles(fails: true)
        let day = try await copying(files)
        let tap = Task { try await day.state.tapFromOutside(.bite) }
        try await Task.sleep(nanoseconds: 200_000_000)
        files.release()
        let said = try await tap.value
        XCTAssertFalse(said.isEmpty)
        XCTAssertEqual(day.bank.state, .fishOn)
        await day.state.settled()
    }

    func testTheLogIsReleasedBeforeASlowCopy() async throws {
        let files = SlowFiles()
        let day = try await copying(files)
        defer { files.release() }
        XCTAssertNoThrow(try openLog(in: day.folder))
    }

    func testAFailedCopyIsReportedOnTheFilesScreenAndNotOnTheBank() async throws {
        let files = SlowFiles(fails: true)
        let day = try await copying(files)
        let (notice, echoes) = (day.state.content.notice, day.echoes)
        files.release()
        await day.state.settled()
        day.state.phase(.active)
        await day.look()
        XCTAssertEqual(day.state.content.notice, notice)
        XCTAssertEqual(day.echoes, echoes)
        await day.open(.files)
        XCTAssertEqual(day.sheet["notice"]?.spoken, shellWords(language: phoneLanguage()).fileNoSpace)
    }
}

/// A core that records where its blocking calls of the way into the background are made.
private final class WatchedCore: Restwater, @unchecked Sendable {
    final class Calls: @unchecked Sendable {
        private let lock = NSLock()
        private var list: [(name: String, inTask: Bool)] = []
        var all: [(name: String, inTask: Bool)] { lock.withLock { list } }
        func add(_ name: String) { lock.withLock { list.append((name, withUnsafeCurrentTask { $0 != nil })) } }
    }
    let calls = Calls()

    override func pause() throws {
        calls.add("pause")
        try super.pause()
    }

    override func latestBackup() throws -> String? {
        calls.add("latestBackup")
        return try super.latestBackup()
    }
}

extension Bankside {
    /// Backups are copied to a folder of their own, which is returned.
    @discardableResult
    func copiesBackups() async throws -> URL {
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("copies-\(UUID().uuidString)", isDirectory: true)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        state.copyBackups(to: folder)
        await state.settled()
        return folder
    }
}

/// A drive that answers only when it is told to, or fails then.
final class SlowFiles: FileAccess, @unchecked Sendable {
    let isWriting = Flag(false)
    private let fails: Bool
    /// Whether a file that is read has to be fetched first.
    private let reads: Bool
    private let gate = DispatchSemaphore(value: 0)

    init(fails: Bool = false, reads: Bool = false) { (self.fails, self.reads) = (fails, reads) }

    func release() { gate.signal() }

    func use(_ place: URL, to use: FileUse, _ work: (URL) throws -> Void) throws {
        if case .write = use {
            isWriting.set(true)
            gate.wait()
            gate.signal()
            if fails { throw CocoaError(.fileWriteOutOfSpace) }
        } else if reads {
            gate.wait()
            gate.signal()
        }
        try SystemFiles().use(place, to: use, work)
    }
}
