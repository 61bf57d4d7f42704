#!/usr/bin/env bash
# Builds the Android app with Gradle. With `apk`: the debug APK and that of the instrumented tests. With `tests`: the unit tests
# and lint, both even if one fails. Without an argument: all four. With `release`: the release APK and the bundle for Google
# Play, unsigned, copied to target/release-files.
set -euo pipefail
# shellcheck source=.github/scripts/lib.sh
. "$(dirname "$0")/lib.sh"
about "$@"
: "${ANDROID_HOME:?is not set; .github/scripts/android-sdk.sh prepares an SDK}"
apks() { gradle_run :app:assembleDebug :app:assembleDebugAndroidTest; }
tests() { gradle_run --continue :app:testDebugUnitTest :app:lintDebug; }
case ${1:-debug} in
  apk) apks ;;
  tests) tests ;;
  debug)
    apks
    tests
    ;;
  release)
    gradle_run :app:assembleRelease :app:bundleRelease
    version=$(sed -n 's/.*versionName = "\(.*\)".*/\1/p' android/app/build.gradle.kts)
    mkdir -p target/release-files
    cp target/gradle/app/outputs/apk/release/*.apk "target/release-files/restwater-$version-unsigned.apk"
    cp target/gradle/app/outputs/bundle/release/*.aab "target/release-files/restwater-$version-unsigned.aab"
    ;;
  *) echo "usage: android-build.sh [apk|tests|release]" >&2 && exit 2 ;;
esac
