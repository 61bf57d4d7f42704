import XCTest

@testable import RestwaterKit

final class CoreLoadsTests: XCTestCase {
    /// The whole chain: Rust library, generated Swift, the kit.
    func testTheCoreSaysItsVersion() {
        let parts = About().coreVersion.split(separator: ".").map { Int($0) }
        XCTAssertEqual(parts.count, 3)
        XCTAssertFalse(parts.contains(nil), "a version is three numbers: \(About().coreVersion)")
    }
}
