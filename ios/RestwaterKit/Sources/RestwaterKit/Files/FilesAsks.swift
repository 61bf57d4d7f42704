import Foundation
import RestwaterCore

/// Import and export. What a file would bring is shown first; nothing changes before it is imported.
extension RestwaterState {
    func tap(_ ask: FilesAsk) {
        switch ask {
        case .send: make { .share($0) }
        case .save: make { .save($0) }
        case .pick: show(.pick)
        case .folder: show(.folder)
        case .takeIn: takeIn()
        case .leave: leave()
        case .imports: turn(to: .imports)
        case .backups: turn(to: .backups)
        case .backUp: backUp()
        case .lookOver: work({ core, _, _ in try await core.lookOver() }) { $0.said($1) }
        case .offer(let path): look(path)
        case .source(let name): content.files.source = name
        }
    }

    /// A file that the system passes to the app: shows what it would bring.
    public func offer(_ url: URL) {
        open(.files)
        let files = files
        content.files.fetching += 1
        aside({ try Inbox.take(url, by: files) }) { state, path in
            state.look(path)
        } ended: { state in
            state.content.files.fetching -= 1
        }
    }

    /// Leaves the open page; returns whether one was open. One that is being left already stays until its import has ended, and
    /// BACK leads on.
    func leaveFilesPage() -> Bool {
        guard content.showing == .files, content.files.page != .send, !content.files.leaving else { return false }
        leave()
        return true
    }

    private func turn(to page: FilesPage) {
        content.files.page = page
        content.paging.grid = 0
    }

    /// A file that came while other work ran is looked into after it.
    func lookIntoNext() {
        guard let path = content.files.next else { return }
        content.files.next = nil
        look(path)
    }

    private func look(_ path: String) {
        guard running == nil else { return content.files.next = path }
        work({ core, at, work in
            do { return try await core.lookInto(path: path, now: at, work: work) } catch {
                Inbox.finished(path)
                throw error
            }
        }) { state, incoming in
            var files = state.content.files
            if let before = files.path, before != path { Inbox.finished(before) }
            (files.path, files.taken, files.incoming, files.page) = (path, false, incoming, .incoming)
            state.content.files = files
        }
    }

    private func takeIn() {
        guard let path = content.files.path else { return }
        let source = content.files.source
        let begun = work({ core, at, work in try await core.takeIn(path: path, source: source, at: at, work: work) }) { state, incoming in
            state.content.files.incoming = incoming
            state.content.files.taken = true
            state.refresh()
            state.readPlan()
        } ended: { state in
            let left = state.content.files.leaving && !state.content.files.taken
            (state.content.files.taking, state.content.files.leaving) = (false, false)
            if left { state.discard() }
        }
        if begun { content.files.taking = true }
    }

    /// Discards the file that was looked at. An import that is under way is cancelled; if it was too late, its result stays.
    private func leave() {
        cancelWork()
        if content.files.taking { content.files.leaving = true } else { discard() }
    }

    private func discard() {
        var files = content.files
        if let path = files.path { Inbox.finished(path) }
        (files.path, files.incoming, files.source, files.page) = (nil, nil, "", .send)
        content.files = files
    }

    func said(_ text: String) {
        say(text)
        refresh()
    }

    /// Its copy is not part of this work, since the folder may wait for its network.
    private func backUp() {
        work({ core, at, work in try await core.backUp(now: at, work: work) }) { state, made in
            guard let made else { return }
            state.said(made.says)
            state.copyLoudly(made.path)
        }
    }
}
