#!/usr/bin/env bash
# Prepares a machine that has the Android SDK's command-line tools (ANDROID_HOME) for the Gradle build in android/: accepts the
# licences, installs the NDK that android/gradle/libs.versions.toml names, Rust's standard library for the three kinds of
# phone, and cargo-ndk. Gradle fetches the platform and the build tools by itself.
set -euo pipefail
# shellcheck source=.github/scripts/lib.sh
. "$(dirname "$0")/lib.sh"
about "$@"
CARGO_NDK=4.1.2
: "${ANDROID_HOME:?is not set; it names the folder of the Android SDK}"
PATH=$PATH:$ANDROID_HOME/cmdline-tools/latest/bin
needs sdkmanager "install the SDK's command-line tools"
rust_of_the_tree
ndk=$(sed -n 's/^ndk = "\(.*\)"/\1/p' android/gradle/libs.versions.toml)
# `yes` ends with an error when sdkmanager stops reading; only sdkmanager's own status counts.
set +o pipefail
yes | sdkmanager --licenses >/dev/null
set -o pipefail
sdkmanager --install "ndk;$ndk" "platform-tools"
rustup target add aarch64-linux-android armv7-linux-androideabi x86_64-linux-android
[ "$(cargo ndk --version 2>/dev/null)" = "cargo-ndk $CARGO_NDK" ] || cargo install --locked "cargo-ndk@$CARGO_NDK"
