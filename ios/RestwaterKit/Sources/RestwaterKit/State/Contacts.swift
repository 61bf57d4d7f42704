import RestwaterCore

/// Counts the contacts on the screen. A tap counts only if it was alone, and no wider than a thumb, from its first
/// contact until all have gone: a palm, a sleeve or running drops of water must not log anything. A tap without any
/// contact (VoiceOver, Switch Control, a keyboard) always counts, whatever touched the screen before it.
@MainActor
public final class Contacts {
    private var spoilt = false
    private var count = 0
    private var lifted: Int64?
    private let monotonicMs: @MainActor () -> Int64
    /// A tap is reported when the last contact lifts; after this time that contact can no longer have made it.
    static let afterLiftMs: Int64 = 300

    public init(monotonicMs: @escaping @MainActor () -> Int64 = { present().monoMs }) { self.monotonicMs = monotonicMs }

    /// Records how many contacts are on the screen now, and how wide the widest is in millimetres.
    public func onGlass(_ count: Int, widestMm: Double = 0) {
        // The first contact of a new set clears the state of the previous one.
        if self.count == 0 && count > 0 { spoilt = false }
        if count > 1 || widestMm > palmMm() { spoilt = true }
        if self.count > 0 && count == 0 { lifted = monotonicMs() }
        self.count = count
    }

    /// Whether the tap that has just ended counts.
    public var tapCounts: Bool {
        guard spoilt else { return true }
        if count > 0 { return false }
        return lifted.map { monotonicMs() - $0 > Self.afterLiftMs } ?? true
    }
}
