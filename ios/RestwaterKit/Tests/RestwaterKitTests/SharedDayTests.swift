import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// The demo day through Swift ends with the entries and screens of Rust's snapshots
/// (`tests/tests/whole_app/shared_day.rs` says how they are compared).
@MainActor
final class SharedDayTests: XCTestCase, @unchecked Sendable {
    func testEntriesAndScreensAreThoseOfRust() async throws {
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("shared-\(UUID().uuidString)")
        let day = try readDay(text: try DemoDay.tree("tests/days/demo.jsonl"))
        let core = try openLog(in: folder, clock: { day[0].at }, language: "en-GB")
        var (screens, whole) = ("", "")
        for tap in day {
            if let action = tap.action { _ = try core.act(action: action, at: tap.at) }
            guard let picture = tap.picture else { continue }
            screens += picture
            for which in Which.allCases {
                let name = String.tag(which).lowercased()
                let text = withoutIds(screen(core, which, tap.at))
                screens += ", \(name) \(text.utf8.count) \(fnv1a(text))"
                whole += "\(picture) \(name)\n\(text)\n"
            }
            screens += "\n"
        }
        let end = day[day.count - 1].at
        for tap in [FilesTap.form(form: .entries), .span(span: .everything)] {
            _ = try core.act(action: .files(tap: tap), at: end)
        }
        let file = try await core.send(now: end, work: Work())
        try DemoDay.leave(whole, at: "target/tmp/shared-day-swift.txt")
        try same(kept("screens"), screens)
        let text = try String(contentsOfFile: file.path, encoding: .utf8)
        try same(kept("entries"), withoutIds(text.replacing("\u{1e}", with: "")))
    }

    /// Every screen at every picture of the day, as it is drawn: `RESTWATER_PICTURES=DIR ./dev test swift` writes them.
    func testEveryScreenOfTheDayIsDrawn() async throws {
        let folder = ProcessInfo.processInfo.environment["RESTWATER_PICTURES"].flatMap { $0.isEmpty ? nil : URL(fileURLWithPath: $0) }
        let day = try DemoDay()
        var drawn = 0
        try await day.play(on: Bankside.phone) { picture, showing, sheet in
            XCTAssertFalse(sheet.pieces.flatMap(\.marks).isEmpty, "\(picture) \(showing)")
            drawn += 1
            guard let folder else { return }
            try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
            let svg = Svg(ink: .of(day.state.content.scheme)).picture(sheet, Bankside.phone)
            try svg.write(to: folder.appendingPathComponent("\(picture)-\(showing).svg"), atomically: true, encoding: .utf8)
        }
        XCTAssertGreaterThan(drawn, 50)
    }

    /// The days with feed, neighbours, a match with its weights, a section and a plan: the screens that show them are drawn at each
    /// of their pictures, and the Bank says what the core says.
    func testTheScreensOfTheOtherDaysAreDrawn() async throws {
        for name in ["feeder", "neighbours", "match", "section", "plan"] {
            let day = try DemoDay(name)
            var drawn = 0
            try await day.play(on: Bankside.phone, screens: [.bank, .swim, .match, .fish, .seen, .day]) { picture, showing, sheet in
                XCTAssertFalse(sheet.pieces.flatMap(\.marks).isEmpty, "\(name), \(picture), \(showing)")
                drawn += 1
                guard showing == .bank, let bank = day.state.content.bank else { return }
                let spoken = sheet.pieces.map(\.spoken).joined(separator: "\n")
                XCTAssertTrue(spoken.contains(bank.advice.headline), "\(name), \(picture): \(bank.advice.headline) is not in \(spoken)")
            }
            XCTAssertGreaterThan(drawn, 20, name)
        }
    }

    /// The record, or the core's message if there is none: the swim has nothing to show without a session.
    private func screen(_ core: Restwater, _ which: Which, _ at: Moment) -> String {
        do { return try core.screenJson(which: which, now: at) } catch { return Refusal(error).text }
    }

    private func fnv1a(_ text: String) -> String {
        let hash = text.utf8.reduce(0xcbf2_9ce4_8422_2325 as UInt64) { hash, byte in (hash ^ UInt64(byte)) &* 0x0100_0000_01b3 }
        let digits = String(hash, radix: 16)
        return String(repeating: "0", count: 16 - digits.count) + digits
    }

    /// Compares line by line, so that a failure shows where the difference is.
    private func same(_ kept: String, _ found: String) {
        let (left, right) = (lines(kept), lines(found))
        XCTAssertFalse(left.isEmpty)
        for (a, b) in zip(left, right) { XCTAssertEqual(a, b) }
        XCTAssertEqual(left.count, right.count)
    }

    private func lines(_ text: String) -> [Substring] { text.split(separator: "\n") }

    /// A snapshot without its header.
    private func kept(_ name: String) throws -> String {
        let text = try DemoDay.tree("tests/tests/whole_app/snapshots/whole_app__shared_day__\(name).snap")
        return String(text.split(separator: "---\n", maxSplits: 2, omittingEmptySubsequences: false)[2])
    }

    private func withoutIds(_ text: String) -> String {
        var content: [Substring] = []
        let sameBoots = text.replacing(/"boot":"[^"\/]{12}\//, with: "\"boot\":\"phone/")
        return sameBoots.replacing(/[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}|[0-9a-f]{64}/) { found in
            let id = found.output.0
            if id.count == 64 { return "sha256" }
            if !content.contains(id) { content.append(id) }
            return "#\(content.firstIndex(of: id)! + 1)"
        }
    }
}
