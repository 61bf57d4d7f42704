import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Every screen at every picture of the demo day has the keys and pictures that Android's has, and no key that Android's
/// lacks. Android's are kept in `tests/days/demo.tags.txt` by `SharedTagsTest.kt`.
@MainActor
final class SharedTagsTests: XCTestCase, @unchecked Sendable {
    func testEveryKeyOfAndroidIsHereAndNoOther() async throws {
        let day = try DemoDay()
        var kept: [String: Set<String>] = [:]
        for line in try DemoDay.tree("tests/days/demo.tags.txt").split(separator: "\n") {
            let words = line.split(separator: " ").map(String.init)
            kept[words[0] + " " + words[1]] = Set(words.dropFirst(2))
        }
        var compared = 0
        try await day.play(on: DemoDay.commonGlass) { picture, showing, sheet in
            guard let theirs = kept["\(picture) \(String.tag(showing))"] else {
                // A screen that the core refuses has only the way back.
                return XCTAssertEqual(sheet.pieces.filter { $0.ask != nil }.map(\.tag), ["back"], "Android has no \(showing) at \(picture)")
            }
            let tag = { (piece: Piece) in
                piece.tag.replacing(/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}/, with: "#").replacing(" ", with: "_")
            }
            let ours = Set(sheet.pieces.map(tag))
            let tapped = Set(sheet.pieces.filter { $0.ask != nil || $0.aims || $0.field != nil }.map(tag))
            XCTAssertEqual(theirs.subtracting(ours).sorted(), [], "on Android and not here: \(showing) at \(picture)")
            XCTAssertEqual(tapped.subtracting(theirs).sorted(), [], "here and not on Android: \(showing) at \(picture)")
            compared += 1
        }
        XCTAssertEqual(compared, kept.count, "a screen of one shell is missing in the other")
    }
}
