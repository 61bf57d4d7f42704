import Dispatch

/// Runs blocking work (opening a log, or a file that a drive has to fetch first) off the main thread and outside the
/// threads that other tasks wait for.
func offMain<T: Sendable>(_ work: @escaping @Sendable () throws -> T) async throws -> T {
    try await withCheckedThrowingContinuation { waiting in
        DispatchQueue.global(qos: .userInitiated).async { waiting.resume(with: Result { try work() }) }
    }
}
