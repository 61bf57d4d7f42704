import RestwaterCore

/// Long work on files, one task at a time, with visible progress and a way to cancel it.
extension RestwaterState {
    /// Returns whether it was begun.
    @discardableResult
    func work<T: Sendable>(
        _ call: @escaping @Sendable (Restwater, Moment, Work) async throws -> T,
        then: @escaping @MainActor @Sendable (RestwaterState, T) -> Void,
        ended: @escaping @MainActor @Sendable (RestwaterState) -> Void = { _ in }
    ) -> Bool {
        guard running == nil else {
            onEcho?(.ignored)
            return false
        }
        let (at, work) = (clock(), Work())
        running = work
        watch(work)
        long({ core in try await call(core, at, work) }, then: then) { state in
            state.running = nil
            state.content.files.progress = nil
            ended(state)
            state.lookIntoNext()
        }
        return true
    }

    /// Cancels the running work; what it was about to change stays as it was. Returns false if there is none, or if it was cancelled
    /// before.
    @discardableResult
    func cancelWork() -> Bool {
        guard let running, running !== cancelled else { return false }
        running.cancel()
        cancelled = running
        return true
    }

    /// Shows the progress after a moment: most work is done before anybody could read it.
    private func watch(_ work: Work) {
        Task {
            while running === work {
                do { try await Task.sleep(nanoseconds: 200_000_000) } catch { return }
                if running === work { content.files.progress = work.done() }
            }
        }
    }
}
