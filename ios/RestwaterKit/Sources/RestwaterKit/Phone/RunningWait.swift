import Foundation
import RestwaterCore

/// A wait that runs, for the lock screen, where a clock ticks without us.
public struct RunningWait: Equatable, Sendable, Codable, Hashable, Identifiable {
    public let rod: UInt8
    /// "Rod 1".
    public let name: String
    /// Splash, by the wall clock: what the digits count from.
    public let since: Date
    /// "out since 12:24".
    public let sinceText: String
    /// What the wait means, in words; of the chosen rod only.
    public let headline: String
    /// Where the cast lies; of the chosen rod only.
    public let spot: String
    /// Hold until then, where that is known.
    public let holdUntil: Date?
    /// Recast by then, where that is known.
    public let recastBy: Date?

    public var id: UInt8 { rod }

    /// Of each rod that is out, to the second, so that a new reading of the same wait is equal to the last.
    static func all(of bank: BankView, now: Moment) -> [RunningWait] {
        bank.rods.filter { $0.state == .out }.map { rod in
            let splash = Date(timeIntervalSince1970: (Double(now.wallMs - rod.elapsedMs) / 1_000).rounded(.down))
            func minute(_ value: Double?) -> Date? { rod.chosen ? value.map { splash.addingTimeInterval(($0 * 60).rounded()) } : nil }
            return RunningWait(
                rod: rod.rod, name: rod.name, since: splash, sinceText: rod.since,
                headline: rod.chosen ? bank.advice.headline : "", spot: rod.chosen ? bank.spot : "",
                holdUntil: minute(bank.strip.holdMin), recastBy: minute(bank.strip.recastMin)
            )
        }
    }
}
