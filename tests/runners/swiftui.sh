# shellcheck shell=bash
# The SwiftUI app, parsed and type-checked on Linux against the signatures of ios/lint (its README says what that is worth).

# In the order in which they import one another.
SIGNATURES=(Combine UIKit UniformTypeIdentifiers SwiftUI AppIntents ActivityKit WidgetKit UserNotifications AVFoundation CoreHaptics CoreLocation)

check_swiftui() {
  swift_root || return "$?"
  in_swift_root "set -euo pipefail; cd /src/restwater; $(declare -f module typed check_app); check_app ${SIGNATURES[*]}"
  echo ok
}

# What runs in the root.
check_app() {
  local out=target/lint name kit=ios/RestwaterKit/Sources
  mkdir -p $out
  find ios/App ios/lint -name '*.swift' -exec swiftc -parse {} +
  for name in "$@"; do module "$name" 6 ios/lint/"$name"/*.swift; done
  module RestwaterCore 5 $kit/RestwaterCore/generated/*.swift
  # shellcheck disable=SC2046 # our names contain no spaces
  module RestwaterKit 6 $(find $kit/RestwaterKit -name '*.swift')
  # shellcheck disable=SC2046
  typed Restwater $(find ios/App/Sources ios/App/Shared -name '*.swift')
  typed WaitActivity ios/App/WaitActivity/*.swift ios/App/Shared/*.swift
}

# module NAME LANGUAGE FILE...: made again when a source, or a module made before it, is newer.
module() {
  local name=$1 language=$2 made=target/lint/$1.swiftmodule
  shift 2
  if [ -e "$made" ] && [ -z "$(find "$@" -newer "$made" -print -quit)" ] && [ -z "${again:-}" ]; then return 0; fi
  again=yes
  swiftc -emit-module -wmo -parse-as-library -module-name "$name" -swift-version "$language" -suppress-warnings \
    -I target/lint -I ios/RestwaterKit/Sources/restwaterFFI -o "$made" "$@"
  touch "$made" # the compiler leaves one alone that came out the same
}

# typed NAME FILE...: a target of the app; a warning is an error.
typed() {
  local name=$1
  shift
  swiftc -typecheck -parse-as-library -module-name "$name" -swift-version 6 -warnings-as-errors \
    -I target/lint -I ios/RestwaterKit/Sources/restwaterFFI "$@"
  echo "$name: $# files type-checked"
}
