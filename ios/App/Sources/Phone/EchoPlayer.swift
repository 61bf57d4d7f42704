import AVFoundation
import CoreHaptics
import Foundation
import RestwaterKit

/// Plays what the kit planned: the motor where the phone has one, and the tones. A fault here stops no tap.
@MainActor
final class EchoPlayer {
    private var haptics: CHHapticEngine?
    private let audio = AVAudioEngine()
    private let voice = AVAudioPlayerNode()
    private let format = AVAudioFormat(standardFormatWithSampleRate: EchoPlayer.rate, channels: 1)
    private static let rate = 44_100.0

    init() {
        // Mixes with what else is heard, and keeps to the ring switch.
        try? AVAudioSession.sharedInstance().setCategory(.ambient, mode: .default, options: [.mixWithOthers])
        audio.attach(voice)
        audio.connect(voice, to: audio.mainMixerNode, format: format)
        if CHHapticEngine.capabilitiesForHardware().supportsHaptics { haptics = try? CHHapticEngine() }
        haptics?.isAutoShutdownEnabled = true
    }

    func play(_ echo: Echo) {
        feel(echo)
        hear(echo)
    }

    private func feel(_ echo: Echo) {
        guard let haptics else { return }
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
        try? haptics.start()
        try? haptics.makePlayer(with: CHHapticPattern(events: events, parameters: [])).start(atTime: CHHapticTimeImmediate)
    }

    private func hear(_ echo: Echo) {
        let samples = echo.samples(rate: Self.rate)
        guard let format, let buffer = AVAudioPCMBuffer(pcmFormat: format, frameCapacity: UInt32(samples.count)),
            let channel = buffer.floatChannelData?[0]
        else { return }
        for (i, sample) in samples.enumerated() { channel[i] = sample }
        buffer.frameLength = UInt32(samples.count)
        if !audio.isRunning { try? audio.start() }
        guard audio.isRunning else { return }
        voice.scheduleBuffer(buffer, at: nil, options: .interrupts, completionHandler: nil)
        voice.play()
    }
}
