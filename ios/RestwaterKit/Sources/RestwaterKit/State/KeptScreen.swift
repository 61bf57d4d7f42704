import Foundation
import RestwaterCore

/// The open screen with what is typed on it, and what both are about: kept when the app goes to the background, where iOS may end
/// the process at any moment.
struct KeptScreen: Codable, Equatable {
    let showing: String
    let keys: Int
    let page: Int
    let grid: Int
    let row: String?
    let leaf: String?
    let part: Int
    let match: String
    let typed: String
    let more: Bool
    /// The core's part, which it alone reads.
    let subject: String
    let wallMs: Int64

    init(_ content: ScreenContent, about subject: String, at now: Moment) {
        let paging = content.paging
        showing = content.showing.rawValue
        (keys, page, grid, row, leaf, part) = (paging.keys, paging.page, paging.grid, paging.row, paging.leaf, paging.part)
        (match, typed, more) = (paging.match.rawValue, paging.typed, paging.more)
        (self.subject, wallMs) = (subject, now.wallMs)
    }

    var paging: Paging {
        var paging = Paging()
        // The row first: whatever opens one empties what is typed.
        paging.row = row
        (paging.keys, paging.page, paging.grid, paging.leaf, paging.part) = (keys, page, grid, leaf, part)
        (paging.match, paging.typed, paging.more) = (MatchPage(rawValue: match) ?? .now, typed, more)
        return paging
    }
}

/// The store of a `KeptScreen`.
struct LastScreen: @unchecked Sendable {
    // UserDefaults may be used from any thread, as in BackupFolder.
    let defaults: UserDefaults
    private static let screen = "last-screen"
    /// After a day nobody goes on where they were; a text that was begun is still theirs.
    private static let dayMs: Int64 = 86_400_000

    func keep(_ screen: KeptScreen) {
        Log.attempt("keeping the open screen") { defaults.set(try JSONEncoder().encode(screen), forKey: Self.screen) }
    }

    func forget() { defaults.removeObject(forKey: Self.screen) }

    func read(at now: Moment) -> KeptScreen? {
        guard let data = defaults.data(forKey: Self.screen) else { return nil }
        // One of another version may have another form.
        guard let screen = Log.attempt("reading the open screen", { try JSONDecoder().decode(KeptScreen.self, from: data) }) else { return nil }
        return screen.typed.isEmpty && !(0..<Self.dayMs).contains(now.wallMs - screen.wallMs) ? nil : screen
    }
}

extension RestwaterState {
    /// The first screen of a process: the one that was open when an earlier process ended, or the one that the app opens with.
    public func comeUp() {
        guard let kept = lastScreen.read(at: clock()), let showing = Showing(rawValue: kept.showing) else { return greet() }
        let at = clock()
        // Every screen needs the Bank's record and the settings to lay itself out.
        ask({ core in
            (try core.restoreSubject(subject: kept.subject), try core.screen(which: .bank, now: at), try core.settings(now: at))
        }) { state, answer in
            // It is not possible any more: what was typed would go elsewhere.
            guard answer.0 else {
                state.lastScreen.forget()
                return state.greet()
            }
            state.subject = kept.subject
            if !state.away { state.lastScreen.forget() }
            state.content.settings = answer.2
            state.content.show(answer.1)
            state.comeUp(showing, with: kept.paging)
        }
    }

    /// Until the core has been read, what an earlier process kept is still to come up.
    func keepScreen() {
        guard !subject.isEmpty else { return }
        lastScreen.keep(KeptScreen(content, about: subject, at: clock()))
    }
}
