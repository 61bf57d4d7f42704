import RestwaterCore

/// Counts the contacts on the screen. A tap counts only if it was alone, and no wider than a thumb, from its first contact
/// until all have gone: a palm, a sleeve or a run of drops must not log anything. A tap without any contact (VoiceOver,
/// Switch Control, a keyboard) always counts, whatever lay on the screen before it.
@MainActor
public final class Contacts {
    private var spoilt = false
    private var count = 0
    private var lifted: Int64?
    private let monotonicMs: @MainActor () -> Int64
    /// A tap is told as the last contact lifts; after this long it can't have been made by that contact any more.
    static let afterLiftMs: Int64 = 300

    public init(monotonicMs: @escaping @MainActor () -> Int64 = { present().monoMs }) { self.monotonicMs = monotonicMs }

    /// Takes in how many contacts are on the screen now, and how wide the widest is in millimetres.
    public func onGlass(_ count: Int, widestMm: Double = 0) {
        // The first of a new set clears what the set before it left behind.
        if self.count == 0 && count > 0 { spoilt = false }
        if count > 1 || widestMm > palmMm() { spoilt = true }
        if self.count > 0 && count == 0 { lifted = monotonicMs() }
        self.count = count
    }

    /// Whether the tap that ends now counts.
    public var tapCounts: Bool {
        guard spoilt else { return true }
        if count > 0 { return false }
        return lifted.map { monotonicMs() - $0 > Self.afterLiftMs } ?? true
    }
}
