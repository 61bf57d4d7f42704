import Foundation
import RestwaterCore

/// Files in and out. What a file brings is looked at first; nothing is changed before TAKE IN.
extension RestwaterState {
    func tap(_ ask: FilesAsk) {
        switch ask {
        case .send: work({ core, at, work in try await core.send(now: at, work: work) }) { $0.seen.files.made = $1 }
        case .pick: seen.files.picking = true
        case .takeIn: takeIn()
        case .leave: closeIncoming()
        case .backUp: work({ core, at, work in try await core.backUp(now: at, work: work) }) { $0.seen.notice = $1 ?? "" }
        case .lookOver: work({ core, _, _ in try await core.lookOver() }) { $0.seen.notice = $1 }
        case .list(let list):
            seen.files.list = list
            seen.turned.grid = 0
        case .lookInto(let path): lookInto(path: path)
        case .source(let name): seen.files.source = name
        }
    }

    /// What a file that the system hands over would bring; opens the Files screen on it.
    public func lookInto(_ url: URL) {
        seen.files.picking = false
        let path = Result { try Inbox.take(url) }.mapError(Refusal.init)
        open(.files)
        switch path {
        case .success(let path): lookInto(path: path)
        case .failure(let refusal): refused(refusal)
        }
    }

    /// The system's picker has gone without a file.
    public func picked() { seen.files.picking = false }

    /// The system's share sheet has gone.
    public func shared() { seen.files.made = nil }

    private func lookInto(path: String) {
        work({ core, at, work in try await core.lookInto(path: path, now: at, work: work) }) { state, incoming in
            state.seen.files.incoming = incoming
            state.seen.files.incomingPath = path
            state.seen.files.list = nil
        }
    }

    private func takeIn() {
        guard let path = seen.files.incomingPath else { return }
        let source = seen.files.source
        work({ core, at, work in try await core.takeIn(path: path, source: source, at: at, work: work) }) { state, incoming in
            state.seen.files.incoming = incoming
            state.seen.files.incomingPath = nil
            state.refresh()
        }
    }

    func closeIncoming() {
        seen.files.incoming = nil
        seen.files.incomingPath = nil
        seen.files.source = ""
    }

    /// Gives up what runs; what it was about to change stays as it was.
    func giveUp() { running?.giveUp() }

    /// One long piece of work at a time, with its progress in sight.
    private func work<T: Sendable>(
        _ call: @escaping @Sendable (Restwater, Moment, Work) async throws -> T,
        then: @escaping @MainActor @Sendable (RestwaterState, T) -> Void
    ) {
        guard running == nil else { return }
        let (at, work) = (clock(), Work())
        running = work
        seen.files.done = 0
        watch(work)
        long({ core in try await call(core, at, work) }, then: then) { state in
            state.running = nil
            state.seen.files.done = nil
        }
    }

    private func watch(_ work: Work) {
        Task {
            while running === work {
                try? await Task.sleep(nanoseconds: 200_000_000)
                if running === work { seen.files.done = work.done() }
            }
        }
    }
}
