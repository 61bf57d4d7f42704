import RestwaterCore

/// Counts the contacts on the glass. A tap counts only if it was alone, and no wider than a thumb, from its first contact
/// until all have gone: a palm, a sleeve or a run of drops must not log anything.
@MainActor
public final class Contacts {
    private var spoilt = false
    private var last = 0

    public init() {}

    /// So many are on the glass now, the widest of them so many millimetres.
    public func onGlass(_ count: Int, widestMm: Double = 0) {
        // The first of a new set clears what the set before it left behind.
        if last == 0 && count > 0 { spoilt = false }
        if count > 1 || widestMm > palmMm() { spoilt = true }
        last = count
    }

    /// Whether the tap that ends now counts.
    public var tapCounts: Bool { !spoilt }
}
