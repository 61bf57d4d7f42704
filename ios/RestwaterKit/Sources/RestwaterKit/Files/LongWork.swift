import RestwaterCore

/// Long work on files, one task at a time, with visible progress and a way to cancel it.
extension RestwaterState {
    func work<T: Sendable>(
        _ call: @escaping @Sendable (Restwater, Moment, Work) async throws -> T,
        then: @escaping @MainActor @Sendable (RestwaterState, T) -> Void
    ) {
        guard running == nil else {
            onEcho?(.ignored)
            return
        }
        let (at, work) = (clock(), Work())
        running = work
        watch(work)
        long({ core in try await call(core, at, work) }, then: then) { state in
            state.running = nil
            state.content.files.progress = nil
            state.lookIntoNext()
        }
    }

    /// Cancels the running work; what it was about to change stays as it was.
    func cancelWork() { running?.cancel() }

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
