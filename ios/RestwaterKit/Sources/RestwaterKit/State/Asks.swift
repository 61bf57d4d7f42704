import RestwaterCore

/// What each tap means. No rule stands here: an action goes to the core, the rest turns or opens something.
extension RestwaterState {
    /// A tap on a piece.
    public func tap(_ ask: Ask) {
        switch ask {
        case .key(let tap):
            seen.turned.keys = 0
            follow(tap)
        case .swim(let tap):
            let casts = tap == .send(action: .castHere)
            follow(tap) { if casts { $0.open(.bank, keepingNotice: true) } }
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
        case .start(let tap): follow(tap) { $0.open(.bank, keepingNotice: true) }
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
        } else if seen.showing == .swim, let rays = seen.swim?.back {
            act(rays)
        } else if leaveFilesPage() {
            return
        } else if seen.showing == .mend, let entry = seen.mend?.open {
            act(entry.back)
        } else {
            open(.bank)
        }
    }

    /// What a key asks; `then` runs when an action of it was taken.
    private func follow(_ tap: KeyTap, then after: (@MainActor (RestwaterState) -> Void)? = nil) {
        switch tap {
        case .send(let action): act(action, then: after)
        case .open(let which): open(Showing(which))
        case .leaf(let id): turn(to: id)
        case .askReceiver: usePhone()
        }
    }
}
