#!/usr/bin/env bash
# On a Mac: builds the Rust library as an XCFramework (ios/build.sh), then the app for a device without signing it. With
# `release` the app is archived and zipped into target/release-files, unsigned.
set -euo pipefail
# shellcheck source=.github/scripts/lib.sh
. "$(dirname "$0")/lib.sh"
about "$@"
needs xcodebuild "this needs a Mac with Xcode 16 or newer"
rust_of_the_tree
ios/build.sh
common=(-project ios/Restwater.xcodeproj -scheme Restwater -destination generic/platform=iOS
  -derivedDataPath target/xcode CODE_SIGNING_ALLOWED=NO CODE_SIGNING_REQUIRED=NO)
case ${1:-build} in
  build) xcodebuild build -configuration Debug "${common[@]}" ;;
  release)
    version=$(sed -n 's/^version = "\(.*\)"/\1/p' Cargo.toml)
    xcodebuild archive -configuration Release -archivePath target/xcode/Restwater.xcarchive "${common[@]}"
    mkdir -p target/release-files
    (cd target/xcode && zip -qry "$TREE/target/release-files/restwater-$version-ios-unsigned.xcarchive.zip" Restwater.xcarchive)
    ;;
  *) echo "usage: ios-build.sh [release]" >&2 && exit 2 ;;
esac
