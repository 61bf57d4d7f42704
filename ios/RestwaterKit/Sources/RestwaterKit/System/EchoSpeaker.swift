/// What a sound is for: the system treats them differently.
public enum SoundUse: Equatable, Sendable {
    /// The answer to a tap: mixes with other sounds and obeys the ring switch.
    case tap
    /// An alarm that is due: heard whatever the ring switch says.
    case alarm
}

/// The loudspeaker.
@MainActor
public protocol SoundOutput: AnyObject {
    /// Prepares for that use; an output that is running for another use is prepared again.
    func start(for use: SoundUse)
    /// Plays in place of what was playing, then says whether that can be heard: `start` may have failed as well.
    func play(_ samples: [Float], rate: Double, then: @escaping @MainActor @Sendable (Bool) -> Void)
    /// Makes everything again: after its audio service was reset, the system has no use for what was made before.
    func renew()
    /// Releases the loudspeaker: a running engine uses power.
    func stop()
}

/// Plays echoes, and releases the loudspeaker when nothing has been played for a while.
@MainActor
public final class EchoSpeaker {
    private let output: any SoundOutput
    private let sleep: @Sendable (Double) async throws -> Void
    private var running: SoundUse?
    /// How many sounds were begun: one that failed is not played again in the middle of another.
    private var played = 0
    private var stopping: Task<Void, Never>?
    static let rate = 44_100.0
    /// Seconds after the end of a sound until the output is stopped; the project's own choice.
    static let idle = 2.0

    public init(
        output: any SoundOutput,
        sleep: @escaping @Sendable (Double) async throws -> Void = { try await Task.sleep(nanoseconds: UInt64($0 * 1e9)) }
    ) {
        (self.output, self.sleep) = (output, sleep)
    }

    /// Plays an echo, then says whether it can be heard.
    public func play(_ echo: Echo, for use: SoundUse = .tap, then: @escaping @MainActor @Sendable (Bool) -> Void = { _ in }) {
        stopping?.cancel()
        played += 1
        let (samples, number) = (echo.samples(rate: Self.rate), played)
        begin(samples, use) { [weak self] isHeard in
            guard let self, !isHeard, number == played else { return then(isHeard) }
            outputWasReset()
            begin(samples, use, then)
        }
        stop(after: echo.seconds + Self.idle)
    }

    private func begin(_ samples: [Float], _ use: SoundUse, _ then: @escaping @MainActor @Sendable (Bool) -> Void) {
        if running != use { output.start(for: use) }
        running = use
        output.play(samples, rate: Self.rate, then: then)
    }

    /// The system's audio service was reset, or a sound failed, as it then does: the next sound has a new output.
    public func outputWasReset() {
        output.renew()
        running = nil
    }

    private func stop(after seconds: Double) {
        stopping = Task { [sleep] in
            do { try await sleep(seconds) } catch { return }  // something else is played: not yet
            guard !Task.isCancelled else { return }
            running = nil
            output.stop()
        }
    }
}
