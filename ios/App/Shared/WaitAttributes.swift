import ActivityKit
import Foundation

/// What the lock screen shows of the running waits. Shared by the app and its widget; the words come from the core.
struct WaitAttributes: ActivityAttributes {
    struct ContentState: Codable, Hashable {
        var waits: [Wait]
    }

    struct Wait: Codable, Hashable, Identifiable {
        var rod: Int
        var name: String
        var since: Date
        var sinceText: String
        var headline: String
        var spot: String
        var holdUntil: Date?
        var recastBy: Date?

        var id: Int { rod }
    }
}
