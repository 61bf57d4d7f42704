import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Where things are and what is spoken, on every screen size.
@MainActor
final class SheetTests: XCTestCase, @unchecked Sendable {
    private let glasses =
        [
            Bankside.phone,
            GlassMeasure(width: 375, height: 667, pointsPerMm: 326 / 2 / 25.4, insetTop: 20),
            GlassMeasure(width: 440, height: 956, pointsPerMm: 460 / 3 / 25.4, textScale: 2, insetTop: 62, insetBottom: 34),
            GlassMeasure(width: 393, height: 852, pointsPerMm: 460 / 3 / 25.4, textScale: 3.1, insetTop: 59, insetBottom: 34),
        ] + Glasses.lying.flatMap { [$0, $0.at(2)] }

    /// The states with the keys that lead to them from an open session.
    private let leadingTo: [[Key]] = [[], [.cast], [.cast, .bite]]

    func testEveryKeyOfEveryStateIsWhereTheCoreSaysOnEveryScreenSize() async throws {
        for measure in glasses {
            for way in leadingTo {
                let day = try Bankside(measure: measure)
                await day.start()
                for key in way {
                    await day.tap(key)
                    await day.wait(minutes: 1)
                }
                let ask = PadAsk(state: day.bank.state, rods: 1, page: 0)
                let layout = try bankLayout(glass: measure.glass(.right), ask: ask)
                for place in layout.keys where day.bank.keys.contains(where: { $0.key == place.key }) {
                    XCTAssertEqual(day.sheet["key-\(String.tag(place.key))"]?.place, place.rect, "\(place.key) at \(measure)")
                }
                XCTAssertGreaterThanOrEqual(layout.rods[0].digits.height, 12 * measure.pointsPerMm - 0.01)
            }
        }
    }

    func testNoTextRunsOutOfItsPieceAndNoKeyLosesItsWordAtTheLargestText() async throws {
        for measure in glasses {
            let day = try Bankside(measure: measure)
            await day.start()
            await day.tap(.cast)
            await day.wait(minutes: 30)
            for showing in Showing.allCases {
                day.state.open(showing)
                await day.look()
                for piece in day.sheet.pieces where piece.role == .key && !piece.marks.isEmpty {
                    let texts = letters(piece.marks)
                    XCTAssertFalse(texts.isEmpty && piece.tag != "fan", "\(piece.tag) has no word at \(measure)")
                    for text in texts {
                        let right = text.at.x + plainLetters.width(text.text, text.em, text.weight)
                        XCTAssertLessThanOrEqual(right, piece.place.width + 0.5, "\(piece.tag): \(text.text) at \(measure)")
                    }
                }
            }
        }
    }

    func testAKeyIsInvertedWhileItIsTouched() async throws {
        let day = try Bankside()
        await day.start()
        let cast = day.sheet["key-CAST"]!
        XCTAssertNotEqual(cast.marks, cast.pressed)
        func solid(_ marks: [Mark]) -> Bool { marks.contains { if case .fill(_, .ink) = $0 { true } else { false } } }
        XCTAssertNotEqual(solid(cast.marks), solid(cast.pressed))
    }

    /// The app redraws a piece only if it has changed.
    func testThePassingOfASecondChangesOnlyTheClockAndTheStrip() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 4, seconds: 10)
        let before = day.sheet
        await day.wait(seconds: 1)
        let after = day.sheet
        XCTAssertEqual(after.pieces.map(\.tag), before.pieces.map(\.tag))
        let changed = zip(before.pieces, after.pieces).filter { $0 != $1 }.map(\.0.tag)
        XCTAssertTrue(changed.contains("clock-1"))
        XCTAssertTrue(Set(changed).isSubset(of: ["clock-1", "strip"]), "\(changed)")
    }

    func testAScreenReaderWalksFromTheWaitToWhatItMeansToTheKeys() async throws {
        let day = try Bankside()
        await day.start()
        await day.tap(.cast)
        await day.wait(minutes: 4)
        let order = day.sheet.pieces.filter { !$0.spoken.isEmpty }.sorted { $0.order < $1.order }.map(\.tag)
        let walk = ["header", "clock-1", "advice", "strip", "spot", "key-BITE", "more"]
        XCTAssertEqual(order.filter(walk.contains), walk)
        XCTAssertTrue(day.sheet["clock-1"]!.spoken.contains("4 minutes"))
        XCTAssertTrue(day.sheet["clock-1"]!.announced.contains("4 minutes"))
        XCTAssertFalse(day.sheet.pieces.contains { $0.ask != nil && $0.spoken.isEmpty }, "whatever is tapped is spoken")
    }

    func testAScreenReaderReadsEachGroupOfScreensUnderItsHeading() async throws {
        // Both groups need a screen of this height; on a lower one they are one grid.
        let day = try Bankside(measure: GlassMeasure(width: 440, height: 1_100, pointsPerMm: 460 / 3 / 25.4, insetTop: 62, insetBottom: 34))
        await day.start()
        day.state.open(.screens)
        await day.look()
        let read = day.sheet.pieces.sorted { $0.order < $1.order }.map(\.tag).filter { $0.hasPrefix("group-") || $0.hasPrefix("open-") }
        let keys = try XCTUnwrap(day.state.content.screenList).keys
        func tags(_ group: ScreenGroup) -> [String] { keys.filter { $0.group == group }.map { "open-\(String.tag(Showing($0.which)))" } }
        XCTAssertEqual(read, ["group-1"] + tags(.onTheBank) + ["group-2"] + tags(.beforeAndAfter))
    }

    func testTagsOfOneSheetDiffer() async throws {
        let day = try Bankside()
        await day.start()
        for showing in Showing.allCases {
            day.state.open(showing)
            await day.look()
            let tags = day.sheet.pieces.map(\.tag)
            XCTAssertEqual(Set(tags).count, tags.count, "\(showing): \(tags)")
            XCTAssertTrue(showing == .bank || tags.contains("back"), "\(showing) has a way back")
        }
    }

    func testAGlassThatIsTooSmallSaysSo() async throws {
        let day = try Bankside()
        await day.look()
        day.measure = GlassMeasure(width: 20, height: 20, pointsPerMm: 6)
        XCTAssertEqual(day.sheet.pieces.map(\.tag), ["trouble"])
        XCTAssertFalse(day.sheet["trouble"]!.spoken.isEmpty)
    }

    private func letters(_ marks: [Mark]) -> [Letter] {
        marks.flatMap { mark -> [Letter] in
            switch mark {
            case .text(let letter): [letter]
            case .inside(_, let inner): letters(inner)
            default: []
            }
        }
    }
}
