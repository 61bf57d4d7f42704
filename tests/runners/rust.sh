# shellcheck shell=bash
# Rust: tests of the workspace, reference checks, the binaries of restwater-tests and the benches.

# Programs with which some tests and benchmarks compare our figures, each with its Debian package and the tests that need it.
# These are ignored by `cargo test`, and run here where the program is there.
PEERS=(
  ogrinfo:gdal-bin:swim_geojson_ogr
  jq:jq:op_file::jq_reads_it
  Rscript:r-cran-survival:r_agreement
  chromium:chromium:report_print
)

# peers FOLDER...: installs those that the sources in these folders call.
peers() {
  local peer program package missing=()
  for peer in "${PEERS[@]}"; do
    IFS=: read -r program package _ <<<"$peer"
    ! grep -rqF "\"$program\"" --include='*.rs' "$@" || missing+=("$package")
  done
  debs "${missing[@]}" || echo "dev: what needs these is not run" >&2
}

# peer_tests CHOICE...: of these crates, the ignored tests of the programs that are here; the others are named as not run.
peer_tests() {
  local peer program tests=()
  for peer in "${PEERS[@]}"; do
    program=${peer%%:*}
    if command -v "$program" >/dev/null; then
      tests+=("${peer#*:*:}")
    else
      echo "not run: ${peer#*:*:}, since $program is not installed"
    fi
  done
  # With the same crates as before: another choice would unite other features, and Cargo would compile the core once more.
  [ ${#tests[@]} = 0 ] || step "those with other programs" cargo test "$@" -- --ignored "${tests[@]}"
}

DUCKDB=2.0.1
PYSPARK=4.0.1

# rust_tests [CRATE...]: of the whole workspace, or of some crates.
rust_tests() {
  local crates=(--workspace)
  [ $# = 0 ] || crates=("${@/#/--package=}")
  rust
  peers core tests/src tests/tests
  rm -f "$BINARIES_BUILT"
  step "compile the Rust tests" cargo test "${crates[@]}" --no-run
  [ $# -gt 0 ] || touch "$BINARIES_BUILT"
  step "run them" env INSTA_UPDATE=no cargo test "${crates[@]}" --no-fail-fast
  case "${crates[*]}" in *--workspace* | *=restwater-tests*) peer_tests "${crates[@]}" ;; esac
}

# There after the tests of the whole workspace were compiled, and with them the binaries of restwater-tests.
BINARIES_BUILT=target/logs/binaries-built

reference_checks() { rust_bin reference tests/reference; }

# pool [CASTS]: many anglers' exports pooled by DuckDB, and a club's start fitted by it (docs/pooling.md), against the core.
# pool --spark [ANGLERS]: the club's start by DuckDB and by Spark's local cluster (by hand: PySpark is large).
pool() {
  local folder=target/pool python=target/pool/venv/bin/python
  if ! $python -c 'import duckdb' 2>/dev/null; then
    debs python3-venv
    python3 -m venv target/pool/venv
    try $python -m pip install --quiet "duckdb==$DUCKDB"
  fi
  if [ "${1:-}" = --spark ]; then
    $python -c 'import pyspark' 2>/dev/null || try $python -m pip install --quiet "pyspark==$PYSPARK"
    rust_bin pooled_club "${2:-100}" $folder/club
    $python tests/pool/club.py $folder/club
    $python tests/pool/club.py $folder/club --spark
    return
  fi
  rust_bin pooled "${1:-1000000}" $folder
  $python tests/pool/compare.py $folder
  rust_bin pooled_club 50 $folder/club
  $python tests/pool/club.py $folder/club --out $folder/club.restwater-club.json-seq
}

# rust_bin NAME ARGUMENT...: a binary of restwater-tests, built as the tests are: fast enough, and sums that overflow are found.
# Built alone it unites fewer features than the workspace, which compiles the core once more: after this run's Rust tests
# (rust_ran, in ../../dev) the one that was built with them is taken.
rust_bin() {
  local name=$1
  shift
  rust || return 1
  if [ -z "${rust_ran:-}" ] || [ ! -e "$BINARIES_BUILT" ]; then
    step "compile $name" cargo build -p restwater-tests --bin "$name"
  fi
  "target/debug/$name" "$@"
}

# sim ARGUMENT...: the simulated bank. It fishes for hours, so the waters and the screens that are read are optimised too.
sim() {
  local optimised=(--config 'profile.dev.package.restwater-tests.opt-level=2')
  optimised+=(--config 'profile.dev.package.restwater-screen.opt-level=2')
  rust || return 1
  step "compile sim" cargo build -p restwater-tests --bin sim "${optimised[@]}"
  cargo run --quiet -p restwater-tests --bin sim "${optimised[@]}" -- "$@"
}

# bench_bin NAME: a bench, as the release profile builds it.
bench_bin() { cargo run --release --quiet -p restwater-tests --bin "bench_$1"; }

# bench [NAME...]: some benches or all, and one table of all their rows at the end (DEVELOPERS.md, "Benchmarks"). Where they
# are: core/*/benches (divan, its goals in tests/bench), bench_* among the binaries of restwater-tests, tests/bench/*.sh, and
# the desktop app's Bench.kt (through the bindings, on the real screens).
bench() {
  rust
  local name names=("$@") status log rows=target/logs/bench.tsv
  [ $# -gt 0 ] || mapfile -t names < <(bench_names)
  peers core tests/src
  mkdir -p target/logs
  : >$rows
  for name in "${names[@]}"; do
    say "bench $name"
    log=target/logs/bench-$name.log
    set +e
    (
      set -e
      one_bench "$name"
    ) 2>&1 | sed -u 's/\x1b\[[0-9;]*m//g' | tee "$log" # Maven's colour codes come before a first row.
    status=${PIPESTATUS[0]}
    set -e
    grep -P '^bench\t' "$log" >>$rows || status="$status, without a row"
    # A missed goal is in its row; a benchmark that did not finish adds a missed row of its own.
    [ "$status" = 0 ] || printf 'bench\t%s\texit %s\t-\t-\truns to its end\tmissed\n' "$name" "$status" >>$rows
  done
  say "bench: $(uptime | sed 's/.*load/load/')"
  bench_table <$rows
}

# The rows as a table, and their count; fails when a goal was missed.
bench_table() {
  awk -F'\t' '
    function take(r, text,   i, part) {
      split(text, part, "\t")
      for (i = 2; i <= 7; i++) {
        cell[r, i] = part[i]
        if (length(part[i]) > wide[i]) wide[i] = length(part[i])
      }
    }
    BEGIN { take(0, "bench\tname\tours\tpeer or bare limit\tratio\tgoal\toutcome"); rows = 1 }
    $1 == "bench" { take(rows++, $0); count[$7]++ }
    END {
      for (r = 0; r < rows; r++) {
        line = ""
        for (i = 2; i <= 7; i++) line = line sprintf("%-" (wide[i] + 2) "s", cell[r, i])
        sub(/ +$/, "", line)
        print line
      }
      print count["held"] + 0 " held, " count["missed"] + 0 " missed"
      exit (count["missed"] > 0)
    }'
}

# All but `profiles`, which builds everything several times, and `speed`, which it runs for each build.
bench_names() {
  {
    find core/*/benches -name '*.rs' -printf '%f\n' | sed 's/\.rs$//'
    find tests/src/bin -name 'bench_*.rs' -printf '%f\n' | sed 's/^bench_//; s/\.rs$//'
    find tests/bench -name '*.sh' -printf '%f\n' | sed 's/\.sh$//'
    printf '%s\n' "${KOTLIN_BENCHES[@]}"
  } | grep -vxE 'profiles|speed' | sort
}

# The benchmarks of android/desktop/src/test/kotlin/app/restwater/desktop/Bench.kt.
KOTLIN_BENCHES=(act ffi ui)

one_bench() {
  if [ -e "tests/bench/$1.sh" ]; then
    bash "tests/bench/$1.sh"
  elif [ -e "core/$1/benches/$1.rs" ]; then
    # Runs the bench itself, then its peer in Python on the same work, and says what the goals are.
    tool python3 python3 && debs python3-venv
    python3 "tests/bench/$1.py"
  elif [ -e "tests/src/bin/bench_$1.rs" ]; then
    bench_bin "$1"
  elif [[ " ${KOTLIN_BENCHES[*]} " = *" $1 "* ]]; then
    kotlin_bench "$1"
  else
    echo "dev bench: no '$1'; the benchmarks are" "$(bench_names | paste -sd' ')" >&2
    return 2
  fi
}
