import Foundation
import RestwaterCore

/// Files in and out. What a file brings is looked at first; nothing is changed before it is taken in.
extension RestwaterState {
    func tap(_ ask: FilesAsk) {
        switch ask {
        case .send: work({ core, at, work in try await core.send(now: at, work: work) }) { $0.seen.files.wanted = .share($1) }
        case .save: work({ core, at, work in try await core.send(now: at, work: work) }) { $0.seen.files.wanted = .save($1) }
        case .pick: seen.files.wanted = .pick
        case .folder: seen.files.wanted = .folder
        case .takeIn: takeIn()
        case .leave: leave()
        case .imports: turn(to: .imports)
        case .backups: turn(to: .backups)
        case .backUp: backUp()
        case .lookOver: work({ core, _, _ in try await core.lookOver() }) { $0.said($1) }
        case .offer(let path): look(path)
        case .source(let name): seen.files.source = name
        }
    }

    /// A file that the system hands over: what it would bring is shown.
    public func offer(_ url: URL) {
        seen.files.wanted = nil
        open(.files)
        do {
            look(try Inbox.take(url))
        } catch {
            refused(FileTrouble.refusal(of: error))
        }
    }

    /// The system's picker or share sheet has gone; where a file was handed on or saved, that is said.
    public func wantMet(saved: Bool = false) {
        guard let wanted = seen.files.wanted else { return }
        seen.files.wanted = nil
        if saved, case .share(let file) = wanted { said("\(file.says): \(file.name)") }
        if saved, case .save(let file) = wanted { said("\(file.says): \(file.name)") }
    }

    /// The system could not do it.
    public func wantFailed(_ error: any Error) {
        seen.files.wanted = nil
        refused(FileTrouble.refusal(of: error))
    }

    /// Out of what is open; whether anything was.
    func leaveFilesPage() -> Bool {
        guard seen.showing == .files, seen.files.page != .send else { return false }
        leave()
        return true
    }

    private func turn(to page: FilesPage) {
        seen.files.page = page
        seen.turned.grid = 0
    }

    private func look(_ path: String) {
        work({ core, at, work in try await core.lookInto(path: path, now: at, work: work) }) { state, incoming in
            var files = state.seen.files
            (files.path, files.taken, files.incoming, files.page) = (path, false, incoming, .incoming)
            state.seen.files = files
        }
    }

    private func takeIn() {
        guard let path = seen.files.path else { return }
        let source = seen.files.source
        work({ core, at, work in try await core.takeIn(path: path, source: source, at: at, work: work) }) { state, incoming in
            state.seen.files.incoming = incoming
            state.seen.files.taken = true
            state.refresh()
            state.lookOut()
        }
    }

    private func leave() {
        var files = seen.files
        (files.path, files.incoming, files.source, files.page) = (nil, nil, "", .send)
        seen.files = files
    }

    private func said(_ text: String) {
        seen.notice = text
        refresh()
    }

    private func backUp() {
        let folder = backups
        work({ core, at, work -> String? in
            guard let made = try await core.backUp(now: at, work: work) else { return nil }
            do { try folder.copy(made.path) } catch { throw FileTrouble.refusal(of: error) }
            return made.says
        }) { state, said in
            if let said { state.said(said) }
        }
    }
}
