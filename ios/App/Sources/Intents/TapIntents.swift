import AppIntents
import RestwaterKit

/// CAST from the action button, a shortcut or Siri: the chosen rod's lead hit the water.
struct CastIntent: AppIntent {
    static let title: LocalizedStringResource = "Cast"
    static let description = IntentDescription("The lead is in the water.")

    func perform() async throws -> some IntentResult & ProvidesDialog {
        .result(dialog: IntentDialog(stringLiteral: try await Phone.shared.tap(.cast)))
    }
}

/// BITE: a pull worth striking.
struct BiteIntent: AppIntent {
    static let title: LocalizedStringResource = "Bite"
    static let description = IntentDescription("A pull worth striking.")

    func perform() async throws -> some IntentResult & ProvidesDialog {
        .result(dialog: IntentDialog(stringLiteral: try await Phone.shared.tap(.bite)))
    }
}

/// WOUND IN, by the angler's own choice.
struct WoundInIntent: AppIntent {
    static let title: LocalizedStringResource = "Wound in"
    static let description = IntentDescription("Wound in, by my own choice.")

    func perform() async throws -> some IntentResult & ProvidesDialog {
        .result(dialog: IntentDialog(stringLiteral: try await Phone.shared.tap(.woundIn)))
    }
}
