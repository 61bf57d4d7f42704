import Foundation
import RestwaterCore

/// Colours and hand as the log last gave them, kept beside it: what is shown before the log has been read, or if it can't be
/// read, is in the colours of the angler's eyes at that hour and for the same hand.
struct LastSettings: @unchecked Sendable {
    // UserDefaults may be used from any thread, as in BackupFolder.
    let defaults: UserDefaults
    private static let (hand, scheme) = ("left-handed", "night")

    /// Day and the right hand, if none were kept.
    var read: Settings {
        Settings(hand: defaults.bool(forKey: Self.hand) ? .left : .right, scheme: defaults.bool(forKey: Self.scheme) ? .night : .day)
    }

    func keep(_ settings: Settings) {
        defaults.set(settings.hand == .left, forKey: Self.hand)
        defaults.set(settings.scheme == .night, forKey: Self.scheme)
    }
}
