import AppIntents

/// A key on the lock screen. The system runs it in the app's process, where `onTap` is set.
struct LockScreenKey: LiveActivityIntent {
    static let title: LocalizedStringResource = "Key"
    static let isDiscoverable = false

    @Parameter(title: "Key") var key: String

    init() {}
    init(key: String) { self.key = key }

    /// What a tap does; the widget's own process has nothing there.
    @MainActor static var onTap: (@MainActor @Sendable (String) async throws -> Void)?

    func perform() async throws -> some IntentResult {
        try await Self.onTap?(key)
        return .result()
    }
}
