import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Files exported from one phone and imported into another, and what can go wrong.
@MainActor
final class FilesTests: XCTestCase, @unchecked Sendable {
    /// A phone with a cast and a bite, and the file it exports.
    private func sent() async throws -> (Bankside, Outgoing) {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 12)
        await day.tap(.bite)
        await day.wait(minutes: 1)
        await day.open(.files)
        await day.tap("send")
        guard case .share(let file)? = day.state.content.files.dialog else { throw Refusal(kind: .internal, text: "nothing to share") }
        return (day, file)
    }

    func testAFileOfOnePhoneIsShownImportedAndUndoneOnAnother() async throws {
        let (_, file) = try await sent()
        XCTAssertTrue(file.name.hasSuffix(".restwater.json-seq"), file.name)
        let other = try Bankside()
        await other.look()
        other.state.offer(URL(fileURLWithPath: file.path))
        await other.state.settled()
        XCTAssertEqual(other.state.content.showing, .files)
        XCTAssertFalse(try XCTUnwrap(other.sheet["incoming"]).spoken.isEmpty)
        await other.look()
        XCTAssertEqual(other.bank.state, .noSession, "a look changes nothing")
        let field = try XCTUnwrap(other.sheet["field-source"]?.field)
        other.state.tap(field.ask("the other bank"))
        await other.tap("take")
        XCTAssertNil(other.sheet["take"], "it is in by now")
        await other.tap("leave")
        await other.tap("imports")
        let line = try XCTUnwrap(other.state.content.files.view?.imports.first)
        XCTAssertTrue(line.says.contains("the other bank"), line.says)
        await other.tap("import-\(line.id)")
        XCTAssertEqual(other.state.content.files.view?.imports.first?.undone, true)
        await other.wait(seconds: 2)
        await other.tap("import-\(line.id)")
        XCTAssertEqual(other.state.content.files.view?.imports.first?.undone, false)
    }

    func testImportingAFileTwiceAddsNothing() async throws {
        let (day, file) = try await sent()
        // The system closes its dialog before it reports the result.
        day.state.dialogClosed()
        day.state.dialogSaved()
        XCTAssertTrue(day.state.content.notice.contains(file.name))
        day.state.offer(URL(fileURLWithPath: file.path))
        await day.state.settled()
        XCTAssertEqual(day.state.content.files.incoming?.new, 0)
        XCTAssertNil(day.sheet["take"])
        await day.tap("back")
        XCTAssertNotNil(day.sheet["send"])
    }

    func testAFileThatComesWhileOtherWorkRunsIsLookedIntoAfterIt() async throws {
        let (_, first) = try await sent()
        let (_, second) = try await sent()
        let copy = FileManager.default.temporaryDirectory.appendingPathComponent("second-\(UUID().uuidString).restwater.json-seq")
        try FileManager.default.copyItem(at: URL(fileURLWithPath: second.path), to: copy)
        let other = try Bankside()
        await other.look()
        await other.open(.files)
        other.state.tap(.files(.offer(path: first.path)))
        other.state.tap(.files(.offer(path: copy.path)))
        await other.state.settled()
        XCTAssertEqual(other.state.content.files.path.map { URL(fileURLWithPath: $0).lastPathComponent }, copy.lastPathComponent)
    }

    func testAFileOfTheSameNameDoesNotTakeThePlaceOfTheOneThatIsShown() async throws {
        let (_, file) = try await sent()
        let other = try Bankside()
        await other.look()
        other.state.offer(URL(fileURLWithPath: file.path))
        await other.state.settled()
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("same-\(UUID().uuidString)")
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        let junk = folder.appendingPathComponent(URL(fileURLWithPath: file.path).lastPathComponent)
        try Data("Dear all".utf8).write(to: junk)
        other.state.offer(junk)
        await other.state.settled()
        await other.tap("take")
        await other.tap("leave")
        await other.tap("imports")
        XCTAssertEqual(other.state.content.files.view?.imports.count, 1)
    }

    func testAKeyThatIsTappedWhileOtherWorkRunsIsIgnoredAndThatIsFelt() async throws {
        let day = try Bankside()
        await day.start()
        await day.open(.files)
        let echoes = day.echoes.count
        day.state.tap(.files(.send))
        day.state.tap(.files(.send))
        await day.state.settled()
        XCTAssertEqual(day.echoes.dropFirst(echoes).filter { $0 == .ignored }, [.ignored])
    }

    func testAFileInTheSystemsInboxIsRemovedAndAnotherOneStays() async throws {
        let own = FileManager.default.temporaryDirectory.appendingPathComponent("own-\(UUID().uuidString)", isDirectory: true)
        try FileManager.default.createDirectory(at: own, withIntermediateDirectories: true)
        let beside = own.deletingLastPathComponent().appendingPathComponent("\(own.lastPathComponent)-beside.json-seq")
        for file in [own.appendingPathComponent("a.json-seq"), beside] {
            try Data("entries".utf8).write(to: file)
            let copy = try Inbox.take(file, by: SystemFiles(), own: own)
            XCTAssertEqual(try String(contentsOfFile: copy, encoding: .utf8), "entries")
        }
        XCTAssertEqual(try FileManager.default.contentsOfDirectory(atPath: own.path), [])
        XCTAssertTrue(FileManager.default.fileExists(atPath: beside.path))
    }

    /// The system ends a process whenever it likes, so nobody may have removed them.
    func testCopiesOfFilesOfADayAgoAreRemoved() async throws {
        let files = FileManager.default
        func copy(hoursOld: Double) throws -> URL {
            let folder = files.temporaryDirectory.appendingPathComponent("inbox-\(UUID().uuidString)", isDirectory: true)
            try files.createDirectory(at: folder, withIntermediateDirectories: true)
            try files.setAttributes([.modificationDate: Date() - hoursOld * 3_600], ofItemAtPath: folder.path)
            return folder
        }
        let (old, new) = (try copy(hoursOld: 25), try copy(hoursOld: 1))
        let file = files.temporaryDirectory.appendingPathComponent("letter-\(UUID().uuidString).txt")
        try Data("Dear all".utf8).write(to: file)
        Inbox.finished(try Inbox.take(file, by: SystemFiles()))
        XCTAssertFalse(files.fileExists(atPath: old.path))
        XCTAssertTrue(files.fileExists(atPath: new.path), "it may be being imported")
    }

    func testAFileOfAnotherKindAndAMissingOneAreRefusedWithAMessage() async throws {
        let day = try Bankside()
        await day.look()
        let junk = FileManager.default.temporaryDirectory.appendingPathComponent("junk-\(UUID().uuidString).json-seq")
        try Data("no entries here".utf8).write(to: junk)
        day.state.offer(junk)
        await day.state.settled()
        XCTAssertFalse(day.state.content.notice.isEmpty)
        XCTAssertEqual(day.echoes.last, .refused)
        day.state.offer(junk.appendingPathExtension("gone"))
        await day.state.settled()
        XCTAssertEqual(day.state.content.notice, shellWords(language: phoneLanguage()).fileGone)
    }

    func testAnAnswerBelongsToTheDialogThatWasShownLast() async throws {
        let (day, file) = try await sent()
        day.state.dialogClosed()
        day.state.dialogCancelled()
        await day.tap("take-in")
        XCTAssertEqual(day.state.content.files.dialog, .pick)
        day.state.dialogClosed()
        day.state.dialogPicked(URL(fileURLWithPath: file.path))
        await day.state.settled()
        XCTAssertNotNil(day.sheet["incoming"])
        await day.tap("back")
        await day.tap("save")
        day.state.dialogClosed()
        day.state.dialogFailed(CocoaError(.fileWriteOutOfSpace))
        XCTAssertEqual(day.state.content.notice, shellWords(language: phoneLanguage()).fileNoSpace)
        day.state.dialogSaved()
        XCTAssertEqual(day.state.content.notice, shellWords(language: phoneLanguage()).fileNoSpace, "nothing is waited for any more")
    }

    /// File coordination waits for other processes and for drives.
    func testLocationsOfOtherAppsAreUsedOffTheMainThreadAndACopyIsWrittenNotRead() async throws {
        let files = WatchedFiles()
        let day = try Bankside(files: files)
        await day.start()
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("copies-\(UUID().uuidString)", isDirectory: true)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        await day.open(.files)
        await day.tap("backups")
        await day.tap("folder")
        day.state.dialogPicked(folder)
        await day.state.settled()
        await day.tap("back-up")
        day.state.offer(folder.appendingPathComponent(try XCTUnwrap(FileManager.default.contentsOfDirectory(atPath: folder.path).first)))
        await day.state.settled()
        XCTAssertEqual(files.uses, ["read", "write", "read"])
        XCTAssertFalse(files.onMain.isSet)
    }

    func testABackupIsMadeReadAgainAndCopiedToTheFolderPicked() async throws {
        let (day, _) = try await sent()
        day.state.dialogClosed()
        day.state.dialogCancelled()
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("copies-\(UUID().uuidString)", isDirectory: true)
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        await day.tap("backups")
        await day.tap("folder")
        XCTAssertEqual(day.state.content.files.dialog, .folder)
        // In the order of Apple's page on fileImporter: isPresented is set to false, then onCompletion is called.
        day.state.dialogClosed()
        XCTAssertNil(day.state.content.files.dialog)
        day.state.dialogPicked(folder)
        await day.state.settled()
        XCTAssertEqual(day.state.content.notice, folder.lastPathComponent)
        XCTAssertNil(day.sheet["incoming"], "a folder is nothing to take in")
        await day.tap("back-up")
        let line = try XCTUnwrap(day.state.content.files.view?.backups.first)
        let copies = try FileManager.default.contentsOfDirectory(atPath: folder.path)
        XCTAssertEqual(copies, [URL(fileURLWithPath: line.path).lastPathComponent])
        await day.tap("backup-\(line.says)")
        XCTAssertNotNil(day.sheet["incoming"], "what a backup would bring is shown first")
        await day.tap("back")
        await day.tap("backups")
        await day.tap("look-over")
        XCTAssertFalse(day.state.content.notice.isEmpty)
    }

    /// A folder whose provider waits for its network: BITE and the Bank must not wait with it.
    func testBackLeadsToTheBankWhileTheFolderDoesNotAnswer() async throws {
        let files = SlowFiles()
        let day = try Bankside(files: files)
        await day.start()
        let folder = try await day.copiesBackups()
        await day.tap(.cast)
        await day.wait(minutes: 1)
        await day.open(.files)
        await day.tap("backups")
        day.state.tap(.files(.backUp))
        for _ in 0..<500 where !files.isWriting.isSet { try await Task.sleep(nanoseconds: 10_000_000) }
        XCTAssertTrue(files.isWriting.isSet, "no backup is copied")
        for _ in 0..<4 {
            day.state.tap(.back)
            try await Task.sleep(nanoseconds: 20_000_000)
        }
        XCTAssertEqual(day.state.content.showing, .bank)
        XCTAssertNil(day.state.running, "another file can be looked into meanwhile")
        files.release()
        await day.state.settled()
        XCTAssertEqual(try FileManager.default.contentsOfDirectory(atPath: folder.path).count, 1, "the copy is made, once")
    }

    /// A file of a cloud drive without much of a signal: the screen says that it is still to come.
    func testAFileThatIsStillToComeIsSaid() async throws {
        let files = SlowFiles(reads: true)
        let day = try Bankside(files: files)
        await day.start()
        day.state.offer(day.folder.appendingPathComponent("gone.json"))
        for _ in 0..<500 where day.state.content.showing != .files { try await Task.sleep(nanoseconds: 10_000_000) }
        XCTAssertTrue(day.sheet.pieces.contains { $0.spoken == "…" }, "\(day.sheet.pieces.map(\.spoken))")
        files.release()
        await day.state.settled()
        XCTAssertFalse(day.sheet.pieces.contains { $0.spoken == "…" })
        XCTAssertEqual(day.state.content.notice, shellWords(language: phoneLanguage()).fileGone)
    }

    /// A film that was opened by mistake: on a full phone the next entry could not be saved while it is being copied.
    func testAHugeFileLeavesTheLogItsRoom() async throws {
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("shelf-\(UUID().uuidString)")
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        let (film, letter) = (folder.appendingPathComponent("film"), folder.appendingPathComponent("letter"))
        try Data(count: 6 << 20).write(to: film)
        try Data(count: 100 << 10).write(to: letter)
        let almostFull: (URL) throws -> Int64? = { _ in 20 << 20 }
        XCTAssertThrowsError(try Inbox.take(film, by: SystemFiles(), free: almostFull)) { error in
            XCTAssertEqual(FileTrouble.refusal(of: error).text, shellWords(language: phoneLanguage()).fileNoSpace)
        }
        for taken in [try Inbox.take(letter, by: SystemFiles(), free: almostFull), try Inbox.take(film, by: SystemFiles())] {
            XCTAssertTrue(FileManager.default.fileExists(atPath: taken))
            Inbox.finished(taken)
        }
        try FileManager.default.removeItem(at: folder)
    }

    func testACopyThatFailsAfterBackUpIsReportedThere() async throws {
        let files = SlowFiles(fails: true)
        files.release()
        let day = try Bankside(files: files)
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 1)
        try await day.copiesBackups()
        await day.open(.files)
        await day.tap("backups")
        await day.tap("back-up")
        XCTAssertEqual(day.state.content.notice, shellWords(language: phoneLanguage()).fileNoSpace)
        XCTAssertEqual(day.state.content.files.view?.backups.isEmpty, false, "the backup itself is there")
    }

    /// On every other screen BACK leads out of it, whatever works on files meanwhile.
    func testBackOnAnotherScreenGivesNoImportUp() async throws {
        let day = try Bankside()
        await day.start()
        await day.open(.swim)
        let work = Work()
        day.state.running = work
        await day.tap("back")
        XCTAssertEqual(day.state.content.showing, .bank)
    }

    /// Whoever leaves the page of a file during its import either brings nothing in or reads what came in.
    func testAnImportThatIsLeftBringsNothingOrSaysWhatItBrought() async throws {
        let (_, file) = try await sent()
        for _ in 0..<3 {
            let other = try Bankside()
            await other.look()
            other.state.offer(URL(fileURLWithPath: file.path))
            await other.state.settled()
            let copy = try XCTUnwrap(other.state.content.files.path)
            other.state.tap(.files(.takeIn))
            other.state.tap(.files(.leave))
            await other.state.settled()
            await other.look()
            let files = other.state.content.files
            XCTAssertEqual(files.page == .incoming && files.taken, files.view?.imports.isEmpty == false)
            XCTAssertEqual(files.page == .incoming, FileManager.default.fileExists(atPath: copy), "its copy is kept as long as it is shown")
            if other.echoes.last == .refused { XCTAssertEqual(other.state.content.notice, "Cancelled. Nothing was changed.") }
        }
    }

    /// The log does not grow after END, so no further backup is made that could be copied in its place.
    func testACopyThatFailedIsMadeTheNextTimeAndAFolderPickedLaterGetsTheBackupThatIsThere() async throws {
        let day = try Bankside(files: FolderWithoutSignal())
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 12)
        func folder() throws -> URL {
            let folder = FileManager.default.temporaryDirectory.appendingPathComponent("copies-\(UUID().uuidString)", isDirectory: true)
            try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
            return folder
        }
        func names(_ folder: URL) throws -> [String] { try FileManager.default.contentsOfDirectory(atPath: folder.path) }
        let first = try folder()
        day.state.copyBackups(to: first)
        await day.state.settled()
        XCTAssertEqual(try names(first), [], "there is no backup yet")
        day.state.phase(.background)
        await day.state.settled()
        XCTAssertEqual(try names(first), [], "no signal")
        day.state.phase(.active)
        await day.wait(minutes: 1)
        day.state.phase(.background)
        await day.state.settled()
        let copied = try names(first)
        XCTAssertEqual(copied.count, 1, "nothing was logged since, and the copy is made")
        let second = try folder()
        day.state.phase(.active)
        day.state.copyBackups(to: second)
        await day.state.settled()
        XCTAssertEqual(try names(second), copied)
    }
}

/// Copies of backups in the angler's folder.
final class CopiesTests: XCTestCase {
    /// The rule is the core's: of one hour, the latest stays. What this phone did not copy there is never touched.
    func testCopiesInTheFolderAreThinnedAsTheBackupsOfThePhoneAre() throws {
        let files = FileManager.default
        func made(_ name: String) throws -> URL {
            let folder = files.temporaryDirectory.appendingPathComponent("\(name)-\(UUID().uuidString)", isDirectory: true)
            try files.createDirectory(at: folder, withIntermediateDirectories: true)
            return folder
        }
        func name(_ minute: Int) -> String { "restwater-20260110T08\(minute)00Z.db" }
        let (own, folder) = (try made("own"), try made("copies"))
        let another = "restwater-20260110T080500Z.db"
        for name in [another, "notes.txt"] { try Data("kept".utf8).write(to: folder.appendingPathComponent(name)) }
        let copies = BackupFolder(defaults: UserDefaults(suiteName: "copies-\(UUID().uuidString)")!, files: SystemFiles())
        _ = try copies.pick(folder)
        for minute in [10, 20, 30, 40] {
            let backup = own.appendingPathComponent(name(minute))
            try Data("the log".utf8).write(to: backup)
            try copies.copy(backup.path)
        }
        func there() throws -> Set<String> { Set(try files.contentsOfDirectory(atPath: folder.path)) }
        XCTAssertEqual(try there(), [another, "notes.txt", name(40)])
        XCTAssertThrowsError(try copies.copy(own.appendingPathComponent(name(50)).path), "there is no such backup")
        XCTAssertEqual(try there(), [another, "notes.txt", name(40)], "a copy that failed removes nothing")
    }
}

/// A folder that can't be reached the first time, as in a cloud without a signal.
final class FolderWithoutSignal: FileAccess, @unchecked Sendable {
    struct NoSignal: Error {}
    private let lock = NSLock()
    private var fails = 1

    func use(_ place: URL, to use: FileUse, _ work: (URL) throws -> Void) throws {
        if case .write = use {
            let fails = lock.withLock {
                defer { self.fails -= 1 }
                return self.fails > 0
            }
            if fails { throw NoSignal() }
        }
        try SystemFiles().use(place, to: use, work)
    }
}

/// The system's files, watched.
final class WatchedFiles: FileAccess, @unchecked Sendable {
    let onMain = Flag(false)
    private let lock = NSLock()
    private var seen: [String] = []
    var uses: [String] { lock.withLock { seen } }

    func use(_ place: URL, to use: FileUse, _ work: (URL) throws -> Void) throws {
        if Thread.isMainThread { onMain.set(true) }
        lock.withLock {
            switch use {
            case .read: seen.append("read")
            case .remove: seen.append("remove")
            case .write: seen.append("write")
            }
        }
        try SystemFiles().use(place, to: use, work)
    }
}
