#!/usr/bin/env bash
# Instructions of what a phone does most, counted by Callgrind through gungraun, beside tests/bench/counts.tsv: a row for each,
# missed above 3 % more. `RESTWATER_KEEP=1 ./dev bench count` rewrites the table.
set -euo pipefail
cd "$(dirname "$0")/../.."
TREE=$PWD
# shellcheck source=tests/runners/install.sh
. tests/runners/install.sh
# shellcheck source=tests/runners/count.sh
. tests/runners/count.sh

# The harness and the program that runs it have to be of one version.
GUNGRAUN=$(sed -n 's/^gungraun = "=\(.*\)"/\1/p' Cargo.toml)
RUNNER=$TREE/target/tools/gungraun-$GUNGRAUN

debs valgrind
[ -x "$RUNNER/bin/gungraun-runner" ] ||
  step "install gungraun-runner $GUNGRAUN" try cargo install --quiet --locked gungraun-runner --version "$GUNGRAUN" --root "$RUNNER"
mkdir -p target/logs
GUNGRAUN_RUNNER=$RUNNER/bin/gungraun-runner cargo bench --quiet -p restwater-counted --features count --bench counted -- \
  --output-format=json >target/logs/counts.json
python3 tests/bench/count.py target/logs/counts.json
