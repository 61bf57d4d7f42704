import CoreHaptics
import Foundation
import RestwaterKit

/// The motor, where the phone has one. A fault here stops no tap.
@MainActor
final class Haptics {
    private let engine: CHHapticEngine?
    private var player: (any CHHapticPatternPlayer)?

    init() {
        engine = CHHapticEngine.capabilitiesForHardware().supportsHaptics ? Log.attempt("finding the motor") { try CHHapticEngine() } : nil
        engine?.isAutoShutdownEnabled = true
    }

    func play(_ echo: Echo) {
        guard let engine else { return }
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
        Log.attempt("moving the motor") {
            // Starts again after a call or a reset has stopped it.
            try engine.start()
            // A tap ends an alarm that is still moving it.
            try player?.stop(atTime: CHHapticTimeImmediate)
            let next = try engine.makePlayer(with: CHHapticPattern(events: events, parameters: []))
            player = next
            try next.start(atTime: CHHapticTimeImmediate)
        }
    }
}
