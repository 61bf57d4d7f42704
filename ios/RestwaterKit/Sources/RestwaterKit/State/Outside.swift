import RestwaterCore

/// A key that can be tapped without the screens: lock screen, action button, shortcut, voice.
public struct OutsideKey: Equatable, Hashable, Sendable, Identifiable {
    let key: Key
    /// Its word.
    public let label: String
    /// What it is handed over by: "WOUND_IN".
    public var id: String { String.tag(key) }

    public static let cast = OutsideKey(key: .cast, label: "")
    public static let bite = OutsideKey(key: .bite, label: "")
    public static let woundIn = OutsideKey(key: .woundIn, label: "")

    init(key: Key, label: String) { (self.key, self.label) = (key, label) }

    /// The key of that id; none for another word.
    public init?(id: String) {
        guard let key = Key.allCases.first(where: { String.tag($0) == id }) else { return nil }
        self.init(key: key, label: "")
    }
}

extension RestwaterState {
    /// Taps a key of the Bank as it stands now, whether or not the app is in front. Only what the Bank offers can be
    /// tapped, here as there. Answers what the core said of it.
    public func tapFromOutside(_ outside: OutsideKey) async throws(Refusal) -> String {
        let at = clock()
        ask({ core in try core.screen(which: .bank, now: at) }) { state, screen in state.seen.show(screen) }
        await settled()
        guard let bank = seen.bank, bank.keys.contains(where: { $0.key == outside.key && $0.enabled }) else {
            let said = seen.bank?.rods.first { $0.chosen }?.spoken ?? seen.bank?.advice.headline ?? seen.notice
            throw Refusal(kind: .notNow, text: said)
        }
        refusal = nil
        tap(.key(outside.key))
        await settled()
        if let refusal { throw refusal }
        return seen.notice
    }
}
