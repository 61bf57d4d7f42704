import RestwaterCore
import XCTest

@testable import RestwaterKit

/// A match by the keys: set, fished, weighed in.
@MainActor
final class MatchTests: XCTestCase, @unchecked Sendable {
    func testAMatchIsBegunAFishIsEnteredAndEveryPageIsLeftByBack() async throws {
        let day = try Bankside()
        await day.start()
        await day.open(.match)
        XCTAssertEqual(day.state.content.paging.match, .now)
        await day.tap("match-begin")
        let view = try XCTUnwrap(day.state.content.match)
        XCTAssertNotNil(view.fish)
        for (tag, page) in [("match-coming", MatchPage.coming), ("match-scales", .weighIn), ("match-rules", .rules), ("match-fish", .fish)] {
            await day.tap(tag)
            XCTAssertEqual(day.state.content.paging.match, page)
            await day.tap("back")
            XCTAssertEqual(day.state.content.paging.match, .now)
        }
        await day.tap("back")
        XCTAssertEqual(day.state.content.showing, .bank)
        // A fish that waits to be entered opens the screen at its page.
        await day.tap(.cast)
        await day.wait(minutes: 9)
        await day.tap(.bite)
        await day.wait(minutes: 1)
        await day.tap(.landed)
        await day.wait(seconds: 5)
        await day.open(.match)
        XCTAssertEqual(day.state.content.paging.match, .fish)
        await day.tap("match-weigh")
        XCTAssertEqual(day.state.content.paging.match, .weight)
        let before = try XCTUnwrap(day.sheet["figure"]).spoken
        await day.tap("step-0")
        XCTAssertNotEqual(day.sheet["figure"]?.spoken, before)
        await day.wait(seconds: 1)
        await day.tap("take-weight")
        XCTAssertFalse(day.state.content.notice.isEmpty)
    }
}
