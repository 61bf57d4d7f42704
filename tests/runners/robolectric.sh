# shellcheck shell=bash
# The Android app on the Android framework by Robolectric.
android_tests() {
  echo "not run: the Android app is not there yet"
  return "$NOT_RUN"
}
