import Foundation
import RestwaterCore

/// Gives the present moment. A test sets its own.
public typealias Clock = @Sendable () -> Moment

/// This moment by the phone's clocks: the wall clock, and one that can't jump, counts while the phone sleeps and
/// restarts at each boot, with the id of that boot. Its origin and that id are the app's own (`OwnBoot`).
public func present() -> Moment {
    // `current` may be the zone in which the app was started.
    let zone = TimeZone.autoupdatingCurrent
    let now = Date()
    let boot = Boots.own.now
    return Moment(
        wallMs: Int64((now.timeIntervalSince1970 * 1_000).rounded(.down)),
        offsetMin: Int16(zone.secondsFromGMT(for: now) / 60),
        zone: zone.identifier,
        monoMs: monotonicMs() + boot.originMs,
        boot: boot.id,
        approxS: 0
    )
}

/// Milliseconds since the phone was started, including sleep.
private func monotonicMs() -> Int64 {
    var time = timespec()
    #if canImport(Darwin)
    // Darwin's CLOCK_MONOTONIC goes on while the phone sleeps (CLOCK_UPTIME_RAW would not).
    clock_gettime(CLOCK_MONOTONIC, &time)
    #else
    clock_gettime(CLOCK_BOOTTIME, &time)
    #endif
    return Int64(time.tv_sec) * 1_000 + Int64(time.tv_nsec) / 1_000_000
}

extension Moment {
    /// The moment this many milliseconds later, in the same boot.
    public func later(ms: Int64) -> Moment {
        Moment(wallMs: wallMs + ms, offsetMin: offsetMin, zone: zone, monoMs: monoMs + ms, boot: boot, approxS: approxS)
    }

    /// The wall clock's time as a date.
    public var date: Date { Date(timeIntervalSince1970: Double(wallMs) / 1_000) }
}
