import Foundation
import RestwaterCore

/// The open screen and what it is about: kept when the app goes to the background, where iOS may end
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
    let more: Bool
    /// The page of the Files screen, the file that is looked at, and the partner's name.
    let files: String
    let file: String?
    let source: String
    /// The core's part, which it alone reads.
    let subject: String
    let wallMs: Int64

    init(_ content: ScreenContent, about subject: String, at now: Moment) {
        let paging = content.paging
        showing = content.showing.rawValue
        (keys, page, grid, row, leaf, part) = (paging.keys, paging.page, paging.grid, paging.row, paging.leaf, paging.part)
        (match, more) = (paging.match.rawValue, paging.more)
        (files, file, source) = (content.files.page.rawValue, content.files.path, content.files.source)
        (self.subject, wallMs) = (subject, now.wallMs)
    }

    var paging: Paging {
        var paging = Paging()
        // The row first: whatever opens one begins with its first page.
        paging.row = row
        (paging.keys, paging.page, paging.grid, paging.leaf, paging.part) = (keys, page, grid, leaf, part)
        (paging.match, paging.more) = (MatchPage(rawValue: match) ?? .now, more)
        return paging
    }

    /// After a day nobody goes on where they were; a text that was begun on the screen is still theirs.
    func comesBack(at now: Moment, with drafts: [Drafts.Draft]) -> Bool {
        (0..<Self.dayMs).contains(now.wallMs - wallMs) || drafts.contains { $0.screen == showing } || file != nil
    }

    private static let dayMs: Int64 = 86_400_000
}

/// The store of a `KeptScreen`.
struct LastScreen: @unchecked Sendable {
    // UserDefaults may be used from any thread, as in BackupFolder.
    let defaults: UserDefaults
    private static let screen = "last-screen"
    private static let drafts = "drafts"

    func keep(_ screen: KeptScreen) {
        Log.attempt("keeping the open screen") { defaults.set(try JSONEncoder().encode(screen), forKey: Self.screen) }
    }

    func forget() { defaults.removeObject(forKey: Self.screen) }

    /// Kept with each letter: a battery that dies in the cold sends no app to the background first.
    func keep(_ drafts: [Drafts.Draft]) {
        Log.attempt("keeping what is typed") { defaults.set(try JSONEncoder().encode(drafts), forKey: Self.drafts) }
    }

    /// What is half typed on any screen.
    func readDrafts() -> [Drafts.Draft] {
        guard let data = defaults.data(forKey: Self.drafts) else { return [] }
        return Log.attempt("reading what is typed") { try JSONDecoder().decode([Drafts.Draft].self, from: data) } ?? []
    }

    func read() -> KeptScreen? {
        guard let data = defaults.data(forKey: Self.screen) else { return nil }
        // One of another version may have another form.
        return Log.attempt("reading the open screen") { try JSONDecoder().decode(KeptScreen.self, from: data) }
    }
}

extension RestwaterState {
    /// The first screen of a process: the one that was open when an earlier process ended, or the one that the app opens with.
    public func comeUp() {
        let at = clock()
        let kept = lastScreen.read()
        // A text comes back only where it was typed, whichever screen comes up.
        content.drafts.list = lastScreen.readDrafts()
        guard let kept, kept.comesBack(at: at, with: content.drafts.list), let showing = Showing(rawValue: kept.showing) else { return greet() }
        keptFiles = kept
        // Every screen needs the Bank's record and the settings to lay itself out.
        ask({ core in
            (try core.restoreSubject(subject: kept.subject), try core.screen(which: .bank, now: at), try core.settings(now: at))
        }) { state, answer in
            // It is not possible any more: what is done on it would be about something else.
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

    /// The page of the Files screen that was open, and the file that was being looked at. This reads the log, so it waits until the
    /// app is in the foreground.
    func restoreFiles() {
        guard let kept = keptFiles else { return }
        keptFiles = nil
        // Another file may have come first.
        guard content.files.page == .send, running == nil, let page = FilesPage(rawValue: kept.files) else { return }
        content.files.source = kept.source
        guard page == .incoming, let file = kept.file else { return content.files.page = page == .incoming ? .send : page }
        if FileManager.default.fileExists(atPath: file) { return tap(.files(.offer(path: file))) }
        content.files.source = ""
        // After the screen has come up.
        ask({ core in try core.subject() }) { state, _ in state.refused(FileTrouble.refusal(of: CocoaError(.fileNoSuchFile))) }
    }

    /// Keeps a text that is typed; an empty one is none.
    func draft(_ text: String, on showing: Showing, into: TypedInto) {
        content.drafts.keep(text, on: showing, into: into)
        lastScreen.keep(content.drafts.list)
    }

    /// Until the core has been read, what an earlier process kept is still to come up.
    func keepScreen() {
        guard !subject.isEmpty else { return }
        lastScreen.keep(KeptScreen(content, about: subject, at: clock()))
    }
}
