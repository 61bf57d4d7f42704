import RestwaterCore
import XCTest

@testable import RestwaterKit

/// Every screen at moments of two days, upright and on its side, at 100 and 200 % text, for either hand: no word is cut, no
/// text overlaps another or leaves the screen, none is too small to read, no key covers another. The same is asked of
/// Android (`EveryGlassTest.kt`).
@MainActor
final class EveryGlassTests: XCTestCase, @unchecked Sendable {
    /// Smaller text than this em can't be read at arm's length, in mm: a guess, the same as Android's.
    private let leastMm = 1.3
    /// Rounding, mm.
    private let touch = 0.12

    func testNothingIsCutCoveredOrTooSmallOnAnyPhone() async throws {
        try await look(at: "demo", ["05-three-bites-hold"], on: Glasses.upright + Glasses.lying, deep: false)
    }

    func testNothingIsCutCoveredOrTooSmallOnAnyPhoneInAMatch() async throws {
        try await look(
            at: "match", ["05-near-the-limit", "10-weigh-in"], on: Glasses.upright + Glasses.lying, screens: [.match, .fish, .weight, .bank])
    }

    func testNoRowAndNoLeafIsCutCoveredOrTooSmallWhereRoomIsShort() async throws {
        try await look(at: "demo", ["11-all-out"], on: [Glasses.upright[0], Glasses.lying[0]])
    }

    /// There every weight has a caution, and the row of the weight has a typed field and its choices below it.
    func testNoRowIsCutCoveredOrTooSmallOnAPhoneOfAnotherRegion() async throws {
        for language in ["fr-FR", "de-AT", "en-US"] {
            try await look(
                at: "demo", ["05-three-bites-hold"], on: [Glasses.upright[0], Glasses.lying[0]], screens: [.tackle, .phone], language: language,
                least: 50)
        }
    }

    private func look(
        at name: String, _ moments: [String], on glasses: [GlassMeasure], screens: [Showing] = Showing.allCases, deep: Bool = true,
        language: String = "en-GB", least: Int = 100
    ) async throws {
        let day = try DemoDay(name, language: language)
        var (faults, sheets): ([String], Int) = ([], 0)
        try await day.play(on: DemoDay.commonGlass, screens: screens) { picture, showing, _ in
            guard moments.contains(picture) else { return }
            for glass in glasses {
                for (scale, hand) in [(1.0, Hand.right), (1, .left), (2, .right), (2, .left)] {
                    let measure = glass.at(scale)
                    day.state.content.settings = Settings(hand: hand, scheme: .day)
                    for (paging, sheet) in day.state.everySheet(on: measure, deep: deep) {
                        let at =
                            "\(picture) \(showing) \(paging.words) on \(Int(glass.width)) x \(Int(glass.height)) at \(Int(100 * scale)) %, \(hand)"
                        faults += look(sheet, measure).map { "\(at): \($0)" }
                        sheets += 1
                    }
                }
            }
            day.state.content.settings = Settings(hand: .right, scheme: .day)
        }
        XCTAssertGreaterThan(sheets, least)
        XCTAssert(faults.isEmpty, "\(faults.count) faults on \(sheets) sheets:\n" + faults.joined(separator: "\n"))
    }

    private func look(_ sheet: Sheet, _ measure: GlassMeasure) -> [String] {
        let mm = measure.pointsPerMm
        let texts = sheet.pieces.flatMap { piece in piece.letters.map { (piece.tag, $0.0, $0.1) } }
        var faults: [String] = []
        for (i, (tag, letter, place)) in texts.enumerated() {
            if letter.text.hasSuffix("…") { faults.append("\(tag): '\(letter.text)' is cut") }
            if letter.em < leastMm * mm { faults.append("\(tag): '\(letter.text)' is drawn \((letter.em / mm * 100).rounded() / 100) mm high") }
            if !place.isOn(measure, mm) { faults.append("\(tag): '\(letter.text)' leaves the screen") }
            for (other, over, there) in texts.dropFirst(i + 1) where place.touches(there, touch * mm) {
                faults.append("\(tag): '\(letter.text)' overlaps '\(over.text)' of \(other)")
            }
        }
        let keys = sheet.pieces.filter { $0.ask != nil }
        for (i, key) in keys.enumerated() {
            if !key.place.isOn(measure, mm) { faults.append("\(key.tag) leaves the screen") }
            for other in keys.dropFirst(i + 1) where key.place.touches(other.place, touch * mm) { faults.append("\(key.tag) covers \(other.tag)") }
        }
        return faults
    }
}

extension Rect {
    fileprivate func isOn(_ measure: GlassMeasure, _ mm: Double) -> Bool {
        let edge = 0.1 * mm
        return left >= -edge && top >= -edge && right <= measure.width + edge && bottom <= measure.height + edge
    }

    /// Whether they overlap by more than rounding.
    fileprivate func touches(_ other: Rect, _ edge: Double) -> Bool {
        left + edge < other.right - edge && other.left + edge < right - edge && top + edge < other.bottom - edge
            && other.top + edge < bottom - edge
    }
}

extension Paging {
    fileprivate var words: String {
        [row.map { "row \($0)" }, leaf.map { "leaf \($0)" }, more ? "further" : nil, match == .now ? nil : "\(match)"].compactMap { $0 }.joined(
            separator: " ")
            + [("keys", keys), ("page", page), ("grid", grid), ("part", part)].filter { $0.1 > 0 }.map { " \($0) \($1)" }.joined()
    }
}
