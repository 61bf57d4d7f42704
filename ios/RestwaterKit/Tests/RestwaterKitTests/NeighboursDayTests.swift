import Foundation
import RestwaterCore
import XCTest

@testable import RestwaterKit

/// The day with the neighbours' fish through Swift shows the same on the Bank, on the screen of what is seen and on the
/// card of the day as Rust's snapshots (`tests/tests/whole_app/neighbours_day.rs`).
@MainActor
final class NeighboursDayTests: XCTestCase, @unchecked Sendable {
    func testTheScreensOverTheDayAreThoseOfRust() async throws {
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("neighbours-\(UUID().uuidString)")
        let day = try readDay(text: try DemoDay.tree("tests/days/neighbours.jsonl"))
        let core = try openLog(in: folder, clock: { day[0].at }, language: "en-GB")
        var said: [String] = []
        for tap in day {
            if let action = tap.action { _ = try core.act(action: action, at: tap.at) }
            guard let picture = tap.picture else { continue }
            said.append(picture)
            said += try bank(core, tap.at)
            if picture == "09-ended" { said += try card(core, tap.at) }
            said += try seen(core, tap.at)
        }
        let kept = try DemoDay.tree("tests/tests/whole_app/snapshots/whole_app__neighbours_day__the_screens_over_the_day.snap")
        let body = kept.split(separator: "---\n", maxSplits: 2, omittingEmptySubsequences: false)[2]
        let wanted = body.split(separator: "\n").map(String.init)
        XCTAssertGreaterThan(wanted.count, 30)
        for (want, found) in zip(wanted, said) { XCTAssertEqual(want, found) }
        XCTAssertEqual(wanted.count, said.count)
    }

    /// The rods, and the key of the neighbour to the right.
    private func bank(_ core: Restwater, _ now: Moment) throws -> [String] {
        guard case .bank(let bank) = try core.screen(which: .bank, now: now) else { return ["no Bank"] }
        let rods = bank.rods.map { "\($0.label) \($0.digits) \($0.since)" }.joined(separator: " | ")
        let key = bank.keys.first { $0.key == .neighbourRight }
        return ["  \(rods)", "  " + (key.map { "\($0.label) / \($0.sub ?? "")" } ?? "")]
    }

    private func card(_ core: Restwater, _ now: Moment) throws -> [String] {
        guard case .day(let day) = try core.screen(which: .day, now: now) else { return ["no card of the day"] }
        return day.leaves[0].lines.map { "  \($0.label): \($0.detail)" }
    }

    private func seen(_ core: Restwater, _ now: Moment) throws -> [String] {
        guard case .seen(let view) = try core.screen(which: .seen, now: now) else { return ["no screen of what is seen"] }
        return ["  \(view.title): \(view.says.joined(separator: " "))"]
    }
}
