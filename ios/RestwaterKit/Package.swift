// swift-tools-version:6.0
import PackageDescription

// RestwaterCore is what uniffi generates from the Rust surface, RestwaterKit the state that the screens stand on.
// On Linux the C module links librestwater.so; on a device the XCFramework brings the symbols (ios/README.md).
let package = Package(
    name: "RestwaterKit",
    platforms: [.iOS(.v17), .macOS(.v14)],
    products: [.library(name: "RestwaterKit", targets: ["RestwaterKit"])],
    targets: [
        .systemLibrary(name: "restwaterFFI"),
        .target(
            name: "RestwaterCore", dependencies: ["restwaterFFI"],
            swiftSettings: [.swiftLanguageMode(.v5)]  // generated code is not clean under Swift 6's checks
        ),
        .target(name: "RestwaterKit", dependencies: ["RestwaterCore"]),
        .testTarget(name: "RestwaterKitTests", dependencies: ["RestwaterKit", "RestwaterCore"]),
    ]
)
