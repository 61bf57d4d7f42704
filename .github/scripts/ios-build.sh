#!/usr/bin/env bash
# On a Mac: builds the Rust library as an XCFramework (ios/build.sh), then the app for a device without signing it. With
# `release` the app is archived and zipped into target/release-files, unsigned; that needs the iOS SDK 26.1.
set -euo pipefail
# shellcheck source=.github/scripts/lib.sh
. "$(dirname "$0")/lib.sh"
about "$@"
needs xcodebuild "this needs a Mac with Xcode 26.1 or newer"
OLDEST_SDK=26.1
rust_of_the_tree
ios/build.sh
common=(-project ios/Restwater.xcodeproj -scheme Restwater -destination generic/platform=iOS
  -derivedDataPath target/xcode CODE_SIGNING_ALLOWED=NO CODE_SIGNING_REQUIRED=NO)
case ${1:-build} in
  build) xcodebuild build -configuration Debug "${common[@]}" ;;
  release)
    # Below it AlarmKit would be left out, and the App Store takes nothing built with an SDK below 26.
    sdk=$(xcrun --sdk iphoneos --show-sdk-version)
    [ "$(printf '%s\n' "$OLDEST_SDK" "$sdk" | sort -V | head -1)" = "$OLDEST_SDK" ] ||
      { echo "ios-build.sh: a release needs the iOS SDK $OLDEST_SDK or newer; this Xcode has $sdk" >&2 && exit 1; }
    version=$(sed -n 's/^version = "\(.*\)"/\1/p' Cargo.toml)
    xcodebuild archive -configuration Release -archivePath target/xcode/Restwater.xcarchive "${common[@]}"
    mkdir -p target/release-files
    (cd target/xcode && zip -qry "$TREE/target/release-files/restwater-$version-ios-unsigned.xcarchive.zip" Restwater.xcarchive)
    ;;
  *) echo "usage: ios-build.sh [release]" >&2 && exit 2 ;;
esac
