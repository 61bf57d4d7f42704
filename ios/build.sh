#!/usr/bin/env bash
# On a Mac with Xcode 26.1 or newer and rustup: the Rust library as the XCFramework that RestwaterKit takes, and the signing
# of this Mac. Not run here: Linux has no Apple SDK.
#   ios/build.sh                     ios/RestwaterKit/build/restwaterFFI.xcframework
#   RESTWATER_TEAM=ABCDE12345 RESTWATER_BUNDLE_ID=org.example.restwater ios/build.sh
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

TARGETS=(aarch64-apple-ios aarch64-apple-ios-sim x86_64-apple-ios)
KIT=ios/RestwaterKit
OUT=$KIT/build
export IPHONEOS_DEPLOYMENT_TARGET=17.0

main() {
  command -v xcodebuild >/dev/null || { echo "ios/build.sh needs a Mac with Xcode" >&2 && exit 1; }
  libraries
  framework
  signing
}

# The static library alone: a dynamic one would ask for a linker set up for each target, and nobody takes it.
libraries() {
  rustup target add "${TARGETS[@]}"
  local target
  for target in "${TARGETS[@]}"; do
    cargo rustc --release --locked -p restwater-bindings --no-default-features --lib --target "$target" --crate-type staticlib
  done
}

framework() {
  rm -rf "$OUT"
  mkdir -p "$OUT/simulator" "$OUT/headers"
  # One library for the simulator on both kinds of Mac.
  lipo -create -output "$OUT/simulator/librestwater.a" \
    target/aarch64-apple-ios-sim/release/librestwater.a target/x86_64-apple-ios/release/librestwater.a
  cp $KIT/Sources/restwaterFFI/generated/*.h "$OUT/headers/"
  # The same module as the package has on Linux, with the headers beside it and nothing to link by name.
  sed -e 's|"generated/|"|' -e '/^ *link /d' $KIT/Sources/restwaterFFI/module.modulemap >"$OUT/headers/module.modulemap"
  xcodebuild -create-xcframework -output "$KIT/build/restwaterFFI.xcframework" \
    -library target/aarch64-apple-ios/release/librestwater.a -headers "$OUT/headers" \
    -library "$OUT/simulator/librestwater.a" -headers "$OUT/headers"
}

# Where the environment names a team or an id, they go where the project reads them; else what is there stays.
signing() {
  [ -n "${RESTWATER_TEAM:-}${RESTWATER_BUNDLE_ID:-}" ] || return 0
  {
    [ -z "${RESTWATER_TEAM:-}" ] || echo "RESTWATER_TEAM = $RESTWATER_TEAM"
    [ -z "${RESTWATER_BUNDLE_ID:-}" ] || echo "RESTWATER_BUNDLE_ID = $RESTWATER_BUNDLE_ID"
  } >ios/App/Config/Local.xcconfig
}

main
