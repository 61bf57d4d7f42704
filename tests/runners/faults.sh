# shellcheck shell=bash
# A test of the tests: each fixed fault is put back, and the model or a test has to notice it.

# A patch in tests/faults begins with two lines, "Fault: what the angler would see" and "Caught by: COMMAND", the command
# being run in a tree with the fault in it; it has to fail with a test or a day that is broken, not to compile.
faults() {
  local scratch=target/faults/tree patch command log caught=0 missed=0
  rust || return 1
  mkdir -p target/faults
  [ -e $scratch ] || git worktree add --quiet --detach --force $scratch HEAD
  for patch in tests/faults/*.patch; do
    [ -e "$patch" ] || break
    log=$TREE/target/faults/$(basename "$patch" .patch).log
    command=$(sed -n 's/^Caught by: //p' "$patch")
    git -C $scratch checkout --quiet --force --detach "$(git rev-parse HEAD)"
    if ! git -C $scratch apply "$TREE/$patch"; then
      echo "missed: $patch does not apply any more"
      missed=$((missed + 1))
    elif fault_is_caught "$scratch" "$command" "$log"; then
      echo "caught: $(sed -n 's/^Fault: //p' "$patch")"
      caught=$((caught + 1))
    else
      echo "missed: $(sed -n 's/^Fault: //p' "$patch") ($command; $log)"
      missed=$((missed + 1))
    fi
  done
  git worktree remove --force $scratch
  echo "$caught caught, $missed missed"
  [ $missed = 0 ] && [ $caught -gt 0 ]
}

# A fault counts as caught by a test that failed or a day that broke; not by a tree that does not compile.
fault_is_caught() {
  local scratch=$1 command=$2 log=$3
  if (cd "$scratch" && CARGO_TARGET_DIR=${CARGO_TARGET_DIR:-$TREE/target} bash -c "$command") >"$log" 2>&1; then
    return 1
  fi
  grep -qE '^test result: FAILED|[1-9][0-9]* broken$' "$log"
}
