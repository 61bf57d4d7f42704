import CoreHaptics
import Foundation
import RestwaterKit

/// The motor, if the phone has one. It is started on a queue of its own: a tap must not wait for its pulse, and an
/// error here stops no tap.
@MainActor
final class Haptics {
    private let queue = DispatchQueue(label: "app.restwater.motor", qos: .userInitiated)
    private let motor = Motor()

    func play(_ echo: Echo) {
        queue.async { [motor] in Log.attempt("moving the motor") { try motor.play(echo) } }
    }

    /// Used only on the queue.
    private final class Motor: @unchecked Sendable {
        private var engine: CHHapticEngine?
        private var player: (any CHHapticPatternPlayer)?

        func play(_ echo: Echo) throws {
            guard CHHapticEngine.capabilitiesForHardware().supportsHaptics else { return }
            let engine = try self.engine ?? CHHapticEngine()
            engine.isAutoShutdownEnabled = true
            self.engine = engine
            // Starts it again after a pause, a call or a reset has stopped it.
            try engine.start()
            // A tap ends an alarm that is still vibrating.
            Log.attempt("ending a pulse") { try player?.stop(atTime: CHHapticTimeImmediate) }
            let next = try engine.makePlayer(with: pattern(echo))
            player = next
            try next.start(atTime: CHHapticTimeImmediate)
        }

        private func pattern(_ echo: Echo) throws -> CHHapticPattern {
            let events = echo.pulses.map { pulse in
                CHHapticEvent(
                    eventType: .hapticContinuous,
                    parameters: [
                        CHHapticEventParameter(parameterID: .hapticIntensity, value: Float(pulse.strength)),
                        CHHapticEventParameter(parameterID: .hapticSharpness, value: Float(pulse.sharpness)),
                    ],
                    relativeTime: pulse.at, duration: pulse.seconds
                )
            }
            return try CHHapticPattern(events: events, parameters: [])
        }
    }
}
