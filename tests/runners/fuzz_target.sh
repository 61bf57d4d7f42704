#!/usr/bin/env bash
# fuzz_target.sh SECONDS TARGET: one built target for SECONDS of its own processor time, so that the figure means the
# same on a busy machine. What it finds worth keeping goes to target/fuzz, not into the tree; an input that crashes it goes to
# tests/fuzz/crashers, where the ordinary tests replay it. Don't stop it meanwhile (SIGSTOP): the input that is being tried would
# be taken for one that hangs.
set -euo pipefail
cd "$(dirname "$0")/../.."
seconds=$1 target=$2
found=target/fuzz/$target log=target/logs/fuzz-$target.log crashers=tests/fuzz/crashers/$target
mkdir -p "$found" target/logs "$crashers"
"tests/fuzz/target/$(rustc -vV | sed -n 's/^host: //p')/release/$target" "$found" "tests/fuzz/corpus/$target" \
  -artifact_prefix="$crashers/" -rss_limit_mb=3000 -timeout=120 -print_final_stats=1 >"$log" 2>&1 &
pid=$!
used=0
while sleep 1 && used_now=$(ps -o cputimes= -p $pid); do
  used=$used_now
  if [ "$used" -ge "$seconds" ]; then
    kill -INT $pid
    break
  fi
done
status=0
wait $pid || status=$?
# Another target may be done with its own at the same moment.
rmdir --ignore-fail-on-non-empty "$crashers" tests/fuzz/crashers 2>/dev/null || true
runs=$(sed -n 's/^stat::number_of_executed_units: *//p' "$log")
covered=$(grep -o 'cov: [0-9]*' "$log" | tail -1)
# libFuzzer's own status for "interrupted" is 72 (or 0); every other one is a find or a target that did not run.
if [ "$used" -ge "$seconds" ] && { [ $status = 0 ] || [ $status = 72 ]; }; then
  echo "fuzz $target: ${runs:-?} inputs in $((used)) s of processor time, ${covered:-cov: ?}, no crash"
else
  tail -20 "$log" >&2
  echo "fuzz $target: status $status after $((used)) s of processor time; the log is $log"
  exit 1
fi
