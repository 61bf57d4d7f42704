import RestwaterCore
import XCTest

@testable import RestwaterKit

/// What a screen reader is told by itself, and that it hears everything once.
@MainActor
final class SpokenTests: XCTestCase, @unchecked Sendable {
    func testTheCurrentChoiceOfEveryOpenRowIsShownByMoreThanInk() async throws {
        let day = try Bankside()
        await day.start()
        var chosen = 0
        for showing in Showing.allCases {
            day.state.open(showing)
            await day.look()
            for (paging, sheet) in day.state.everySheet(on: day.measure) {
                guard let row = paging.row else { continue }
                for piece in sheet.pieces where piece.tag.hasPrefix("choice-") {
                    XCTAssertEqual(piece.selected, piece.isTicked, "\(showing) \(row): \(piece.tag)")
                    XCTAssertFalse(piece.isSolid, "\(showing) \(row): \(piece.tag) looks like the key to press next")
                    if piece.selected { chosen += 1 }
                }
            }
        }
        XCTAssertGreaterThan(chosen, 20)
    }

    func testADigitTypedOnANumberPadGivesTheFigure() async throws {
        let day = try Bankside()
        await day.start()
        for key in [Key.cast, .bite, .landed] {
            await day.tap(key)
            await day.wait(minutes: 1)
        }
        await day.tap(.weigh)
        for (tag, said) in [("digit-6", "6 lb"), ("unit", "6 lb 0 oz"), ("digit-1", "6 lb 1 oz")] {
            let before = day.sheet
            await day.tap(tag)
            await day.wait(seconds: 1)
            let told = Sheet.announcements(from: before, to: day.sheet)
            XCTAssertEqual(told.last, day.sheet["figure"]?.spoken)
            XCTAssertTrue(told.last?.hasPrefix(said.prefix(4)) == true, "\(tag): \(told)")
        }
    }

    func testARunningClockIsAnnouncedEachMinuteAndNotEachSecond() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 4)
        var (told, last): ([String], Sheet) = ([], day.sheet)
        for _ in 0..<125 {
            await day.wait(seconds: 1)
            told += Sheet.announcements(from: last, to: day.sheet)
            last = day.sheet
        }
        XCTAssertEqual(told.count, 2, "\(told)")
        XCTAssertTrue(told.first?.contains("5 minutes") == true, "\(told)")
    }

    func testAnAnswerIsAnnouncedOnEveryScreenEvenIfItIsTheSameAgain() async throws {
        let day = try Bankside()
        await day.start()
        let before = day.sheet
        await day.tap(.cast)
        let notice = day.state.content.notice
        XCTAssertFalse(notice.isEmpty)
        XCTAssertEqual(Sheet.announcements(from: before, to: day.sheet), [notice], "the clock that the tap started is part of it")
        let again = day.sheet
        day.state.say(notice)
        XCTAssertEqual(Sheet.announcements(from: again, to: day.sheet), [notice])
        for showing in Showing.allCases {
            day.state.open(showing)
            await day.look()
            let open = day.sheet
            day.state.say("Two rods.")
            XCTAssertEqual(Sheet.announcements(from: open, to: day.sheet), ["Two rods."], "\(showing)")
        }
    }

    func testAnotherScreenIsNotReadOutByItself() async throws {
        let day = try Bankside()
        await day.start()
        let before = day.sheet
        await day.open(.swim)
        XCTAssertEqual(Sheet.announcements(from: before, to: day.sheet), [])
    }

    func testTheNextPlaceOfTheMapIsAnnouncedWhenTheAimMoves() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 1)
        await day.open(.swim)
        let before = day.sheet
        let fan = try XCTUnwrap(day.sheet.scene)
        day.state.aim(x: fan.widthPx * 0.3, y: fan.heightPx * 0.4)
        await day.state.settled()
        await day.look()
        let headline = try XCTUnwrap(day.state.content.swim).headline
        XCTAssertEqual(Sheet.announcements(from: before, to: day.sheet), [headline])
    }

    func testTheSwimSaysEachSentenceOnce() async throws {
        let day = try DemoDay()
        var (looked, drifted) = (0, 0)
        try await day.play(on: DemoDay.commonGlass, screens: [.swim]) { picture, _, sheet in
            guard let view = day.state.content.swim, sheet["swim-fan"] != nil else { return }
            looked += 1
            drifted += view.drift.isEmpty ? 0 : 1
            self.eachOnce([view.headline, view.why, view.cell] + view.drift, on: sheet, picture)
        }
        XCTAssertGreaterThan(looked, 5)
        XCTAssertGreaterThan(drifted, 0)
    }

    func testAFishSaysEachSentenceOnce() async throws {
        let day = try DemoDay("match")
        var looked = 0
        try await day.play(on: DemoDay.commonGlass, screens: [.fish, .feed, .seen]) { picture, showing, sheet in
            let view = showing == .fish ? day.state.content.fish : showing == .feed ? day.state.content.feed : day.state.content.seen
            guard let view, sheet["fish-says"] != nil else { return }
            looked += 1
            self.eachOnce([view.title] + view.says, on: sheet, "\(picture) \(showing)")
        }
        XCTAssertGreaterThan(looked, 5)
    }

    private func eachOnce(_ sentences: [String], on sheet: Sheet, _ at: String) {
        for sentence in sentences where !sentence.isBlank {
            // A key says what it does: the name of a fish among others.
            let speakers = sheet.pieces.filter { $0.ask == nil && $0.spoken.contains(sentence) }.map(\.tag)
            XCTAssertEqual(speakers.count, 1, "\(at): '\(sentence)' is said by \(speakers)")
        }
    }
}

extension Piece {
    /// Whether it is drawn in solid ink.
    fileprivate var isSolid: Bool { marks.contains { if case .fill(_, .ink) = $0 { true } else { false } } }
    /// Whether it has the head of a key that is chosen.
    fileprivate var isTicked: Bool { marks.contains { if case .inside = $0 { true } else { false } } }
}
