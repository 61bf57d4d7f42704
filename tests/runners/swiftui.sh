# shellcheck shell=bash
# The SwiftUI app, compiled on Linux against the signatures of ios/lint (its README says what that is worth).

# In the order in which they import one another.
SIGNATURES=(Darwin os Combine UIKit UniformTypeIdentifiers SwiftUI AppIntents ActivityKit AlarmKit WidgetKit UserNotifications AVFoundation CoreHaptics CoreLocation)

check_swiftui() {
  if git grep -n 'try?' -- ios/App ios/RestwaterKit/Sources/RestwaterKit; then
    echo "^ an error that nobody hears of: let it go up, or Log.attempt" && return 1
  fi
  swift_root || return "$?"
  in_swift_root "set -euo pipefail; cd /src/restwater; $(declare -f module compiled check_app); check_app ${SIGNATURES[*]}"
  echo ok
}

# What runs in the root.
check_app() {
  local out=target/lint name kit=ios/RestwaterKit/Sources
  mkdir -p $out
  for name in "$@"; do module "$name" 6 ios/lint/"$name"/*.swift; done
  module RestwaterCore 5 $kit/RestwaterCore/generated/*.swift
  # With Darwin, os and Combine among the modules, this compiles the branches that an iPhone gets.
  # shellcheck disable=SC2046 # our names contain no spaces
  module RestwaterKit 6 $(find $kit/RestwaterKit -name '*.swift')
  # shellcheck disable=SC2046
  compiled Restwater $(find ios/App/Sources ios/App/Shared -name '*.swift') ios/lint/Claims.swift
  compiled WaitActivity ios/App/WaitActivity/*.swift ios/App/Shared/*.swift
  # The test of the screens needs Xcode's own XCTest: only its grammar is checked.
  swiftc -parse ios/App/UITests/*.swift
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

# compiled NAME FILE...: a target of the app, to the compiler's own intermediate language: there it finds data races
# and variables that are not set on every path. A warning is an error.
compiled() {
  local name=$1
  shift
  swiftc -emit-sil -wmo -parse-as-library -module-name "$name" -swift-version 6 -warnings-as-errors -D DEBUG \
    -I target/lint -I ios/RestwaterKit/Sources/restwaterFFI -o /dev/null "$@"
  echo "$name: $# files compiled"
}
