#!/usr/bin/env bash
# On a Mac, after ios/build.sh: runs the UI test of ios/App/UITests in a simulator. It taps START and CAST and reads the clock.
# The simulator is the newest iPhone that this Xcode has; RESTWATER_SIMULATOR names another.
set -euo pipefail
# shellcheck source=.github/scripts/lib.sh
. "$(dirname "$0")/lib.sh"
about "$@"
needs xcrun "this needs a Mac with Xcode 26.1 or newer"
[ -d ios/RestwaterKit/build/restwaterFFI.xcframework ] || ios/build.sh
phone=${RESTWATER_SIMULATOR:-$(xcrun simctl list devices available | sed -n 's/^ *\(iPhone [^(]*[^ (]\) (.*/\1/p' | tail -1)}
[ -n "$phone" ] || { echo "ios-ui-test.sh: no iPhone simulator is installed" >&2 && exit 1; }
echo "simulator: $phone"
rm -rf target/logs/ios-ui-test.xcresult
mkdir -p target/logs
xcodebuild test -project ios/Restwater.xcodeproj -scheme Restwater -destination "platform=iOS Simulator,name=$phone" \
  -derivedDataPath target/xcode -resultBundlePath target/logs/ios-ui-test.xcresult CODE_SIGNING_ALLOWED=NO
