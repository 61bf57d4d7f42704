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
    func start(for use: SoundUse) throws
    /// Plays in place of what was playing.
    func play(_ samples: [Float], rate: Double) throws
    /// Releases the loudspeaker: a running engine uses power.
    func stop()
}

/// Plays echoes, and releases the loudspeaker when nothing has been played for a while.
@MainActor
public final class EchoSpeaker {
    private let output: any SoundOutput
    private let sleep: @Sendable (Double) async throws -> Void
    private var running: SoundUse?
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

    public func play(_ echo: Echo, for use: SoundUse = .tap) {
        stopping?.cancel()
        do {
            if running != use { try output.start(for: use) }
            running = use
            try output.play(echo.samples(rate: Self.rate), rate: Self.rate)
        } catch {
            Log.fault("playing a sound", error)
        }
        stop(after: echo.seconds + Self.idle)
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
