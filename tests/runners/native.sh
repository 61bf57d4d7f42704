# shellcheck shell=bash
# The native library and the Kotlin and Swift bindings that uniffi makes from it.

KOTLIN_BINDINGS=android/ui/src/generated/kotlin
SWIFT_BINDINGS=ios/RestwaterKit/Sources/RestwaterCore/generated
SWIFT_HEADER=ios/RestwaterKit/Sources/restwaterFFI/generated

# Where the library is that the desktop, Robolectric and Swift load: built by the dev profile, of the same crates that the
# Rust tests have compiled already.
LIBRARY=target/debug

# $LIBRARY/librestwater.so.
native_library() {
  rust || return 1
  step "build the core" cargo build -p restwater-bindings
}

# The library as a phone gets it, for benchmarks.
release_library() {
  rust || return 1
  LIBRARY=target/release
  step "build the core for release" cargo build --release -p restwater-bindings --no-default-features
}

# generate_bindings DIR: both languages, read from the library's own metadata (its symbols must still be there).
generate_bindings() {
  native_library
  cargo run --quiet -p restwater-bindgen -- $LIBRARY/librestwater.so "$1"
}

# Writes the committed copies again.
write_bindings() {
  rm -rf target/bindings
  generate_bindings target/bindings
  place_bindings target/bindings .
  git status --short "$KOTLIN_BINDINGS" "$SWIFT_BINDINGS" "$SWIFT_HEADER"
}

# place_bindings FROM TREE: puts generated files where the packages look for them.
place_bindings() {
  local folder
  for folder in "$KOTLIN_BINDINGS" "$SWIFT_BINDINGS" "$SWIFT_HEADER"; do
    rm -rf "${2:?}/${folder:?}"
    mkdir -p "$2/$folder"
  done
  cp -r "$1/kotlin/." "$2/$KOTLIN_BINDINGS/"
  cp "$1"/swift/*.swift "$2/$SWIFT_BINDINGS/"
  cp "$1"/swift/*.h "$2/$SWIFT_HEADER/"
}

# Fails when the committed bindings are not those of the Rust surface.
bindings_drift() {
  rm -rf target/bindings target/bindings-tree
  generate_bindings target/bindings
  place_bindings target/bindings target/bindings-tree
  local folder drift=0
  for folder in "$KOTLIN_BINDINGS" "$SWIFT_BINDINGS" "$SWIFT_HEADER"; do
    diff -rq "target/bindings-tree/$folder" "$folder" || drift=1
  done
  [ "$drift" = 0 ] || { echo "the bindings are not those of the Rust surface: run ./dev bindings and commit" && return 1; }
}
