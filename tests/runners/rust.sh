# shellcheck shell=bash
# Rust: tests of the workspace, reference checks, the binaries of restwater-tests, benches and fuzzing.

# Programs that some tests and benches hold our figures against, each with its Debian package.
PEERS=(ogrinfo:gdal-bin jq:jq sqlite3:sqlite3 Rscript:r-cran-survival chromium:chromium)

# peers FOLDER...: those that the sources there call.
peers() {
  local peer missing=()
  for peer in "${PEERS[@]}"; do
    ! grep -rqF "\"${peer%%:*}\"" --include='*.rs' "$@" || missing+=("${peer#*:}")
  done
  debs "${missing[@]}" || echo "dev: tests that need these say 'not run' and check less" >&2
}

DUCKDB=2.0.1

rust_tests() {
  rust
  peers core/src tests/src tests/tests
  INSTA_UPDATE=no cargo test --workspace --no-fail-fast
}

reference_checks() { rust_bin reference tests/reference; }

# pool [CASTS]: many anglers' exports pooled by DuckDB (docs/pooling.md), against the core.
pool() {
  local folder=target/pool python=target/pool/venv/bin/python
  if ! $python -c 'import duckdb' 2>/dev/null; then
    debs python3-venv
    python3 -m venv target/pool/venv
    try $python -m pip install --quiet "duckdb==$DUCKDB"
  fi
  rust_bin pooled "${1:-1000000}" $folder
  $python tests/pool/compare.py $folder
}

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
  peers core/benches tests/src
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
  if [ -e "core/benches/$1.rs" ] && [ -e "tests/bench/$1.py" ]; then
    # Runs the bench itself, then its peer in Python on the same work.
    tool python3 python3 && debs python3-venv
    python3 "tests/bench/$1.py"
  elif [ -e "core/benches/$1.rs" ]; then
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

# fuzz SECONDS: every target so many seconds each, by seeded mutation; then by libFuzzer, guided by coverage, where a
# nightly compiler and cargo-fuzz are there (tests/fuzz; the targets are the same functions).
fuzz() {
  rust_bin fuzz "$1"
  if ! rustup toolchain list | grep -q '^nightly' || ! cargo fuzz --version >/dev/null 2>&1; then
    echo "not run: libFuzzer (no nightly compiler with cargo-fuzz here)"
    return 0
  fi
  local target
  for target in $(cargo +nightly fuzz list --fuzz-dir tests/fuzz); do
    say "fuzz $target for $1 s"
    cargo +nightly fuzz run --fuzz-dir tests/fuzz "$target" -- -max_total_time="$1"
  done
}
