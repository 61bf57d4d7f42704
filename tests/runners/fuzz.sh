# shellcheck shell=bash
# Fuzzing: the targets of tests/src/fuzz, which define what counts as a fault, on arbitrary inputs.

CARGO_FUZZ=0.13.2

# fuzz SECONDS [TARGET...]: SECONDS of processor time for each target, guided by coverage (libFuzzer). That needs a nightly
# compiler; without one the same functions get inputs by seeded mutation of the corpus.
fuzz() {
  local seconds=$1 targets=("${@:2}")
  rust
  if ! rustup toolchain list | grep -q '^nightly'; then
    echo "dev: no nightly compiler for libFuzzer ('rustup toolchain install nightly' installs one): seeded mutation instead"
    rust_bin fuzz "$seconds" "${targets[@]}"
    return
  fi
  [ "$(cargo fuzz --version 2>/dev/null)" = "cargo-fuzz $CARGO_FUZZ" ] || try cargo install --quiet --locked "cargo-fuzz@$CARGO_FUZZ"
  say "building the fuzz targets with the address sanitizer; the first time takes some minutes"
  cargo +nightly fuzz build --fuzz-dir tests/fuzz
  [ ${#targets[@]} -gt 0 ] || mapfile -t targets < <(cargo +nightly fuzz list --fuzz-dir tests/fuzz)
  # One for each processor at a time, in the given order.
  printf '%s\n' "${targets[@]}" | xargs -P "$(nproc)" -I{} bash tests/runners/fuzz_target.sh "$seconds" {}
}
