import RestwaterCore
import XCTest

@testable import RestwaterKit

/// The keys of the Live Activity are whole and beside each other on the narrowest phone of iOS 17, with letters as large as they
/// get there.
@MainActor
final class WaitWidthTests: XCTestCase, @unchecked Sendable {
    /// 375 points, less 16 at each side for the system's margin and 16 for ours. Taken, not measured: Apple states neither for a phone of
    /// that width.
    private let room = 375.0 - 4 * 16
    /// `WaitKeys`: the space between two keys, and what the system's button adds at the sides of its word (12 points, not measured).
    private let (between, beside) = (8.0, 12.0)
    /// `.headline` at `.xxxLarge` (developer.apple.com/design/human-interface-guidelines/typography), and how far `WaitKeys` scales it down.
    private let (letters, smallest) = (23.0, 0.6)

    func testTheKeysOfEachStateFitInEachLanguage() async throws {
        for language in ["en-GB", "de-DE", "fr-FR"] {
            try await Languages.$wanted.withValue(language) {
                let phone = Handset()
                await phone.launch()
                var states = 0
                @MainActor func fits() throws {
                    let labels = try phone.state.plan.wait?.keys.map(\.label) ?? []
                    XCTAssertFalse(labels.isEmpty)
                    let words = labels.reduce(0) { $0 + Face.width($1, letters, .bold) } * smallest
                    let width = words + Double(labels.count) * 2 * beside + Double(labels.count - 1) * between
                    XCTAssertLessThanOrEqual(width, room, "\(language): \(labels)")
                    states += labels.count == 3 ? 1 : 0
                }
                try await phone.begin()
                try fits()
                try await phone.act(.away)
                try fits()
                try await phone.act(.returned)
                for action: Action in [.cast(rod: 1), .bite(rod: 1), .landed(rod: 1, fish: nil)] {
                    try await phone.act(action)
                    try fits()
                }
                XCTAssertEqual(states, 3, "away, out, and with a fish on there are three keys")
            }
        }
    }
}
