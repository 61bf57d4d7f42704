import XCTest

@testable import RestwaterKit

/// What is felt and heard.
final class EchoTests: XCTestCase {
    func testEachEchoIsToldByItsRhythm() {
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
}
