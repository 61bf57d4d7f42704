import AppIntents
import Foundation

/// What an intent asks of the app. The system runs an intent for Live Activities in the app's own process
/// (developer.apple.com/documentation/appintents/liveactivityintent), where the app answers from its start; in the
/// widget's process nobody answers.
@MainActor
enum AppTaps {
    enum Ask: Sendable {
        /// A key of the Bank, by its id: "WOUND_IN"; for the rod that it was shown for, otherwise for the chosen one.
        case key(String, rod: Int? = nil)
        /// The key that is due next.
        case next
        /// How long the bait has been out.
        case howLong
        /// An alarm of the system was stopped, by its id there.
        case alarmStopped(String)
    }

    /// Set by the app before its first window.
    static var answer: (@MainActor @Sendable (Ask) async throws -> String)?

    /// The core's answer. A tap that reaches nobody is an error: it must not look like an entry.
    static func answer(to ask: Ask) async throws -> String {
        guard let answer else { throw NobodyAnswers() }
        do { return try await answer(ask) } catch { throw Told(error) }
    }

    struct NobodyAnswers: Error {}

    /// A refusal in the form in which the system shows its words: of other errors it shows none.
    struct Told: Error, CustomLocalizedStringResourceConvertible {
        let text: String

        init(_ error: any Error) { text = error.localizedDescription }

        var localizedStringResource: LocalizedStringResource { LocalizedStringResource(stringLiteral: text) }
    }
}

/// A key on the lock screen.
struct LockScreenKey: LiveActivityIntent {
    static let title: LocalizedStringResource = "Key"
    static let isDiscoverable = false

    @Parameter(title: "Key") var key: String
    /// The rod that the key was shown for. By the time of the tap another process may run, in which another rod is chosen.
    @Parameter(title: "Rod") var rod: Int?

    init() {}
    init(key: String, rod: Int?) { (self.key, self.rod) = (key, rod) }

    func perform() async throws -> some IntentResult {
        _ = try await AppTaps.answer(to: .key(key, rod: rod))
        return .result()
    }
}

/// The stop key of an alarm that the system itself rings: its rod is the one that the next key is meant for.
struct AlarmStopped: LiveActivityIntent {
    static let title: LocalizedStringResource = "Alarm"
    static let isDiscoverable = false

    @Parameter(title: "Alarm") var id: String

    init() {}
    init(id: String) { self.id = id }

    func perform() async throws -> some IntentResult {
        _ = try await AppTaps.answer(to: .alarmStopped(id))
        return .result()
    }
}
