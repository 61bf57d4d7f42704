import Dispatch
import RestwaterCore

/// Makes all calls to the core, one after another in the order of the taps, off the main thread. Answers come back on
/// the main thread in the same order.
final class CoreLine: Sendable {
    let core: Restwater
    private let queue = DispatchQueue(label: "app.restwater.core", qos: .userInitiated)

    init(_ core: Restwater) { self.core = core }

    func ask<T: Sendable>(
        _ work: @escaping @Sendable (Restwater) throws -> T,
        then answered: @escaping @MainActor @Sendable (Result<T, Refusal>) -> Void
    ) {
        queue.async { [core] in
            let answer = Result { try work(core) }.mapError(Refusal.init)
            DispatchQueue.main.async { MainActor.assumeIsolated { answered(answer) } }
        }
    }
}
