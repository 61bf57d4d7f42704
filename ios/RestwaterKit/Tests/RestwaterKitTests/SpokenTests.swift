import RestwaterCore
import XCTest

@testable import RestwaterKit

/// What a screen reader is told by itself, and that it hears everything once.
@MainActor
final class SpokenTests: XCTestCase, @unchecked Sendable {
    func testTheChoiceInForceOfEveryOpenRowIsToldByMoreThanInk() async throws {
        let day = try Bankside()
        await day.start()
        var chosen = 0
        for showing in Showing.allCases {
            day.state.open(showing)
            await day.look()
            for (paging, sheet) in day.state.everySheet(on: day.measure) {
                guard let row = paging.row else { continue }
                for piece in sheet.pieces where piece.tag.hasPrefix("choice-") {
                    XCTAssertEqual(piece.selected, piece.isSolid, "\(showing) \(row): \(piece.tag)")
                    if piece.selected { chosen += 1 }
                }
            }
        }
        XCTAssertGreaterThan(chosen, 20)
    }
}

extension Piece {
    /// Whether it is drawn in solid ink.
    fileprivate var isSolid: Bool { marks.contains { if case .fill(_, .ink) = $0 { true } else { false } } }
}
