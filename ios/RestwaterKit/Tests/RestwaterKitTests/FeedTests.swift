import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Feed and showing fish, operated by their keys.
@MainActor
final class FeedTests: XCTestCase, @unchecked Sendable {
    func testTheFirstFeedIsChosenAndTheNextIsOneTap() async throws {
        let day = try Bankside()
        await day.start()
        await day.turn(to: "key-FEED", by: "more")
        await day.tap(.feed)
        XCTAssertEqual(day.state.content.showing, .feed)
        await day.tap("handful")
        XCTAssertEqual(day.state.content.showing, .bank)
        await day.wait(minutes: 5)
        await day.turn(to: "key-FEED", by: "more")
        await day.tap(.feed)
        XCTAssertEqual(day.state.content.showing, .bank)
        await day.turn(to: "key-FEED_OTHER", by: "more")
        await day.tap(.feedOther)
        let says = try XCTUnwrap(day.sheet["fish-says"]).spoken
        XCTAssertTrue(says.contains("Fed just now, 2 oz here this session."), says)
        await day.tap("by-weight")
        XCTAssertEqual(day.state.content.showing, .feedWeight)
        await day.tap("digit-4")
        XCTAssertEqual(day.sheet["figure"]?.spoken, "4 oz")
        await day.tap("weighed")
        XCTAssertEqual(day.state.content.showing, .bank)
    }

    func testShowingFishTakeTwoTaps() async throws {
        let day = try Bankside()
        await day.start()
        day.state.act(.stepAim(step: .left))
        await day.state.settled()
        await day.look()
        await day.turn(to: "key-SEEN", by: "more")
        await day.tap(.seen)
        XCTAssertEqual(day.state.content.showing, .seen)
        await day.tap("bubbles")
        XCTAssertEqual(day.state.content.showing, .bank)
        let notice = day.state.content.notice
        XCTAssertTrue(notice.hasPrefix("Logged: bubbles. ") && notice.contains("left"), notice)
    }

    func testANeighboursFishTakesTwoTapsAndEachSideKeepsItsKey() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap("more")
        await day.tap(.neighbourLeft)
        XCTAssertEqual(day.state.content.notice, "Logged: a fish to the left.")
        await day.turn(to: "key-SEEN", by: "more")
        await day.tap(.seen)
        await day.tap("neighbour-across")
        XCTAssertEqual(day.state.content.showing, .bank)
        XCTAssertEqual(day.state.content.notice, "Logged: a fish across the water.")
        let key = try XCTUnwrap(day.state.content.bank?.keys.first { $0.key == .neighbourLeft })
        XCTAssertEqual(key.label, "LEFT PEG")
    }
}
