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

# bench [NAME]: one bench or all. Where they are: core/benches (divan), bench_* among the binaries of restwater-tests
# (beside a peer in the same run) and the desktop app's Bench.kt (through the bindings, on the real screens).
# A bench that has goals ends with 'N held, N missed'; those lines are summed, and a missed one fails the run.
bench() {
  rust
  local name names=("$@") log held=0 missed=0 h m
  [ $# -gt 0 ] || mapfile -t names < <(bench_names)
  mkdir -p target/logs
  for name in "${names[@]}"; do
    say "bench $name"
    log=target/logs/bench-$name.log
    one_bench "$name" 2>&1 | tee "$log"
    read -r h m < <(awk '/^[0-9]+ held, [0-9]+ missed$/{h=$1; m=$3} END{print h+0, m+0}' "$log")
    held=$((held + h)) missed=$((missed + m))
  done
  echo "$held held, $missed missed"
  [ "$missed" = 0 ]
}

bench_names() {
  find core/benches -name '*.rs' -printf '%f\n' | sed 's/\.rs$//' | sort
  find tests/src/bin -name 'bench_*.rs' -printf '%f\n' | sed 's/^bench_//; s/\.rs$//' | sort
  [ ! -e "$DESKTOP/src/main/kotlin/app/restwater/desktop/Bench.kt" ] || printf 'act\nui\n'
}

one_bench() {
  if [ -e "core/benches/$1.rs" ]; then
    cargo bench --quiet -p restwater-core --bench "$1"
  elif [ -e "tests/src/bin/bench_$1.rs" ]; then
    rust_bin "bench_$1"
  elif [ "$1" = act ] || [ "$1" = ui ]; then
    kotlin_bench "$1"
  else
    echo "dev bench: no '$1'; there are" "$(bench_names | paste -sd' ')" >&2
    return 2
  fi
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
