import AVFoundation
import Foundation
import RestwaterKit

/// The phone's loudspeaker. The session is started and stopped on a queue of its own, since the system may take a tenth
/// of a second for that, and a tap must not wait for its sound.
@MainActor
final class Loudspeaker: SoundOutput {
    private let queue = DispatchQueue(label: "app.restwater.sound", qos: .userInitiated)
    private let engine = Engine()

    func start(for use: SoundUse) {
        queue.async { [engine] in Log.attempt("preparing the loudspeaker") { try engine.start(for: use) } }
    }

    func play(_ samples: [Float], rate: Double, then: @escaping @MainActor @Sendable (Bool) -> Void) {
        queue.async { [engine] in
            var isHeard = true
            do { try engine.play(samples, rate: rate) } catch {
                Log.fault("playing a sound", error)
                isHeard = false
            }
            Task { @MainActor [isHeard] in then(isHeard) }
        }
    }

    func renew() {
        queue.async { [engine] in engine.renew() }
    }

    func stop() {
        queue.async { [engine] in Log.attempt("letting other sounds go on") { try engine.stop() } }
    }

    /// Used only on the queue.
    private final class Engine: @unchecked Sendable {
        private var engine = AVAudioEngine()
        private var voice = AVAudioPlayerNode()

        /// What was made before a reset of the audio service is orphaned: it fails from then on
        /// (developer.apple.com/documentation/avfaudio/avaudiosession/mediaserviceswereresetnotification).
        func renew() {
            engine = AVAudioEngine()
            voice = AVAudioPlayerNode()
        }

        /// The category says what a sound is for: `ambient` mixes with other apps and obeys the ring switch, `playback`
        /// is heard whatever the switch says and makes others quieter while it plays.
        func start(for use: SoundUse) throws {
            let session = AVAudioSession.sharedInstance()
            switch use {
            case .tap: try session.setCategory(.ambient, mode: .default, options: [])
            case .alarm: try session.setCategory(.playback, mode: .default, options: [.duckOthers])
            }
            try session.setActive(true, options: [])
        }

        func play(_ samples: [Float], rate: Double) throws {
            guard let format = AVAudioFormat(standardFormatWithSampleRate: rate, channels: 1),
                let buffer = AVAudioPCMBuffer(pcmFormat: format, frameCapacity: UInt32(samples.count)),
                let channel = buffer.floatChannelData?[0]
            else { throw CocoaError(.featureUnsupported) }
            for (i, sample) in samples.enumerated() { channel[i] = sample }
            buffer.frameLength = UInt32(samples.count)
            // A call or a change of audio route stops the engine without asking.
            if !engine.isRunning { try run(format) }
            voice.scheduleBuffer(buffer, at: nil, options: .interrupts, completionHandler: nil)
            voice.play()
        }

        private func run(_ format: AVAudioFormat) throws {
            if voice.engine == nil { engine.attach(voice) }
            engine.connect(voice, to: engine.mainMixerNode, format: format)
            try engine.start()
        }

        func stop() throws {
            voice.stop()
            engine.stop()
            try AVAudioSession.sharedInstance().setActive(false, options: .notifyOthersOnDeactivation)
        }
    }
}
