#!/usr/bin/env bash
# How the release profile was chosen: the library built under each candidate, its size beside the empty library of the same
# profile, and the time of a posterior in it. Everything is rebuilt for each profile, so this runs only when it is named:
#   ./dev bench profiles
# PROFILES="3:fat s:fat" takes fewer; opt-level and lto vary, always with one codegen unit and unwinding (uniffi needs it).
set -euo pipefail
cd "$(dirname "$0")/../.."

mb() { awk -v b="$1" 'BEGIN { printf "%.2f MB", b / 1e6 }'; }

for candidate in ${PROFILES:-3:thin 3:fat 2:fat s:thin s:fat z:fat}; do
  export CARGO_PROFILE_RELEASE_OPT_LEVEL=${candidate%:*} CARGO_PROFILE_RELEASE_LTO=${candidate#*:}
  export CARGO_TARGET_DIR=target/profiles/${candidate%:*}-${candidate#*:}
  cargo build --release --quiet --no-default-features -p restwater-bindings -p restwater-empty
  for name in restwater restwater_empty; do
    strip --strip-unneeded -o "$CARGO_TARGET_DIR/$name.stripped.so" "$CARGO_TARGET_DIR/release/lib$name.so"
  done
  ours=$(stat -c %s "$CARGO_TARGET_DIR/restwater.stripped.so")
  empty=$(stat -c %s "$CARGO_TARGET_DIR/restwater_empty.stripped.so")
  printf 'bench\tprofile: opt-level %s, lto %s, size\t%s\t%s empty library\t%s\t-\tnoted\n' "${candidate%:*}" \
    "${candidate#*:}" "$(mb "$ours")" "$(mb "$empty")" "$(awk -v a="$ours" -v b="$empty" 'BEGIN { printf "%.2f", a / b }')"
  cargo run --release --quiet -p restwater-tests --bin bench_speed -- "opt-level ${candidate%:*}, lto ${candidate#*:}"
done
