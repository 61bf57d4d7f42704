import RestwaterCore

/// A key that can be tapped without the screens: action button, shortcut, voice.
public enum OutsideKey: Sendable {
    case cast, bite, woundIn

    var key: Key {
        switch self {
        case .cast: .cast
        case .bite: .bite
        case .woundIn: .woundIn
        }
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
