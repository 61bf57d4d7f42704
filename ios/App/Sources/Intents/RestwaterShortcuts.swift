import AppIntents

/// What Siri, Spotlight, Back Tap and the action button offer without any set-up.
struct RestwaterShortcuts: AppShortcutsProvider {
    static var appShortcuts: [AppShortcut] {
        AppShortcut(
            intent: NextKeyIntent(), phrases: ["Next in \(.applicationName)", "Tap \(.applicationName)"], shortTitle: "Cast, bite or landed",
            systemImageName: "hand.tap"
        )
        AppShortcut(intent: CastIntent(), phrases: ["Cast in \(.applicationName)"], shortTitle: "Cast", systemImageName: "arrow.up.right")
        AppShortcut(intent: BiteIntent(), phrases: ["Bite in \(.applicationName)"], shortTitle: "Bite", systemImageName: "exclamationmark")
        AppShortcut(
            intent: WoundInIntent(), phrases: ["Wound in with \(.applicationName)"], shortTitle: "Wound in", systemImageName: "arrow.down.left"
        )
        AppShortcut(intent: UndoIntent(), phrases: ["Undo in \(.applicationName)"], shortTitle: "Undo", systemImageName: "arrow.uturn.backward")
        AppShortcut(intent: HowLongIntent(), phrases: ["How long in \(.applicationName)"], shortTitle: "How long?", systemImageName: "timer")
    }
}
