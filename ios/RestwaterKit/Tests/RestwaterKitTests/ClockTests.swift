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
    /// proc(5): uptime is the first number of /proc/uptime, boot_id is in /proc/sys/kernel/random. What is written down is neither:
    /// the moment when the phone was started does not follow from it.
    func testTheMonotonicClockRunsWithTheKernelsUptimeFromAnOriginOfItsOwn() throws {
        func ahead() throws -> Double {
            let text = try String(contentsOfFile: "/proc/uptime", encoding: .utf8)
            return Double(present().monoMs) / 1_000 - (try XCTUnwrap(text.split(separator: " ").first.flatMap { Double($0) }))
        }
        let first = try ahead()
        XCTAssertGreaterThan(abs(first), 60, "the boot follows from it")
        Thread.sleep(forTimeInterval: 0.2)
        XCTAssertEqual(try ahead(), first, accuracy: 0.05)
        let kernels = try String(contentsOfFile: "/proc/sys/kernel/random/boot_id", encoding: .utf8)
        XCTAssertFalse(kernels.contains(present().boot), "the boot is the kernel's own")
        XCTAssertNotNil(UUID(uuidString: present().boot))
    }
    #endif

    /// Each process of one boot has the same id and origin, else the wait would jump; a restart of the phone has others.
    func testEachProcessOfOneBootHasTheSameBootAndTheNextBootAnother() throws {
        let file = FileManager.default.temporaryDirectory.appendingPathComponent("boot-\(UUID().uuidString)/boot")
        let first = Boots(file: file, kernel: "a").now
        XCTAssertEqual(Boots(file: file, kernel: "a").now, first)
        let second = Boots(file: file, kernel: "b").now
        XCTAssertNotEqual(second.id, first.id)
        XCTAssertNotEqual(second.originMs, first.originMs)
        XCTAssertEqual(Boots(file: file, kernel: "b").now, second)
        try Data("torn".utf8).write(to: file)
        let third = Boots(file: file, kernel: "b").now
        XCTAssertNotEqual(third, second)
        XCTAssertEqual(Boots(file: file, kernel: "b").now, third)
    }

    func testWhileTheFileCannotBeWrittenOneProcessHasOneBootAndKeepsItOnceItCan() throws {
        let folder = FileManager.default.temporaryDirectory.appendingPathComponent("boot-\(UUID().uuidString)")
        // A file where the folder should be.
        try Data().write(to: folder)
        let boots = Boots(file: folder.appendingPathComponent("boot"), kernel: "a")
        let meanwhile = boots.now
        XCTAssertEqual(boots.now, meanwhile)
        try FileManager.default.removeItem(at: folder)
        let kept = boots.now
        XCTAssertNotEqual(kept, meanwhile)
        XCTAssertEqual(Boots(file: folder.appendingPathComponent("boot"), kernel: "a").now, kept)
        let unknown = Boots(file: folder.appendingPathComponent("boot"), kernel: nil)
        XCTAssertEqual(unknown.now, unknown.now)
        XCTAssertNotEqual(unknown.now.id, kept.id, "a boot that can't be told from others is the process's own")
    }

    func testLaterIsLaterByBothClocks() {
        let now = present()
        let later = now.later(ms: 90_000)
        XCTAssertEqual(later.wallMs - now.wallMs, 90_000)
        XCTAssertEqual(later.monoMs - now.monoMs, 90_000)
        XCTAssertEqual(later.boot, now.boot)
    }
}
