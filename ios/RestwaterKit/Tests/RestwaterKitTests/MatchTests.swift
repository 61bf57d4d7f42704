import RestwaterCore
import XCTest

@testable import RestwaterKit

/// A match, operated by the keys: set, fished, weighed in.
@MainActor
final class MatchTests: XCTestCase, @unchecked Sendable {
    func testAMatchIsBegunAFishIsEnteredAndEveryPageIsLeftByBack() async throws {
        let day = try Bankside()
        await day.start()
        await day.open(.match)
        XCTAssertEqual(day.state.content.paging.match, .now)
        await day.tap("match-begin")
        let view = try XCTUnwrap(day.state.content.match)
        XCTAssertNotNil(view.weighIn)
        for (tag, page) in [("match-coming", MatchPage.coming), ("match-scales", .weighIn), ("match-rules", .rules)] {
            await day.tap(tag)
            XCTAssertEqual(day.state.content.paging.match, page)
            await day.tap("back")
            XCTAssertEqual(day.state.content.paging.match, .now)
        }
        await day.tap("match-fish")
        XCTAssertEqual(day.state.content.showing, .fish)
        await day.tap("back")
        await day.open(.match)
        await day.tap("back")
        XCTAssertEqual(day.state.content.showing, .bank)
        // The fish is entered from the Bank, in a match or not.
        await day.tap(.cast)
        await day.wait(minutes: 9)
        await day.tap(.bite)
        await day.wait(minutes: 1)
        await day.tap(.landed)
        await day.wait(seconds: 5)
        await day.tap(.weigh)
        XCTAssertEqual(day.state.content.showing, .weight)
        for tag in ["digit-6", "unit", "digit-1", "digit-2"] {
            await day.tap(tag)
            await day.wait(seconds: 1)
        }
        XCTAssertEqual(day.sheet["figure"]?.spoken, "6 lb 12 oz")
        await day.tap("weighed")
        XCTAssertEqual(day.state.content.showing, .bank)
        XCTAssertFalse(day.state.content.notice.isEmpty)
        await day.wait(seconds: 1)
        await day.tap(.putBack)
        await day.wait(seconds: 1)
        await day.tap(.fish)
        XCTAssertEqual(day.state.content.showing, .fish)
        let says = try XCTUnwrap(day.sheet["fish-says"]).spoken
        XCTAssertTrue(says.contains("6 lb\u{a0}12 oz") && says.contains("Put back"), says)
        await day.tap("class-CARP")
        XCTAssertEqual(day.state.content.showing, .bank)
    }
}
