import RestwaterCore

/// What each tap means. No rule stands here: an action goes to the core, the rest turns or opens something.
extension RestwaterState {
    /// A tap on a piece.
    public func tap(_ ask: Ask) {
        switch ask {
        case .key(let key): tap(key)
        case .swim(let key): tap(key)
        case .files(let ask): tap(ask)
        case .act(let action):
            // One thing said of a doubtful entry is enough: its choices close.
            if case .mend = action { seen.turned.row = nil }
            // A test that begins or ends is looked at first.
            if case .startAlternation = action { seen.turned.page = 0 }
            if action == .endAlternation { seen.turned.page = 0 }
            act(action)
        case .open(let showing): open(showing)
        case .back: back()
        case .start: act(.startSession(setup: nil)) { $0.open(.bank, keepingNotice: true) }
        case .scheme: act(.set(hand: nil, scheme: seen.settings.scheme == .day ? .night : .day))
        case .hand: act(.set(hand: seen.settings.hand == .right ? .left : .right, scheme: nil))
        case .moreKeys: seen.turned.keys += 1
        case .nextPage:
            seen.turned.page += 1
            seen.turned.grid = 0
        case .moreGrid: seen.turned.grid += 1
        case .row(let field):
            seen.turned.row = field
            seen.turned.grid = 0
        case .moreSwim: seen.turned.more = true
        case .match(let page):
            seen.turned = Turned()
            seen.turned.match = page
        case .leaf(let id): turn(to: id)
        case .nextPart: seen.turned.part += 1
        case .typed(let text): seen.turned.typed = text
        case .send(let action):
            seen.turned.typed = ""
            act(action)
        case .salvage: break
        }
    }

    private func turn(to leaf: String?) {
        seen.turned = Turned()
        seen.turned.leaf = leaf
    }

    private func back() {
        if running != nil {
            giveUp()
        } else if seen.turned.row != nil {
            seen.turned.row = nil
            seen.turned.grid = 0
        } else if seen.showing == .match, let page = seen.turned.match, page != .now {
            seen.turned = Turned()
            seen.turned.match = page == .weight ? .fish : .now
        } else if seen.turned.leaf != nil {
            turn(to: nil)
        } else if seen.turned.more {
            seen.turned.more = false
        } else if seen.showing == .swim, let swim = seen.swim, swim.pad != .rays {
            act(.chooseSwim(field: "rays", value: ""))
        } else if leaveFilesPage() {
            return
        } else if seen.showing == .mend && seen.mend?.open != nil {
            act(.openDoubt(op: nil))
        } else {
            open(.bank)
        }
    }

    private func tap(_ key: Key) {
        seen.turned.keys = 0
        switch key {
        case .start: open(.setup)
        case .tackle: open(.tackle)
        default: keyAction(key: key, rod: seen.rod).map { act($0) }
        }
    }

    private func tap(_ key: SwimKey) {
        let back = seen.swim?.stepsBack ?? 0
        switch key {
        case .stepLeft: act(.stepAim(step: .left))
        case .stepRight: act(.stepAim(step: .right))
        case .stepIn: act(.stepAim(step: .in))
        case .stepOut: act(.stepAim(step: .out))
        case .keep: act(.keepBack)
        case .release: act(.release)
        case .castHere: act(.castHere) { $0.open(.bank, keepingNotice: true) }
        case .earlier: act(.replay(stepsBack: back + 1))
        case .later: act(.replay(stepsBack: back > 0 ? back - 1 : 0))
        case .now: act(.replay(stepsBack: 0))
        case .markHere: act(.markHere(name: ""))
        case .placePeg: act(.placePegAsTyped)
        case .usePhone: usePhone()
        }
    }
}
