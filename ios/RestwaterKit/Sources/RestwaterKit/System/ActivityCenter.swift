import Foundation

/// A Live Activity that the system is showing.
public struct ShownActivity: Equatable, Sendable, Identifiable {
    public let id: String
    /// What it says.
    public let wait: RunningWait
    public let startedAt: Date
    /// Whether it still takes updates; the system ends one after eight hours and the angler may swipe it away.
    public let isActive: Bool

    public init(id: String, wait: RunningWait, startedAt: Date, isActive: Bool) {
        (self.id, self.wait, self.startedAt, self.isActive) = (id, wait, startedAt, isActive)
    }
}

/// The system's Live Activities. Every answer comes from the system, never from this process's memory.
public protocol ActivityCenter: Sendable {
    /// Whether the angler allows them.
    func areAllowed() async -> Bool
    /// Those of this app that the system still shows, whichever process began them.
    func shown() async -> [ShownActivity]
    /// Begins one; the system refuses in the background, unless an intent for Live Activities runs.
    func start(_ wait: RunningWait, at: Date) async throws
    /// Returns when the system has taken the update.
    func update(_ id: String, to wait: RunningWait) async
    /// Removes it from the screen at once.
    func end(_ id: String) async
}

extension ShownActivity {
    /// Seconds after which an activity is replaced by a new one. The system ends it after eight hours
    /// (developer.apple.com/documentation/activitykit/displaying-live-data-with-live-activities); half an hour before
    /// that is the project's own choice.
    static let renewAfter: TimeInterval = 7.5 * 3_600
}
