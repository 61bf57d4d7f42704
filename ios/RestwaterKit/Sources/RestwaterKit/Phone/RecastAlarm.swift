import Foundation
import RestwaterCore

/// The minute to recast by, before it has words.
struct RecastDue: Equatable, Sendable {
    let rod: UInt8
    /// When the cast went out, to the second.
    let castAt: Int64
    /// The first second past the minute to recast by.
    let at: Moment
}

/// A notification at the minute to recast by, with what the Bank will say then.
public struct RecastAlarm: Equatable, Sendable, Identifiable {
    public let rod: UInt8
    /// When it is due.
    public let at: Date
    /// "Past 27: recast."
    public let title: String
    /// Rod, spot and what is known.
    public let body: String
    let castAt: Int64

    /// What the system knows it by: one for each rod, so that a new plan takes the place of the old one.
    public var id: String { "recast-\(rod)" }

    init(_ due: RecastDue, as bank: BankView) {
        rod = due.rod
        at = due.at.date
        castAt = due.castAt
        title = bank.advice.headline
        let name = bank.rods.first { $0.rod == due.rod }?.name ?? ""
        body = [[name, bank.spot].filter { !$0.isEmpty }.joined(separator: ", "), bank.advice.detail]
            .filter { !$0.isEmpty }.joined(separator: "\n")
    }
}

extension RecastAlarm {
    /// When the chosen rod is to be recast by, where it is out, that is known and still to come.
    static func due(of bank: BankView, now: Moment) -> RecastDue? {
        guard let rod = bank.rods.first(where: { $0.chosen && $0.state == .out }),
            let recast = bank.strip.recastMin, let elapsed = bank.strip.elapsedMin, recast > elapsed
        else { return nil }
        let left = Int64((recast * 60_000).rounded()) - rod.elapsedMs
        guard left > 0 else { return nil }
        return RecastDue(rod: rod.rod, castAt: castSecond(rod, now), at: now.later(ms: left + 1_000))
    }

    /// Whether this alarm stands for that cast and that minute already; a clock that ticks moves it by no more than a second.
    func isFor(_ due: RecastDue) -> Bool {
        rod == due.rod && abs(castAt - due.castAt) <= 1 && abs(at.timeIntervalSince(due.at.date)) <= 2
    }

    /// Whether its cast is still out. Only the chosen rod's advice is known, so that the other rods keep what was planned.
    func stillHolds(for bank: BankView, now: Moment) -> Bool {
        guard let rod = bank.rods.first(where: { $0.rod == rod }), rod.state == .out else { return false }
        guard abs(castAt - Self.castSecond(rod, now)) <= 1, at > now.date else { return false }
        return !rod.chosen || Self.due(of: bank, now: now) != nil
    }

    private static func castSecond(_ rod: RodView, _ now: Moment) -> Int64 { (now.wallMs - rod.elapsedMs) / 1_000 }
}
