# shellcheck shell=bash
# Rust: tests of the workspace, reference checks, the binaries of restwater-tests, benches and fuzzing.

rust_tests() {
  rust
  INSTA_UPDATE=no cargo test --workspace --no-fail-fast
}

reference_checks() { rust_bin reference tests/reference; }

# rust_bin NAME ARGUMENT...: a binary of restwater-tests, as the release profile builds it.
rust_bin() {
  local name=$1
  shift
  rust && cargo run --release --quiet -p restwater-tests --bin "$name" -- "$@"
}

# bench [NAME]: one bench or all; act and ui drive the real desktop screens, the others are core/benches.
bench() {
  case ${1:-} in
    act | ui) kotlin_bench "$1" ;;
    '') rust && cargo bench -p restwater-core && kotlin_bench act && kotlin_bench ui ;;
    *) rust && cargo bench -p restwater-core --bench "$1" ;;
  esac
}

# fuzz SECONDS: every target in tests/fuzz, so many seconds each. libFuzzer needs a nightly compiler.
fuzz() {
  rust
  rustup toolchain list | grep -q '^nightly' || try rustup toolchain install nightly --profile minimal
  cargo fuzz --version >/dev/null 2>&1 || try cargo install --quiet --locked cargo-fuzz
  local target
  for target in $(cargo +nightly fuzz list --fuzz-dir tests/fuzz); do
    say "fuzz $target for $1 s"
    cargo +nightly fuzz run --fuzz-dir tests/fuzz "$target" -- -max_total_time="$1"
  done
}
