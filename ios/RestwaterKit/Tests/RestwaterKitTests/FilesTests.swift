import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Files out of one phone and into another, and what goes wrong with them.
@MainActor
final class FilesTests: XCTestCase, @unchecked Sendable {
    /// A phone with a cast and a bite, and the file it hands on.
    private func sent() async throws -> (Bankside, Outgoing) {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 12)
        await day.tap(.bite)
        await day.wait(minutes: 1)
        await day.open(.files)
        await day.tap("send")
        guard case .share(let file)? = day.state.seen.files.wanted else { throw Refusal(kind: .internal, text: "nothing to share") }
        return (day, file)
    }

    func testAFileOfOnePhoneIsLookedAtTakenInAndTakenBackOnAnother() async throws {
        let (_, file) = try await sent()
        XCTAssertTrue(file.name.hasSuffix(".restwater.json-seq"), file.name)
        let other = try Bankside()
        await other.look()
        other.state.offer(URL(fileURLWithPath: file.path))
        await other.state.settled()
        XCTAssertEqual(other.state.seen.showing, .files)
        XCTAssertFalse(try XCTUnwrap(other.sheet["incoming"]).spoken.isEmpty)
        await other.look()
        XCTAssertEqual(other.bank.state, .noSession, "a look changes nothing")
        let field = try XCTUnwrap(other.sheet["field-source"]?.field)
        other.state.tap(field.ask("the other bank"))
        await other.tap("take")
        XCTAssertNil(other.sheet["take"], "it is in by now")
        await other.tap("leave")
        await other.tap("imports")
        let line = try XCTUnwrap(other.state.seen.files.view?.imports.first)
        XCTAssertTrue(line.says.contains("the other bank"), line.says)
        await other.tap("import-\(line.id)")
        XCTAssertEqual(other.state.seen.files.view?.imports.first?.undone, true)
        await other.wait(seconds: 2)
        await other.tap("import-\(line.id)")
        XCTAssertEqual(other.state.seen.files.view?.imports.first?.undone, false)
    }

    func testTakingAFileInTwiceBringsNothingNew() async throws {
        let (day, file) = try await sent()
        day.state.wantMet(saved: true)
        XCTAssertTrue(day.state.seen.notice.contains(file.name))
        day.state.offer(URL(fileURLWithPath: file.path))
        await day.state.settled()
        XCTAssertEqual(day.state.seen.files.incoming?.new, 0)
        XCTAssertNil(day.sheet["take"])
        await day.tap("back")
        XCTAssertNotNil(day.sheet["send"])
    }

    func testAFileThatIsNoneAndOneThatIsGoneAreRefusedWithWords() async throws {
        let day = try Bankside()
        await day.look()
        let junk = FileManager.default.temporaryDirectory.appendingPathComponent("junk-\(UUID().uuidString).json-seq")
        try Data("no entries here".utf8).write(to: junk)
        day.state.offer(junk)
        await day.state.settled()
        XCTAssertFalse(day.state.seen.notice.isEmpty)
        XCTAssertEqual(day.echoes.last, .refused)
        day.state.offer(junk.appendingPathExtension("gone"))
        await day.state.settled()
        XCTAssertEqual(day.state.seen.notice, shellWords().fileGone)
    }

    func testABackupIsMadeReadAgainAndCopiedToTheFolderPicked() async throws {
        let (day, _) = try await sent()
        day.state.wantMet()
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("copies-\(UUID().uuidString)", isDirectory: true)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        await day.tap("backups")
        await day.tap("folder")
        XCTAssertEqual(day.state.seen.files.wanted, .folder)
        day.state.copyBackups(to: folder)
        await day.tap("back-up")
        let line = try XCTUnwrap(day.state.seen.files.view?.backups.first)
        let copies = try FileManager.default.contentsOfDirectory(atPath: folder.path)
        XCTAssertEqual(copies, [URL(fileURLWithPath: line.path).lastPathComponent])
        await day.tap("backup-\(line.says)")
        XCTAssertNotNil(day.sheet["incoming"], "what a backup would bring is shown first")
        await day.tap("back")
        await day.tap("backups")
        await day.tap("look-over")
        XCTAssertFalse(day.state.seen.notice.isEmpty)
    }
}
