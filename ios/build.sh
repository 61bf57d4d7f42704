#!/usr/bin/env bash
# On a Mac with Xcode 16 or newer, rustup and XcodeGen: the Rust library as an XCFramework for phone and simulator, then
# the Xcode project. Not run here: Linux has no Apple SDK.   ios/build.sh [framework|project]
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

TARGETS=(aarch64-apple-ios aarch64-apple-ios-sim x86_64-apple-ios)
BUILD=ios/build
export IPHONEOS_DEPLOYMENT_TARGET=17.0

framework() {
  rustup target add "${TARGETS[@]}"
  local target
  for target in "${TARGETS[@]}"; do
    cargo build --release --locked -p restwater-bindings --target "$target"
  done
  rm -rf $BUILD && mkdir -p $BUILD/simulator
  # One library for the simulator on both kinds of Mac.
  lipo -create -output $BUILD/simulator/librestwater.a \
    target/aarch64-apple-ios-sim/release/librestwater.a target/x86_64-apple-ios/release/librestwater.a
  # Without headers: the header and its module map are RestwaterKit's own target restwaterFFI.
  xcodebuild -create-xcframework -output $BUILD/Restwater.xcframework \
    -library target/aarch64-apple-ios/release/librestwater.a \
    -library $BUILD/simulator/librestwater.a
}

project() { (cd ios/App && xcodegen generate); }

case ${1:-all} in
  framework) framework ;;
  project) project ;;
  all)
    framework
    project
    ;;
  *)
    echo "usage: ios/build.sh [framework|project]" >&2
    exit 2
    ;;
esac
