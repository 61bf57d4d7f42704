import AppIntents

/// What Siri, Spotlight and the action button offer without being set up.
struct RestwaterShortcuts: AppShortcutsProvider {
    static var appShortcuts: [AppShortcut] {
        AppShortcut(intent: CastIntent(), phrases: ["Cast in \(.applicationName)"], shortTitle: "Cast", systemImageName: "arrow.up.right")
        AppShortcut(intent: BiteIntent(), phrases: ["Bite in \(.applicationName)"], shortTitle: "Bite", systemImageName: "exclamationmark")
        AppShortcut(
            intent: WoundInIntent(), phrases: ["Wound in with \(.applicationName)"], shortTitle: "Wound in", systemImageName: "arrow.down.left"
        )
    }
}
