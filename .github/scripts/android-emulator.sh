#!/usr/bin/env bash
# Makes an Android emulator, starts it without a window, and runs the instrumented tests of android/app/src/androidTest on it:
# they tap START and CAST and read the clock. The emulator is ended again at the end. It needs /dev/kvm.
set -euo pipefail
# shellcheck source=.github/scripts/lib.sh
. "$(dirname "$0")/lib.sh"
about "$@"
IMAGE="system-images;android-34;default;x86_64"
: "${ANDROID_HOME:?is not set; .github/scripts/android-sdk.sh prepares an SDK}"
PATH=$PATH:$ANDROID_HOME/cmdline-tools/latest/bin:$ANDROID_HOME/emulator:$ANDROID_HOME/platform-tools
needs sdkmanager "install the SDK's command-line tools"
# Hosted runners have KVM, but not for their own user; nobody's permissions are changed on a machine of yours.
if [ -n "${CI:-}" ] && [ ! -w /dev/kvm ]; then sudo chmod 666 /dev/kvm; fi
[ -w /dev/kvm ] || { echo "android-emulator.sh: /dev/kvm is not writable" >&2 && exit 1; }
sdkmanager --install emulator platform-tools "$IMAGE"
echo no | avdmanager create avd --force --name restwater --package "$IMAGE" --device pixel_6
mkdir -p target/logs
emulator -avd restwater -no-window -no-audio -no-boot-anim -no-snapshot -gpu swiftshader_indirect >target/logs/emulator.log 2>&1 &
emulator=$!
trap 'kill $emulator 2>/dev/null || true' EXIT
# shellcheck disable=SC2016 # expanded on the phone
timeout 600 adb wait-for-device shell 'while [ "$(getprop sys.boot_completed)" != 1 ]; do sleep 2; done'
for scale in window_animation_scale transition_animation_scale animator_duration_scale; do
  adb shell settings put global $scale 0
done
adb shell input keyevent 82 # unlocks
gradle_run -Pandroid.injected.build.abi=x86_64 :app:connectedDebugAndroidTest
