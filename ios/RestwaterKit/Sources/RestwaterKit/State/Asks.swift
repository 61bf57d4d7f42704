import RestwaterCore

/// What each tap means. There are no rules here: an action goes to the core, everything else turns or opens something.
extension RestwaterState {
    /// A tap on a piece.
    public func tap(_ ask: Ask) {
        switch ask {
        // A tap that was accepted closes the sheet behind MORE.
        case .key(.open(let which)): openFromBank(Showing(which))
        case .key(let tap): follow(tap) { $0.content.paging.keys = 0 }
        case .swim(let tap):
            let casts = tap == .send(action: .castHere)
            follow(tap) { if casts { $0.open(.bank, keepingNotice: true) } }
        case .fish(let key):
            // If it completes the entry, the core's answer is shown on the Bank.
            follow(key.tap) { if key.closes { $0.open(.bank, keepingNotice: true) } }
        case .files(let ask): tap(ask)
        case .act(let action):
            // One answer about a doubtful entry is enough: its choices close.
            if case .mend = action { content.paging.row = nil }
            // A test that begins or ends is shown first.
            if case .startAlternation = action { content.paging.page = 0 }
            if action == .endAlternation { content.paging.page = 0 }
            act(action)
        case .type(let action): act(action, quietly: true)
        case .open(let showing) where content.showing == .bank: openFromBank(showing)
        case .open(let showing):
            opened()
            open(showing)
        case .back: back()
        case .start(let tap): follow(tap) { $0.open(.bank, keepingNotice: true) }
        case .moreKeys:
            if content.paging.keys > 0 {
                content.paging.keys += 1
            } else {
                act(.opened, quietly: true) { $0.content.paging.keys = 1 }
            }
        case .nextPage:
            content.paging.page += 1
            content.paging.grid = 0
        case .moreGrid: content.paging.grid += 1
        case .row(let field):
            opened()
            content.paging.row = field
        case .moreSwim:
            opened()
            content.paging.more = true
        case .match(let page):
            opened()
            content.paging = Paging()
            content.paging.match = page
        case .leaf(let id): follow(.leaf(id: id))
        case .nextPart: content.paging.part += 1
        case .typed(let into, let text): draft(text, on: content.showing, into: into)
        case .send(let action):
            let showing = content.showing
            act(action) { state in
                // A text that the core refuses stays, so that it can be corrected.
                if case .typed(let into, _) = action { state.draft("", on: showing, into: into) }
            }
        case .salvage: break
        }
    }

    /// A key of the Bank opens a screen, unless the thumb has just tapped one of the sheet behind MORE, which was in its place.
    private func openFromBank(_ showing: Showing) {
        act(.opened, quietly: true) { $0.open(showing) }
    }

    private func turn(to leaf: String?) {
        content.paging = Paging()
        content.paging.leaf = leaf
    }

    private func back() {
        // Once only, and on no other screen: BACK always leads to the Bank.
        if content.showing == .files, cancelWork() {
            return
        } else if content.paging.row != nil {
            content.paging.row = nil
        } else if content.showing == .match, content.paging.match != .now {
            content.paging = Paging()
        } else if content.paging.leaf != nil {
            turn(to: nil)
        } else if content.paging.more {
            content.paging.more = false
        } else if content.showing == .swim, let rays = content.swim?.back {
            act(rays)
        } else if leaveFilesPage() {
            return
        } else if content.showing == .mend, let entry = content.mend?.open {
            act(entry.back)
        } else {
            // The core has to know, since a second tap of a cold thumb would hit CAST.
            act(.back, quietly: true)
            open(.bank)
        }
    }

    /// A key has opened a screen, a leaf or a row. The core has to know, since a second tap of a cold thumb would hit what
    /// has appeared; there is nothing to show, to feel or to hear.
    private func opened() {
        let at = clock()
        ask({ core in try core.act(action: .opened, at: at) }) { _, _ in }
    }

    /// Does what a key asks; `then` runs when its action was accepted and was not an accidental second tap.
    private func follow(_ tap: KeyTap, then after: (@MainActor (RestwaterState) -> Void)? = nil) {
        switch tap {
        case .send(let action): act(action, then: after)
        case .open(let which):
            opened()
            open(Showing(which))
        case .leaf(let id):
            opened()
            turn(to: id)
        case .share(let text): show(.text(text))
        case .askReceiver: usePhone()
        }
    }
}
