import RestwaterCore
import XCTest

@testable import RestwaterKit

/// What one tap does: logged, ignored, refused, undone.
@MainActor
final class TapTests: XCTestCase, @unchecked Sendable {
    func testWithNothingOutTheSwimOpensAtTheThumb() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.swim)
        XCTAssertEqual(day.state.content.showing, .swim)
        await day.wait(seconds: 1)
        await day.tap("back")
        XCTAssertEqual(day.state.content.showing, .bank)
    }

    func testASecondTapIsIgnoredAndThatIsSeenAndFelt() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 5)
        await day.tap(.liner)
        let before = day.bank.latest
        await day.wait(ms: 300)
        await day.tap(.liner)
        XCTAssertEqual(day.bank.latest, before)
        XCTAssertTrue(day.sheet["notice"]!.spoken.contains("ignored"))
        XCTAssertEqual(day.echoes.suffix(2), [.logged, .ignored])
    }

    func testADoubleTapOnAKeyThatOpensTapsNothingOfWhatHasOpened() async throws {
        let day = try Bankside()
        await day.look()
        await day.twice("key-START")
        XCTAssertEqual(day.state.content.showing, .setup)
        XCTAssertEqual(day.bank.state, .noSession)
        await day.twice("key-START")
        XCTAssertEqual(day.bank.state, .ready, "the session begins, and no cast does")
        await day.tap(.cast)
        await day.wait(minutes: 5)
        await day.tap(.landedLate)
        await day.wait(seconds: 20)
        for (key, screen) in [(Key.fishClass, Showing.fish), (.weigh, .weight), (.feed, .feed), (.seen, .seen)] {
            let tag = "key-\(String.tag(key))"
            await day.turn(to: tag, by: "more")
            let (latest, echoes) = (day.bank.latest, day.echoes.count)
            await day.twice(tag)
            XCTAssertEqual(day.state.content.showing, screen)
            XCTAssertFalse(day.echoes.dropFirst(echoes).contains(.logged), "\(key)")
            while day.state.content.showing != .bank { await day.tap("back") }
            XCTAssertEqual(day.bank.latest, latest, "\(key)")
        }
        await day.turn(to: "key-TACKLE", by: "more")
        await day.tap(.tackle)
        let row = try XCTUnwrap(day.sheet.pieces.first { $0.tag.hasPrefix("row-") }?.tag)
        let echoes = day.echoes.count
        await day.twice(row)
        XCTAssertFalse(day.echoes.dropFirst(echoes).contains(.logged))
    }

    func testARejectedTapIsFeltAndSeenAndLogsNothing() async throws {
        let day = try Bankside()
        await day.start()
        let (latest, frames, echoes) = (day.bank.latest, day.state.content.rejectedTaps, day.echoes.count)
        day.state.tapRejected()
        await day.look()
        XCTAssertEqual(day.state.content.rejectedTaps, frames + 1)
        XCTAssertEqual(day.echoes.dropFirst(echoes), [.ignored])
        XCTAssertEqual(day.bank.latest, latest)
    }

    func testTypingMakesNoEcho() async throws {
        let day = try Bankside()
        await day.look()
        await day.tap(.start)
        let field = try XCTUnwrap(day.sheet["field-peg"]?.field)
        let echoes = day.echoes.count
        for text in ["1", "14", "14 b"] {
            day.state.tap(field.ask(text))
            await day.state.settled()
        }
        XCTAssertEqual(day.sheet["field-peg"]?.field?.value, "14 b")
        XCTAssertEqual(day.echoes.count, echoes)
        XCTAssertEqual(field.keyboard, .name, "a peg may have a name")
    }

    func testWhatTheCoreRefusesIsShownInItsWordsAndNothingIsLogged() async throws {
        let day = try Bankside()
        await day.look()
        let before = day.bank
        day.state.tap(.act(.cast(rod: 1)))
        await day.state.settled()
        XCTAssertFalse(day.state.content.notice.isEmpty)
        XCTAssertEqual(day.echoes, [.refused])
        XCTAssertEqual(day.bank.latest, before.latest)
        XCTAssertEqual(day.sheet["notice"]?.spoken, day.state.content.notice)
    }

    func testMoreOpensASheetThatAnAcceptedTapOrBackOrAFishCloses() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 2)
        await day.tap("more")
        XCTAssertNil(day.sheet["advice"], "nothing else of the Bank shows")
        XCTAssertNotNil(day.sheet["key-FEED"])
        await day.tap(.timeBackFive)
        XCTAssertEqual(day.state.content.paging.keys, 1, "refused: the session has not run so long")
        await day.wait(seconds: 2)
        await day.tap(.twitch)
        XCTAssertEqual(day.state.content.paging.keys, 0)
        await day.wait(seconds: 2)
        await day.tap("more")
        await day.tap("back")
        XCTAssertNotNil(day.sheet["key-BITE"])
        await day.tap("more")
        day.state.act(.bite(rod: 1))
        await day.state.settled()
        await day.look()
        XCTAssertNotNil(day.sheet["key-LANDED"], "the pad is back")
    }

    func testEveryEntryIsUndoneInOneTapAndRedone() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 9)
        await day.tap(.bite)
        await day.wait(seconds: 20)
        XCTAssertEqual(day.bank.state, .fishOn)
        await day.tap(.undo)
        XCTAssertEqual(day.bank.state, .out)
        XCTAssertEqual(day.bank.rods.map(\.digits), ["9:20"])
        await day.wait(seconds: 1)
        await day.turn(to: "key-REDO", by: "more")
        await day.tap(.redo)
        XCTAssertEqual(day.bank.state, .fishOn)
    }

    func testTapsAreAnsweredInTheOrderTheyCame() async throws {
        let day = try Bankside()
        await day.start()
        day.state.tap(.key(.send(action: .cast(rod: 1))))
        day.clock.forward(ms: 61_000)
        day.state.tap(.key(.send(action: .bite(rod: 1))))
        day.clock.forward(ms: 5_000)
        day.state.tap(.key(.send(action: .landed(rod: 1, fish: nil))))
        await day.state.settled()
        XCTAssertEqual(day.bank.state, .landed)
        XCTAssertEqual(day.echoes.suffix(3), [.logged, .logged, .logged])
    }

    func testATextTypedForOneRowIsNotOfferedInAnother() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.tackle)
        await day.tap("row-hooklength")
        let field = try XCTUnwrap(day.sheet.pieces.first { $0.tag.hasPrefix("typed-") }?.field)
        day.state.tap(field.ask("18 in"))
        await day.look()
        XCTAssertEqual(day.sheet.pieces.first { $0.tag.hasPrefix("typed-") }?.field?.value, "18 in")
        await day.tap("back")
        await day.tap("row-bait")
        XCTAssertEqual(day.sheet.pieces.first { $0.tag.hasPrefix("typed-") }?.field?.value, "")
        XCTAssertEqual(day.sheet.pieces.first { $0.tag.hasPrefix("send-") }?.enabled, false)
    }

    func testATypedTextThatIsRefusedStaysInItsLine() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.tackle)
        await day.tap("row-bait")
        let long = String(repeating: "m", count: 2_001)
        for (text, left) in [(long, long), ("bread punch", "")] {
            let field = try XCTUnwrap(day.sheet.pieces.first { $0.tag.hasPrefix("typed-") }?.field)
            day.state.tap(field.ask(text))
            await day.look()
            let send = try XCTUnwrap(day.sheet.pieces.first { $0.tag.hasPrefix("send-") }?.tag)
            await day.tap(send)
            XCTAssertEqual(day.sheet.pieces.first { $0.tag.hasPrefix("typed-") }?.field?.value, left)
            await day.wait(seconds: 2)
        }
    }

    func testTheSameAnswerTwiceIsTwoAnswers() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 2)
        await day.tap(.liner)
        let (notice, answers) = (day.state.content.notice, day.state.content.answers)
        await day.wait(minutes: 1)
        XCTAssertEqual(day.state.content.answers, answers, "a minute is no answer")
        await day.tap(.liner)
        XCTAssertEqual(day.state.content.notice, notice)
        XCTAssertGreaterThan(day.state.content.answers, answers)
    }

    func testHandAndSchemeAreChosenAndKept() async throws {
        let day = try Bankside()
        await day.start()
        let right = day.sheet["key-CAST"]!.place
        day.state.act(.set(hand: .left, scheme: nil))
        await day.look()
        let left = day.sheet["key-CAST"]!.place
        XCTAssertEqual(left.left + left.width, day.measure.width - right.left, accuracy: 0.01)
        day.state.act(.set(hand: nil, scheme: .night))
        await day.look()
        XCTAssertEqual(day.state.content.settings, Settings(hand: .left, scheme: .night))
        day.state.phase(.background)
        await day.state.settled()
        try day.restart()
        await day.look()
        XCTAssertEqual(day.state.content.settings, Settings(hand: .left, scheme: .night))
    }

    func testAFolderThatCannotBeWrittenIsRefusedWithAMessage() async {
        let file = FileManager.default.temporaryDirectory.appendingPathComponent("restwater-\(UUID().uuidString)")
        XCTAssertTrue(FileManager.default.createFile(atPath: file.path, contents: Data("not a folder".utf8)))
        XCTAssertThrowsError(try openLog(in: file)) { error in
            XCTAssertFalse(((error as? Refusal)?.text ?? "").isEmpty)
        }
    }
}
