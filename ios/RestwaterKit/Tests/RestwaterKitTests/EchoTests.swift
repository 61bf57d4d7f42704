import XCTest

@testable import RestwaterKit

/// What is felt and heard.
final class EchoTests: XCTestCase {
    func testEachEchoHasItsOwnRhythm() {
        let rhythms = Echo.all.map { $0.pulses.map { [$0.at, $0.seconds] } }
        XCTAssertEqual(Set(rhythms).count, rhythms.count)
    }

    func testPulsesAreDullAndTonesLow() {
        for echo in Echo.all {
            XCTAssertFalse(echo.pulses.isEmpty || echo.tones.isEmpty)
            for pulse in echo.pulses { XCTAssertTrue(pulse.sharpness <= 0.2 && (0...1).contains(pulse.strength)) }
            for tone in echo.tones { XCTAssertTrue((100...400).contains(tone.hertz)) }
            XCTAssertLessThan(echo.seconds, 1.5)
        }
    }

    func testSamplesAreWithinTheirRangeAsLongAsTheEchoAndWithoutAClick() {
        for echo in Echo.all {
            let samples = echo.samples(rate: 44_100)
            XCTAssertEqual(Double(samples.count) / 44_100, echo.seconds, accuracy: 0.001)
            XCTAssertLessThanOrEqual(samples.map(abs).max() ?? 0, 1)
            XCTAssertGreaterThan(samples.map(abs).max() ?? 0, 0.2)
            let jump = zip(samples, samples.dropFirst()).map { abs($1 - $0) }.max() ?? 1
            XCTAssertLessThan(jump, 0.15)
        }
    }

    func testAnAlarmIsTheRecastEchoAgainAndAgain() {
        XCTAssertGreaterThan(Echo.alarm.seconds, 10)
        XCTAssertLessThan(Echo.alarm.seconds, 30, "the system cuts a notification's sound there")
        XCTAssertEqual(Echo.alarm.pulses.prefix(3), Echo.recast.pulses[...])
    }

    /// The fields of a canonical PCM file: "Multimedia Programming Interface and Data Specifications 1.0", 1991.
    func testTheSoundFileIsRiffWavePcm() {
        let data = Echo.logged.wav(rate: 22_050)
        let samples = Echo.logged.samples(rate: 22_050)
        func number(_ at: Int, _ bytes: Int) -> Int { (0..<bytes).reduce(0) { $0 | Int(data[at + $1]) << (8 * $1) } }
        XCTAssertEqual(String(decoding: data[0..<4], as: UTF8.self), "RIFF")
        XCTAssertEqual(number(4, 4), data.count - 8)
        XCTAssertEqual(String(decoding: data[8..<16], as: UTF8.self), "WAVEfmt ")
        XCTAssertEqual([number(20, 2), number(22, 2), number(24, 4), number(28, 4), number(32, 2), number(34, 2)], [1, 1, 22_050, 44_100, 2, 16])
        XCTAssertEqual(number(40, 4), 2 * samples.count)
        XCTAssertEqual(data.count, 44 + 2 * samples.count)
        XCTAssertEqual(Int16(truncatingIfNeeded: number(44 + 2 * 500, 2)), Int16(samples[500] * 32_767))
    }
}

/// The loudspeaker is started for a sound and released afterwards.
@MainActor
final class EchoSpeakerTests: XCTestCase, @unchecked Sendable {
    final class Output: SoundOutput {
        var did: [String] = []
        /// How many of the next sounds fail.
        var failing = 0
        func start(for use: SoundUse) { did.append("start \(use)") }
        func play(_ samples: [Float], rate: Double, then: @escaping @MainActor @Sendable (Bool) -> Void) {
            did.append("play \(Int((Double(samples.count) / rate * 1_000).rounded()))")
            failing -= 1
            then(failing < 0)
        }
        func renew() { did.append("renew") }
        func stop() { did.append("stop") }
    }

    /// The system's audio service was reset: what the output had of it is good for nothing any more.
    func testASoundThatFailedIsPlayedOnceMoreByANewOutput() async {
        let output = Output()
        let speaker = EchoSpeaker(output: output)
        var heard: [Bool] = []
        output.failing = 1
        speaker.play(.logged, for: .tap) { heard.append($0) }
        XCTAssertEqual(output.did, ["start tap", "play 160", "renew", "start tap", "play 160"])
        XCTAssertEqual(heard, [true])
        output.failing = 2
        speaker.play(.alarm, for: .alarm) { heard.append($0) }
        XCTAssertEqual(output.did.suffix(5), ["start alarm", "play 11200", "renew", "start alarm", "play 11200"], "once more, not for ever")
        XCTAssertEqual(heard, [true, false], "the notification may sound in its place")
    }

    func testAnOutputThatWasResetIsMadeAnewAndStartedAgain() async {
        let output = Output()
        let speaker = EchoSpeaker(output: output)
        speaker.play(.logged)
        speaker.outputWasReset()
        speaker.play(.logged)
        XCTAssertEqual(output.did, ["start tap", "play 160", "renew", "start tap", "play 160"])
    }

    func testTheOutputStopsAWhileAfterTheLastSoundAndRestartsForAnAlarm() async throws {
        let output = Output()
        let ends = Ends()
        let speaker = EchoSpeaker(output: output, sleep: { seconds in try await ends.sleep(seconds) })
        speaker.play(.logged)
        speaker.play(.logged)
        await ends.passed(1)
        XCTAssertEqual(output.did, ["start tap", "play 160", "play 160", "stop"])
        speaker.play(.alarm, for: .alarm)
        speaker.play(.logged)
        XCTAssertEqual(output.did.suffix(4), ["start alarm", "play 11200", "start tap", "play 160"])
        await ends.passed(2)
        XCTAssertEqual(output.did.last, "stop")
        XCTAssertEqual(output.did.filter { $0 == "stop" }.count, 2)
    }
}

/// Time that passes at once, unless the wait for it is cancelled.
private actor Ends {
    private var count = 0
    func sleep(_ seconds: Double) async throws {
        try await Task.sleep(nanoseconds: 20_000_000)
        count += 1
    }
    func passed(_ wanted: Int) async {
        for _ in 0..<200 where count < wanted {
            do { try await Task.sleep(nanoseconds: 10_000_000) } catch { return }
        }
        do { try await Task.sleep(nanoseconds: 10_000_000) } catch { return }
    }
}
