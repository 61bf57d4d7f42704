import Foundation
import XCTest

@testable import RestwaterKit

/// The phone's own clocks.
final class ClockTests: XCTestCase {
    func testThePresentIsThisBootsAndGoesForward() throws {
        let (first, second) = (present(), present())
        XCTAssertEqual(first.boot, second.boot)
        XCTAssertFalse(first.boot.isEmpty)
        XCTAssertGreaterThanOrEqual(second.monoMs, first.monoMs)
        XCTAssertEqual(Double(first.wallMs) / 1_000, Date().timeIntervalSince1970, accuracy: 5)
        XCTAssertEqual(first.zone, TimeZone.current.identifier)
    }

    #if os(Linux)
    /// proc(5): uptime is the first number of /proc/uptime, boot_id is in /proc/sys/kernel/random.
    func testTheMonotonicClockIsTheKernelsUptime() throws {
        let text = try String(contentsOfFile: "/proc/uptime", encoding: .utf8)
        let uptime = try XCTUnwrap(text.split(separator: " ").first.flatMap { Double($0) })
        XCTAssertEqual(Double(present().monoMs) / 1_000, uptime, accuracy: 5)
        XCTAssertEqual(UUID(uuidString: present().boot)?.uuidString.lowercased(), present().boot)
    }
    #endif

    func testLaterIsLaterByBothClocks() {
        let now = present()
        let later = now.later(ms: 90_000)
        XCTAssertEqual(later.wallMs - now.wallMs, 90_000)
        XCTAssertEqual(later.monoMs - now.monoMs, 90_000)
        XCTAssertEqual(later.boot, now.boot)
    }
}
