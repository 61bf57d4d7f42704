import RestwaterCore

/// A key that can be tapped without the screens: lock screen, action button, shortcut, voice.
public struct OutsideKey: Equatable, Hashable, Sendable, Identifiable {
    let key: Key
    /// Its word.
    public let label: String
    /// Its id for intents: "WOUND_IN".
    public var id: String { String.tag(key) }

    public static let cast = OutsideKey(key: .cast, label: "")
    public static let bite = OutsideKey(key: .bite, label: "")
    public static let woundIn = OutsideKey(key: .woundIn, label: "")
    public static let undo = OutsideKey(key: .undo, label: "")

    init(key: Key, label: String) { (self.key, self.label) = (key, label) }

    /// The key with that id; `nil` for any other word.
    public init?(id: String, label: String = "") {
        guard let key = Key.allCases.first(where: { String.tag($0) == id }) else { return nil }
        self.init(key: key, label: label)
    }
}

extension RestwaterState {
    /// Taps a key of the Bank as it is now, whether or not the app is in front. Only what the Bank offers can be
    /// tapped. Returns the core's answer.
    public func tapFromOutside(_ outside: OutsideKey) async throws(Refusal) -> String {
        try await readFromOutside()
        guard let key = content.bank?.keys.first(where: { $0.key == outside.key && $0.enabled }) else {
            throw Refusal(kind: .notNow, text: spokenWait)
        }
        refusal = nil
        tap(.key(key.tap))
        await settled()
        if let refusal { throw refusal }
        return content.notice
    }

    /// Taps the first of the keys that the core puts on a lock screen: the one that is due next.
    public func tapNextFromOutside() async throws(Refusal) -> String {
        try await readFromOutside()
        guard let next = plan.wait?.keys.first else { throw Refusal(kind: .notNow, text: spokenWait) }
        return try await tapFromOutside(next)
    }

    /// How long the chosen rod has been out, and what the record says about it.
    public func waitInWords() async throws(Refusal) -> String {
        try await readFromOutside()
        let advice = content.bank?.advice.headline ?? ""
        return [spokenWait, advice].filter { !$0.isBlank }.joined(separator: ". ")
    }

    /// The Bank and the plan as of now. The plan is read as well, so that what an earlier process left with the system
    /// is corrected even if the tap is refused.
    private func readFromOutside() async throws(Refusal) {
        let at = clock()
        refusal = nil
        ask({ core in try core.screen(which: .bank, now: at) }) { state, screen in state.content.show(screen) }
        readPlan()
        await settled()
        if let refusal { throw refusal }
    }

    private var spokenWait: String {
        content.bank?.rods.first { $0.chosen }?.spoken ?? content.bank?.advice.headline ?? content.notice
    }
}
