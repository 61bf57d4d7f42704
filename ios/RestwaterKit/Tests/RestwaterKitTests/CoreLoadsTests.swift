import RestwaterCore
import XCTest

final class CoreLoadsTests: XCTestCase {
    /// The whole chain: Rust library and generated Swift.
    func testTheCoreSaysItsVersion() {
        let parts = coreVersion().split(separator: ".").map { Int($0) }
        XCTAssertEqual(parts.count, 3)
        XCTAssertFalse(parts.contains(nil), "a version is three numbers: \(coreVersion())")
    }
}
