import AVFoundation
import Foundation
import RestwaterKit

/// The phone's loudspeaker. The category says what a sound is for: `ambient` mixes with other apps and keeps to the ring
/// switch, `playback` is heard whatever the switch says and makes others quieter meanwhile.
@MainActor
final class Loudspeaker: SoundOutput {
    private let engine = AVAudioEngine()
    private let voice = AVAudioPlayerNode()

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
        // A call or another route stops the engine without asking.
        if !engine.isRunning { try run(format) }
        voice.scheduleBuffer(buffer, at: nil, options: .interrupts, completionHandler: nil)
        voice.play()
    }

    private func run(_ format: AVAudioFormat) throws {
        if voice.engine == nil { engine.attach(voice) }
        engine.connect(voice, to: engine.mainMixerNode, format: format)
        try engine.start()
    }

    func stop() {
        voice.stop()
        engine.stop()
        Log.attempt("letting other sounds go on") {
            try AVAudioSession.sharedInstance().setActive(false, options: .notifyOthersOnDeactivation)
        }
    }
}
