import ActivityKit
import Foundation

/// What the lock screen shows about the running wait. Shared by the app and its widget; the words come from the core.
struct WaitAttributes: ActivityAttributes {
    /// When it was begun: the system ends it after eight hours, so the app begins a new one before that.
    var startedAt: Date

    struct ContentState: Codable, Hashable, Sendable {
        var title: String
        var text: String
        /// What the digits count from, or `nil` if there is nothing to count.
        var since: Date?
        var keys: [Key]
    }

    /// A key of the Bank, at most three.
    struct Key: Codable, Hashable, Identifiable, Sendable {
        var id: String
        var label: String
        /// The rod that it is shown for; none in an activity of an earlier version.
        var rod: Int?
    }
}
