import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Lines that are typed: above the keyboard, with their whole label, with the keyboard that the core asks for.
@MainActor
final class TypedTests: XCTestCase, @unchecked Sendable {
    /// Share of the height that a keyboard takes: a little more than the system's own with a line of suggestions, upright and on
    /// its side (from memory).
    private func withKeyboard(_ glass: GlassMeasure) -> GlassMeasure {
        var measure = glass
        measure.keyboard = glass.height > glass.width ? max(300, glass.height * 0.42) : glass.height * 0.58
        return measure
    }

    /// Every sheet with a typed line: of each screen, row and leaf, in an open session.
    private func typed(on glass: GlassMeasure, _ hand: Hand = .right, _ each: (String, Sheet) -> Void) async throws {
        let day = try Bankside(measure: glass)
        await day.look()
        day.state.act(.set(hand: hand, scheme: nil))
        // The set-up before the session, then everything else.
        for screens in [[Showing.setup, .conditions], Showing.allCases.filter { $0 != .setup }] {
            for showing in screens {
                day.state.open(showing)
                await day.look()
                for (paging, sheet) in day.state.everySheet(on: glass) where sheet.pieces.contains(where: { $0.field != nil }) {
                    each("\(showing) \(paging.row ?? paging.leaf ?? "") on \(glass)", sheet)
                }
            }
            if screens.contains(.setup) {
                // A tap right after a screen has opened is taken for a second tap of the key that opened it.
                await day.wait(seconds: 1)
                day.state.act(.startSession(setup: nil))
                await day.state.settled()
            }
        }
    }

    func testATypedLineAndItsKeyStandAboveTheKeyboard() async throws {
        var (tags, covered) = (Set<String>(), 0)
        for glass in [Glasses.upright[0].at(2), Glasses.upright[5], Glasses.lying[0], Glasses.lying[1].at(2)] {
            for hand in glass.textScale == 1 ? [Hand.right] : [.right, .left] {
                let measure = withKeyboard(glass)
                try await typed(on: glass, hand) { at, sheet in
                    for field in sheet.pieces where field.field != nil {
                        tags.insert(field.tag)
                        let key = sheet["send-" + field.tag.dropFirst("typed-".count)]
                        let lift = sheet.lifted(for: field.tag, on: measure)
                        for piece in [field, key].compactMap({ $0 }) {
                            if piece.place.bottom > measure.height - measure.keyboard { covered += 1 }
                            XCTAssertLessThanOrEqual(piece.place.bottom - lift, measure.height - measure.keyboard + 0.01, "\(piece.tag): \(at)")
                            XCTAssertGreaterThanOrEqual(piece.place.top - lift, measure.insetTop - 0.01, "\(piece.tag): \(at)")
                        }
                        XCTAssertEqual(sheet.lifted(for: field.tag, on: glass), 0, "without a keyboard nothing moves")
                    }
                }
            }
        }
        XCTAssertGreaterThan(covered, 20, "this test looks at lines that a keyboard covers")
        XCTAssertTrue(tags.isSuperset(of: ["field-peg", "field-water", "field-name", "typed-plan", "typed-bait"]), "\(tags.sorted())")
        XCTAssertGreaterThan(tags.count, 8, "\(tags.sorted())")
    }

    func testOnlyTheLineBeingTypedLiftsTheScreen() async throws {
        let measure = withKeyboard(Glasses.upright[0])
        let day = try Bankside(measure: measure)
        await day.start()
        XCTAssertEqual(day.sheet.lifted(for: "key-CAST", on: measure), 0)
        XCTAssertEqual(day.sheet.lifted(for: "none", on: measure), 0)
    }

    func testTheLabelOfATypedLineIsWholeBesideIt() async throws {
        for glass in [Glasses.upright[0], Glasses.upright[0].at(2), Glasses.upright[5].at(3.1), Glasses.lying[0].at(2)] {
            try await typed(on: glass) { at, sheet in
                for piece in sheet.pieces {
                    guard let field = piece.field else { continue }
                    XCTAssertEqual(piece.letters.map(\.0.text).joined(separator: " "), field.label, at)
                    for (letter, place) in piece.letters {
                        XCTAssertLessThanOrEqual(place.right, piece.place.left + field.box.left + 0.01, "\(letter.text) runs into its line: \(at)")
                        XCTAssertGreaterThanOrEqual(place.top, piece.place.top - 0.01, at)
                        XCTAssertLessThanOrEqual(place.bottom, piece.place.bottom + 0.01, at)
                    }
                    XCTAssertGreaterThanOrEqual(field.box.width, piece.place.width * 0.4, "room to type: \(at)")
                    XCTAssertLessThanOrEqual(field.box.right, piece.place.width + 0.01, at)
                }
            }
        }
    }

    func testALineShowsWhatIsTypedAndWhatComesFromElsewhere() async {
        var line = TypedText()
        line.answered("", typing: true)
        line.typed("5")
        line.typed("52")
        line.answered("5", typing: true)
        XCTAssertEqual(line.shown, "52", "an answer does not overtake the next letter")
        line.answered("52", typing: true)
        XCTAssertEqual(line.shown, "52")
        line.answered("52.1234567", typing: true)
        XCTAssertEqual(line.shown, "52.1234567", "the phone's position")
        line.typed("52.123456")
        line.answered("52.1234567", typing: false)
        XCTAssertEqual(line.shown, "52.1234567", "the core's value stands when the line is left")
    }

    func testATypedLineOpensTheKeyboardThatTheCoreAsksFor() async throws {
        var found: [String: Keyboard] = [:]
        try await typed(on: Bankside.phone) { _, sheet in
            for piece in sheet.pieces { piece.field.map { found[piece.tag] = $0.keyboard } }
        }
        XCTAssertEqual(found["field-peg"], .name)
        XCTAssertEqual(found["typed-plan"], .text)
        XCTAssertEqual(found["typed-lead"], .figure)
        for tag in ["field-lat", "field-lon", "field-out"] { XCTAssertEqual(found[tag], .degrees, "\(found)") }
    }
}
