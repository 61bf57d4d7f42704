// swift-tools-version:6.0
import PackageDescription

// The C module of the Rust library. On Linux it links librestwater.so; in Xcode it comes with the static library in the
// XCFramework that ios/build.sh makes, so that the app and this package's own tests link in the same way.
#if os(Linux)
let rust: Target = .systemLibrary(name: "restwaterFFI")
#else
let rust: Target = .binaryTarget(name: "restwaterFFI", path: "build/restwaterFFI.xcframework")
#endif

// RestwaterCore is what uniffi generates from the Rust surface; RestwaterKit is the state and layout of the screens.
let package = Package(
    name: "RestwaterKit",
    platforms: [.iOS(.v17), .macOS(.v14)],
    products: [.library(name: "RestwaterKit", targets: ["RestwaterKit"])],
    targets: [
        rust,
        .target(
            name: "RestwaterCore", dependencies: ["restwaterFFI"],
            swiftSettings: [.swiftLanguageMode(.v5)]  // generated code is not clean under Swift 6's checks
        ),
        .target(name: "RestwaterKit", dependencies: ["RestwaterCore"]),
        .testTarget(name: "RestwaterKitTests", dependencies: ["RestwaterKit", "RestwaterCore"]),
    ]
)
