import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// A log that can't be opened, and what is saved from a damaged one.
@MainActor
final class OpeningTests: XCTestCase, @unchecked Sendable {
    func testADamagedLogIsRefusedAndSalvagedByOneKeyWithNothingDeleted() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 7)
        day.state.phase(.background)
        await day.state.settled()
        // Half of the file is overwritten.
        let files = FileManager.default
        let log = try XCTUnwrap(
            try files.contentsOfDirectory(at: day.folder, includingPropertiesForKeys: nil).first {
                (try? Data(contentsOf: $0).prefix(6)) == Data("SQLite".utf8)
            })
        var bytes = try Data(contentsOf: log)
        let from = 4_096
        XCTAssertGreaterThan(bytes.count, 2 * from)
        for i in from..<bytes.count where i % 7 == 0 { bytes[i] ^= 0x5A }
        try bytes.write(to: log)

        let clock = day.clock
        let opening = Opening(folder: day.folder, defaults: day.defaults, clock: { clock.moment })
        XCTAssertEqual(opening.trouble(on: Bankside.phone, letters: plainLetters), Sheet(), "nothing is said while it is being read")
        opening.start()
        await opening.settled()
        guard case .failed(let refusal) = opening.stage else { return XCTFail("a damaged log was opened") }
        XCTAssertEqual(refusal.kind, .damaged)
        let sheet = opening.trouble(on: Bankside.phone, letters: plainLetters)
        XCTAssertEqual(sheet["trouble"]?.spoken, refusal.text)
        XCTAssertEqual(sheet["salvage"]?.ask, .salvage)
        var opened = 0
        opening.onOpen = { _ in opened += 1 }
        opening.salvage()
        await opening.settled()
        XCTAssertEqual(opened, 1)
        let state = try await opening.ready()
        XCTAssertFalse(state.content.notice.isEmpty, "what was saved is said")
        let aside = try files.subpathsOfDirectory(atPath: day.folder.path).filter { path in
            (try? Data(contentsOf: day.folder.appendingPathComponent(path))) == bytes
        }
        XCTAssertFalse(aside.isEmpty, "the damaged log is kept")
    }

    /// The phone is locked at every look; what the core knows of the fault is not put down to a restart.
    func testAFaultOfTheLogIsNamedOnALockedPhoneToo() async throws {
        for kind in [ErrorKind.busy, .damaged, .newer, .foreign] {
            let phone = Handset()
            await phone.launch(nil, open: { _, _ in throw Refusal(kind: kind, text: "its own fault") }, readable: { false })
            guard case .failed = phone.session.opening.stage else { return XCTFail("\(kind) is put down to a restart") }
            do {
                _ = try await phone.session.tap(.cast)
                XCTFail("tapped a log that is not open")
            } catch {
                XCTAssertEqual(error.text, "its own fault")
            }
        }
    }

    /// The phone is locked again after each look, and its log can be read even so.
    func testOnlyARefusalOfTheSystemMeansThatThePhoneWasNotUnlockedYet() async throws {
        let folder = Handset().folder
        XCTAssertTrue(logMayBeRead(in: folder), "nothing is there that could be refused")
        let clock = HandClock()
        _ = try openLog(in: folder, clock: { clock.moment })
        XCTAssertTrue(logMayBeRead(in: folder))
        var asked: URL?
        XCTAssertFalse(
            logMayBeRead(in: folder) { file in
                asked = file
                throw CocoaError(.fileReadNoPermission)
            })
        XCTAssertTrue(FileManager.default.fileExists(atPath: try XCTUnwrap(asked).path), "a file of the log's own protection")
        XCTAssertFalse(logMayBeRead(in: folder) { _ in throw POSIXError(.EPERM) })
        XCTAssertTrue(logMayBeRead(in: folder) { _ in throw CocoaError(.fileReadUnknown) }, "another fault")
    }

    func testTheAppStartsInTheColoursAndForTheHandLastChosen() async throws {
        let day = try Bankside()
        await day.start()
        day.state.act(.set(hand: .left, scheme: .night))
        await day.state.settled()
        await day.look()
        day.state.phase(.background)
        await day.state.settled()
        let (clock, night) = (day.clock, Settings(hand: .left, scheme: .night))
        let opening = Opening(folder: day.folder, defaults: day.defaults, clock: { clock.moment })
        XCTAssertEqual(opening.settings, night, "before the log is open")
        opening.start()
        await opening.settled()
        guard case .open(let state) = opening.stage else { return XCTFail("not open") }
        XCTAssertEqual(state.content.settings, night, "before the core has answered")
    }

    func testALogThatCannotBeOpenedSaysSoInTheColoursLastChosen() async throws {
        let day = try Bankside()
        await day.start()
        day.state.act(.set(hand: nil, scheme: .night))
        await day.state.settled()
        await day.look()
        let opening = Opening(folder: day.folder, defaults: day.defaults)
        opening.start()
        await opening.settled()
        guard case .failed = opening.stage else { return XCTFail("two hold one log") }
        XCTAssertEqual(opening.settings.scheme, .night)
    }

    /// A new phone with a log from a backup: nothing is remembered beside the log.
    func testTheFirstBankIsDrawnInTheColoursOfTheLog() async throws {
        let day = try Bankside()
        await day.start()
        day.state.act(.set(hand: .left, scheme: .night))
        await day.state.settled()
        day.state.phase(.background)
        await day.state.settled()
        day.defaults.dictionaryRepresentation().keys.forEach(day.defaults.removeObject(forKey:))
        try day.restart()
        var drawn: [Settings] = []
        day.state.onChange = { [unowned day] in
            if day.state.content.bank != nil { drawn.append(day.state.content.settings) }
        }
        day.state.greet()
        await day.state.settled()
        XCTAssertFalse(drawn.isEmpty)
        XCTAssertEqual(drawn.filter { $0 != Settings(hand: .left, scheme: .night) }, [])
    }

    func testALogHeldByAnotherProcessIsRefusedWithoutThatKey() async throws {
        let day = try Bankside()
        await day.look()
        let opening = Opening(folder: day.folder, defaults: day.defaults)
        opening.start()
        await opening.settled()
        guard case .failed(let refusal) = opening.stage else { return XCTFail("two hold one log") }
        XCTAssertEqual(refusal.kind, .busy)
        XCTAssertNil(opening.trouble(on: Bankside.phone, letters: plainLetters)["salvage"])
    }
}
