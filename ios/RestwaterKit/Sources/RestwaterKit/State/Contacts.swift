/// Counts the contacts on the glass. A tap counts only if it was alone from its first contact until all have gone: a palm
/// or a run of drops beside the thumb must not log anything.
@MainActor
public final class Contacts {
    private var several = false
    private var last = 0

    public init() {}

    /// So many are on the glass now.
    public func onGlass(_ count: Int) {
        // The first of a new set clears what the set before it left behind.
        if last == 0 && count > 0 { several = false }
        if count > 1 { several = true }
        last = count
    }

    /// Whether the tap that ends now counts.
    public var tapCounts: Bool { !several }
}
