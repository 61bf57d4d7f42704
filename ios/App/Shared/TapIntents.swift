import AppIntents

// Each is an intent for Live Activities, since a tap may begin or end one while the app is in the background. Titles
// are literals: the system reads them from the binary.

/// CAST, BITE or LANDED, whichever is due next: one button, so that a cold hand need not choose.
struct NextKeyIntent: LiveActivityIntent {
    static let title: LocalizedStringResource = "Cast, bite or landed"
    static let description = IntentDescription("What is due next: cast, bite or landed; wound in after all-out, back after a break.")

    func perform() async throws -> some IntentResult & ProvidesDialog {
        .result(dialog: IntentDialog(stringLiteral: try await AppTaps.answer(to: .next)))
    }
}

/// CAST: the chosen rod's lead hit the water.
struct CastIntent: LiveActivityIntent {
    static let title: LocalizedStringResource = "Cast"
    static let description = IntentDescription("The lead is in the water.")

    func perform() async throws -> some IntentResult & ProvidesDialog {
        .result(dialog: IntentDialog(stringLiteral: try await AppTaps.answer(to: .key("CAST"))))
    }
}

/// BITE: a pull worth striking.
struct BiteIntent: LiveActivityIntent {
    static let title: LocalizedStringResource = "Bite"
    static let description = IntentDescription("A pull worth striking.")

    func perform() async throws -> some IntentResult & ProvidesDialog {
        .result(dialog: IntentDialog(stringLiteral: try await AppTaps.answer(to: .key("BITE"))))
    }
}

/// WOUND IN, by the angler's own choice.
struct WoundInIntent: LiveActivityIntent {
    static let title: LocalizedStringResource = "Wound in"
    static let description = IntentDescription("Wound in, by my own choice.")

    func perform() async throws -> some IntentResult & ProvidesDialog {
        .result(dialog: IntentDialog(stringLiteral: try await AppTaps.answer(to: .key("WOUND_IN"))))
    }
}

/// UNDO of the latest entry.
struct UndoIntent: LiveActivityIntent {
    static let title: LocalizedStringResource = "Undo"
    static let description = IntentDescription("Undo the latest entry.")

    func perform() async throws -> some IntentResult & ProvidesDialog {
        .result(dialog: IntentDialog(stringLiteral: try await AppTaps.answer(to: .key("UNDO"))))
    }
}

/// How long the bait has been out. Nothing is logged.
struct HowLongIntent: LiveActivityIntent {
    static let title: LocalizedStringResource = "How long?"
    static let description = IntentDescription("How long the bait has been out, and what the record says of it.")

    func perform() async throws -> some IntentResult & ProvidesDialog {
        .result(dialog: IntentDialog(stringLiteral: try await AppTaps.answer(to: .howLong)))
    }
}
