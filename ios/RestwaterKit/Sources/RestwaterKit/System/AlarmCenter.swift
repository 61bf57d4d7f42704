import Foundation

/// Whether the angler lets the app ring.
public enum AlarmPermission: Equatable, Sendable {
    case notAsked, refused, granted
    /// It may, but the settings let it make no sound, or let a Focus hold it back.
    case silent

    /// Whether the system takes alarms.
    var takesAlarms: Bool { self == .granted || self == .silent }
}

/// What a part of the system has of our alarms.
public struct KnownAlarms: Equatable, Sendable {
    /// They are to ring.
    public let pending: Set<UUID>
    /// They ring, or have rung and are still visible.
    public let rung: Set<UUID>
    var all: Set<UUID> { pending.union(rung) }

    public init(pending: Set<UUID>, rung: Set<UUID>) { (self.pending, self.rung) = (pending, rung) }
}

/// A part of the system that keeps alarms and rings them, whether or not the app runs: the notification centre, or the
/// system's own alarms. Every answer comes from the system, never from this process's memory.
public protocol AlarmCenter: Sendable {
    /// What the angler has allowed so far.
    func permission() async -> AlarmPermission
    /// Asks the angler; returns whether the app may ring.
    func requestPermission() async throws -> Bool
    /// The alarms that are pending, and those that have rung and are still visible.
    func known() async throws -> KnownAlarms
    /// Passes an alarm to the system; returns when the system has it. One whose time has passed rings at once.
    func schedule(_ alarm: PlannedAlarm) async throws
    /// Cancels alarms, pending or rung; returns when the system has removed them.
    func cancel(_ ids: Set<UUID>) async throws
}

extension PlannedAlarm {
    /// The system's id for this alarm. The first half is made from what it rings for, the second from everything else
    /// about the alarm, so that an alarm with another time or other words is a different alarm: pending and planned
    /// alarms can be compared by their ids alone.
    public var systemId: UUID {
        let rest = [String(Int64(at.timeIntervalSince1970)), title, text].joined(separator: "\u{1f}")
        let bytes = [Self.half(id), Self.half(rest)].flatMap { half in (0..<8).map { UInt8(truncatingIfNeeded: half >> (8 * $0)) } }
        return UUID(
            uuid: (
                bytes[0], bytes[1], bytes[2], bytes[3], bytes[4], bytes[5], bytes[6], bytes[7],
                bytes[8], bytes[9], bytes[10], bytes[11], bytes[12], bytes[13], bytes[14], bytes[15]
            )
        )
    }

    /// Whether the system's alarm was set for the same cast or minute of the match, whatever its time and words.
    func isSet(as other: UUID) -> Bool {
        let (own, theirs) = (systemId.uuid, other.uuid)
        return (own.0, own.1, own.2, own.3) == (theirs.0, theirs.1, theirs.2, theirs.3)
            && (own.4, own.5, own.6, own.7) == (theirs.4, theirs.5, theirs.6, theirs.7)
    }

    /// Whether both are readings of the same alarm. Its time may differ a little, since the phone's two clocks do.
    func isReading(of other: PlannedAlarm) -> Bool { id == other.id && abs(at.timeIntervalSince(other.at)) < 2 }

    /// FNV-1a: not for secrecy, only to be the same in every process.
    private static func half(_ text: String) -> UInt64 {
        text.utf8.reduce(0xcbf2_9ce4_8422_2325) { ($0 ^ UInt64($1)) &* 0x0000_0100_0000_01b3 }
    }
}
