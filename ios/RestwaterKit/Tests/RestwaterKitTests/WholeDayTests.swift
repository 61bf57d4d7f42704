import RestwaterCore
import XCTest

@testable import RestwaterKit

/// A day from set-up to its end, tapped key by key, with the real library.
@MainActor
final class WholeDayTests: XCTestCase, @unchecked Sendable {
    func testAWholeDayByTheKeys() async throws {
        let day = try Bankside()
        await day.look()
        await day.tap(.start)
        await day.tap("row-rods")
        await day.tap("choice-rods-1")
        await day.wait(seconds: 2)
        await day.tap("back")
        await day.tap(.start)
        XCTAssertEqual(day.bank.state, .ready)
        await day.wait(minutes: 2)

        // Waits in minutes; true if a bite came. Invented.
        let casts: [(Int64, Bool)] = [(12, false), (17, true), (15, false), (19, true), (25, false), (18, true), (22, true), (20, false)]
        var bites = 0
        for (i, (minutes, bite)) in casts.enumerated() {
            await day.tap(.cast)
            await day.wait(minutes: minutes)
            XCTAssertEqual(day.bank.rods.map(\.digits), ["\(minutes):00"])
            if bites < 3 { XCTAssertTrue(day.bank.advice.headline.contains("Can't tell yet"), day.bank.advice.headline) }
            if i == 1 {
                await day.tap(.liner)
                await day.wait(seconds: 1)
            }
            if bite {
                bites += 1
                await day.tap(.bite)
                XCTAssertEqual(day.bank.state, .fishOn)
                XCTAssertTrue(day.sheet["advice"]!.spoken.contains("No need to tap anything"))
                await day.wait(minutes: 1)
                await day.tap(bites == 2 ? .lost : .landed)
            } else {
                await day.tap(.woundIn)
            }
            XCTAssertEqual(day.bank.state, bite && bites != 2 ? .landed : .ready)
            await day.wait(minutes: 2)
        }

        await day.tap(.cast)
        await day.wait(minutes: 10)
        XCTAssertFalse(day.bank.advice.headline.contains("Can't tell yet"), day.bank.advice.headline)
        XCTAssertTrue(day.bank.advice.detail.contains("4 bites in 8 casts"), day.bank.advice.detail)
        XCTAssertEqual(day.bank.strip.marks.filter { $0.shape == .bite }.count, 4)
        XCTAssertEqual(day.bank.strip.marks.filter { $0.shape == .noBite }.count, 4)
        XCTAssertTrue(day.sheet["strip"]!.spoken.contains("bites so far"))

        // Moves the last time back by a minute: the wait grows by that.
        await day.turn(to: "key-TIME_BACK", by: "more")
        await day.tap(.timeBack)
        XCTAssertEqual(day.bank.rods.map(\.digits), ["11:01"])

        // A forgotten end: the next cast closes it.
        await day.wait(minutes: 10)
        await day.tap(.cast)
        XCTAssertEqual(day.bank.rods.map(\.digits), ["0:00"])
        await day.wait(minutes: 1)
        await day.turn(to: "key-END", by: "more")
        await day.tap(.end)
        XCTAssertEqual(day.bank.state, .noSession)

        // The card of the day opens by itself and can be shared as text.
        XCTAssertEqual(day.state.content.showing, .day)
        await day.tap("key-share-")
        guard case .text(let text) = day.state.content.files.dialog else { return XCTFail("no text is handed on") }
        XCTAssertTrue(text.contains("Try next: "), text)
        day.state.dialogSaved()
        await day.tap("back")
        XCTAssertEqual(day.state.content.showing, .bank)
    }

    func testTheFirstOpeningShowsThreeCardsOnce() async throws {
        let day = try Bankside()
        day.state.greet()
        await day.state.settled()
        await day.look()
        XCTAssertEqual(day.state.content.showing, .welcome)
        await day.tap("key-to-wait")
        await day.tap("key-to-where")
        await day.tap("key-skip-")
        XCTAssertEqual(day.state.content.showing, .bank)
        day.state.greet()
        await day.state.settled()
        XCTAssertEqual(day.state.content.showing, .bank)
    }

    func testTheWelcomeDoesNotCoverWhatCameFirst() async throws {
        let day = try Bankside()
        day.state.greet()
        day.state.open(.files)
        await day.state.settled()
        XCTAssertEqual(day.state.content.showing, .files)
    }

    func testTwoRodsHaveAClockEachAndTheKeysActOnTheChosenOne() async throws {
        let day = try Bankside()
        await day.look()
        await day.tap(.start)
        await day.tap("row-rods")
        await day.tap("choice-rods-2")
        await day.wait(seconds: 2)
        await day.tap("back")
        await day.tap(.start)
        await day.wait(seconds: 10)
        await day.tap(.cast)
        await day.wait(minutes: 3)
        await day.tap("next-rod")
        XCTAssertEqual(day.bank.state, .ready)
        await day.tap(.cast)
        await day.wait(minutes: 4)
        XCTAssertEqual(day.bank.rods.map(\.digits), ["7:00", "4:00"])
        await day.tap("clock-1")
        XCTAssertEqual(day.bank.rods.filter(\.chosen).map(\.rod), [1])
        XCTAssertEqual(day.sheet["clock-1"]?.selected, true)
        await day.tap(.woundIn)
        XCTAssertEqual(day.bank.rods.map(\.state), [.ready, .out])
    }

    func testSpotAndRigAreChangedByTapsAlone() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.tackle)
        let rows = day.state.content.tackle!.rows
        XCTAssertFalse(rows.isEmpty)
        for row in rows {
            await day.turn(to: "row-\(row.tag)", by: "next-page")
            await day.tap("row-\(row.tag)")
            if let choice = row.choices.first(where: { !$0.chosen }) {
                await day.turn(to: "choice-\(row.tag)-\(choice.tag)", by: "next-page")
                await day.tap("choice-\(row.tag)-\(choice.tag)")
                await day.wait(seconds: 1)
            }
            await day.tap("back")
        }
        await day.tap("back")
        XCTAssertEqual(day.state.content.showing, .bank)
        XCTAssertNotEqual(day.bank.spot, "")
        XCTAssertNotEqual(day.bank.rig, "")
    }

    func testTheSwimIsDrawnTurnedAndAimedAt() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 5)
        await day.tap("screens")
        await day.tap("open-SWIM")
        let fan = try XCTUnwrap(day.sheet["swim-fan"])
        XCTAssertFalse(fan.marks.isEmpty)
        let first = try XCTUnwrap(day.state.content.scene)
        // The keys move the aim step by step.
        await day.tap("swim-STEPS")
        await day.wait(seconds: 1)
        XCTAssertEqual(day.state.content.swim?.pad, .steps)
        await day.tap("swim-STEP_OUT")
        let stepped = try XCTUnwrap(day.state.content.scene)
        XCTAssertTrue(stepped.lineRole.contains(.aimed) && !first.lineRole.contains(.aimed), "the aim has left the ring")
        await day.tap("back")
        XCTAssertEqual(day.state.content.swim?.pad, .plain)
        // A tap on the ring brings it back to the cell it was on.
        let ring = try XCTUnwrap(first.markShape.firstIndex(of: .nextDot))
        day.state.aim(x: Double(first.markXy[2 * ring]), y: Double(first.markXy[2 * ring + 1]))
        await day.look()
        XCTAssertEqual(day.state.content.scene?.lineRole, first.lineRole)
        // The legend is one tap away and explains each symbol.
        await day.tap("swim-legend")
        XCTAssertNotNil(day.sheet["legend-11"])
        await day.tap("back")
        XCTAssertNotNil(day.sheet["swim-fan"])
        await day.wait(seconds: 1)
        await day.tap("swim-KEEP")
        await day.wait(seconds: 1)
        XCTAssertEqual(day.state.content.scene?.lineRole.contains(.keptBack), true)
        await day.tap("swim-more")
        XCTAssertNotNil(day.sheet["swim-EARLIER"])
        await day.tap("back")
        XCTAssertNotNil(day.sheet["swim-fan"])
        await day.tap("back")
        XCTAssertEqual(day.state.content.showing, .bank)
        XCTAssertNotNil(day.sheet["fan"], "the small fan is on the Bank")
        await day.tap("fan")
        XCTAssertEqual(day.state.content.showing, .swim)
    }

    func testThePhonesPositionIsAskedForAtItsKeyAndFillsTwoLines() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap("screens")
        await day.tap("open-SWIM")
        await day.tap("swim-more")
        await day.turn(to: "swim-place", by: "next-page")
        await day.tap("swim-place")
        func values() -> [String] { day.state.content.swim?.place.fields.map(\.value) ?? [] }
        await day.tap("swim-USE_PHONE")
        XCTAssertEqual(day.state.content.notice, shellWords(language: phoneLanguage()).noReceiver)
        var asked = 0
        day.state.onPositionWanted = { asked += 1 }
        await day.tap("swim-USE_PHONE")
        XCTAssertEqual(day.state.content.notice, "…")
        await day.tap("swim-USE_PHONE")
        XCTAssertEqual(asked, 1, "it is being asked")
        XCTAssertEqual(day.echoes.last, .ignored)
        let words = shellWords(language: phoneLanguage())
        for (read, says) in [(PositionRead.notAllowed, words.positionNotAllowed), (.notFound, words.positionNotFound)] {
            day.state.positionRead(read)
            await day.look()
            XCTAssertEqual(day.state.content.notice, says)
            XCTAssertEqual(values(), ["", "", ""])
        }
        day.state.positionRead(.found(latDeg: -17.5, lonDeg: 178.25, accuracyM: 6))
        await day.look()
        XCTAssertEqual(day.state.content.notice, positionWords(accuracyM: 6, language: phoneLanguage()))
        XCTAssertEqual(values(), ["-17.5000000", "178.2500000", ""])
        XCTAssertEqual(day.state.content.swim?.place.value, "not set", "nothing is logged by a reading")
    }
}
