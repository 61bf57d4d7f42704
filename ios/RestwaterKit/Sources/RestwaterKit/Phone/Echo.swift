/// What is felt and heard after a tap or for an alarm, as plain numbers. Cold fingers still feel slow, low pulses when
/// they feel little else, and wind and water hide high tones least if they are short and come in pairs: each echo is
/// recognised by its rhythm, not by its pitch. Chosen by ear and hand, no source.
public struct Echo: Equatable, Sendable {
    /// A pulse of the motor.
    public struct Pulse: Equatable, Sendable {
        /// Seconds from the start, and how long.
        public let at, seconds: Double
        /// 0 to 1.
        public let strength: Double
        /// 0 (dull) to 1 (sharp).
        public let sharpness: Double
    }

    /// A tone of the loudspeaker.
    public struct Tone: Equatable, Sendable {
        /// Seconds from the start, and how long.
        public let at, seconds: Double
        public let hertz: Double
        /// 0 to 1.
        public let level: Double
    }

    public let pulses: [Pulse]
    public let tones: [Tone]

    /// Seconds until the last of it has ended.
    public var seconds: Double {
        (pulses.map { $0.at + $0.seconds } + tones.map { $0.at + $0.seconds }).max() ?? 0
    }

    /// The tap is on stable storage: one long pulse, one low tone.
    public static let logged = Echo(beats: [(0, 0.16)], hertz: 220)
    /// A second tap, ignored: two short ones.
    public static let ignored = Echo(beats: [(0, 0.06), (0.14, 0.06)], hertz: 165)
    /// Nothing was logged: three, falling.
    public static let refused = Echo(beats: [(0, 0.12), (0.2, 0.12), (0.4, 0.2)], hertz: 147, falling: true)
    /// The minute to recast by has passed, with the app in the foreground.
    public static let recast = Echo(beats: [(0, 0.3), (0.45, 0.3), (0.9, 0.3)], hertz: 262)

    public static let all = [logged, ignored, refused, recast]

    /// An alarm that is due: the recast echo again and again, long enough to be heard in wind. Twelve seconds is the
    /// project's own choice; the system plays a notification's sound for up to thirty
    /// (developer.apple.com/documentation/usernotifications/unnotificationsound).
    public static let alarm = recast.repeated(6, every: 2)

    private init(pulses: [Pulse], tones: [Tone]) { (self.pulses, self.tones) = (pulses, tones) }

    private func repeated(_ times: Int, every seconds: Double) -> Echo {
        let starts = (0..<times).map { Double($0) * seconds }
        return Echo(
            pulses: starts.flatMap { start in
                pulses.map { Pulse(at: start + $0.at, seconds: $0.seconds, strength: $0.strength, sharpness: $0.sharpness) }
            },
            tones: starts.flatMap { start in
                tones.map { Tone(at: start + $0.at, seconds: $0.seconds, hertz: $0.hertz, level: $0.level) }
            }
        )
    }

    private init(beats: [(at: Double, seconds: Double)], hertz: Double, falling: Bool = false) {
        pulses = beats.map { Pulse(at: $0.at, seconds: $0.seconds, strength: 1, sharpness: 0.1) }
        // A falling echo goes down a tone of the twelve-tone scale with each beat.
        let step = falling ? 0.890_898_718_140_339 : 1
        tones = beats.enumerated().map { i, beat in
            let down = (0..<i).reduce(hertz) { pitch, _ in pitch * step }
            return Tone(at: beat.at, seconds: beat.seconds, hertz: down, level: 0.6)
        }
    }
}

extension Echo {
    /// Samples of the tones, -1 to 1. Each rises and falls over 8 ms, so that it does not click.
    public func samples(rate: Double) -> [Float] {
        var samples = [Float](repeating: 0, count: Int((seconds * rate).rounded(.up)))
        for tone in tones {
            let first = Int(tone.at * rate)
            let count = Int(tone.seconds * rate)
            for i in 0..<count where first + i < samples.count {
                let time = Double(i) / rate
                let edge = min(1, min(time, tone.seconds - time) / 0.008)
                samples[first + i] += Float(tone.level * max(0, edge) * wave(tone.hertz * time))
            }
        }
        return samples
    }
}
