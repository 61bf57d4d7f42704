# shellcheck shell=bash
# Runs the parts of a test run one after the other, counts the tests that each part's own runner reports, and adds them up.
# The terminal gets one line for each step; everything else goes to a log, which is named when something fails.

NOT_RUN=77 # a part that can't run here returns this after saying why
passed=0 failed=0 summary=()

# The closing lines of every runner. They are repeated on the terminal, since they are what CI systems look for; those of
# Maven about a single class are left out, and so are Cargo's about a binary without a test.
CLOSING='^test result: |^[0-9]+ passed, [0-9]+ failed|Tests run: |^OK \([0-9]+ tests?\)|Executed [0-9]+ tests?|^not run: '
NOT_CLOSING='Time elapsed|^test result: ok\. 0 passed; 0 failed; 0 ignored'
# Where a log says what went wrong.
TROUBLE='^test .* FAILED$|panicked at|^error|^\[ERROR\]|^[0-9]+\) |: error: |failed as a whole'

# part NAME KIND COMMAND...: runs COMMAND with its output in target/logs/NAME.log, and counts the tests by the closing lines
# of a runner of this KIND.
part() {
  local name=$1 kind=$2 status=0 start=$SECONDS p f LOG
  shift 2
  mkdir -p target/logs
  LOG=target/logs/$name.log
  : >"$LOG"
  begin "$name"
  # The part stops at its first failing command, this run does not. (No `if`, no `&&` round it: bash would switch
  # `set -e` off inside.)
  set +e
  (
    set -e
    "$@"
  ) 2>&1 | without_colour >"$LOG"
  status=${PIPESTATUS[0]}
  set -e
  if [ "$status" = "$NOT_RUN" ]; then
    summary+=("$(printf '%-12s %s' "$name" "$(grep '^not run: ' "$LOG" | tail -1)")")
    finish "${summary[-1]}"
    return 0
  fi
  read -r p f < <("count_$kind" <"$LOG")
  # A runner that failed without a failed test (it did not compile, it crashed) or ran no test counts as one failure.
  if [ "$f" = 0 ] && { [ "$status" != 0 ] || [ "$p" = 0 ]; }; then
    f=1
    echo "$name: failed as a whole (exit $status, $p tests passed)" >>"$LOG"
  fi
  { grep -E "$CLOSING" "$LOG" | grep -vE "$NOT_CLOSING" || true; } | while IFS= read -r line; do finish "$line"; done
  [ "$f" = 0 ] || explain "$LOG"
  note "$name" "$p" "$f" $((SECONDS - start))
  finish "${summary[-1]}"
}

# step WORDS COMMAND...: one line with the time it took. Its output goes to the log of its part, or to target/logs/dev.log
# outside a part; there the end of the log is shown when the command fails.
step() {
  local words=$1 status=0 start=$SECONDS log=target/logs/dev.log
  shift
  begin "$words"
  set +e
  if [ -n "${LOG:-}" ]; then
    (
      set -e
      "$@"
    )
    status=$?
  else
    mkdir -p target/logs
    # shellcheck disable=SC2094 # LOG is only a name here
    (
      set -e
      LOG=$log "$@" # so that a step inside this one writes there too
    ) 2>&1 | without_colour >$log
    status=${PIPESTATUS[0]}
  fi
  set -e
  finish "$(printf '  %-44s %5d s' "$words" $((SECONDS - start)))"
  [ "$status" = 0 ] || [ -n "${LOG:-}" ] || explain $log
  return "$status"
}

# side_by_side FIRST SECOND: two commands that run parts, at the same time, for parts that keep one core busy each. What
# the second prints comes after the first has ended; the counts of both are added here.
side_by_side() {
  local folder second lane
  folder=$(mktemp -d)
  lane "$2" "$folder/second" 3>"$folder/lines" &
  second=$!
  # No `||` after these two: it would switch `set -e` off inside the parts.
  lane "$1" "$folder/first"
  wait "$second"
  cat "$folder/lines" >&3
  for lane in first second; do
    # shellcheck source=/dev/null # written by `lane`
    . "$folder/$lane"
  done
  rm -r "$folder"
}

# lane COMMAND FILE: runs it with counts of its own, and writes to FILE what adds its counts to those of the caller.
lane() {
  local passed=0 failed=0 summary=()
  $1
  {
    echo "passed=\$((passed + $passed)) failed=\$((failed + $failed))"
    printf 'summary+=(%q)\n' "${summary[@]}"
  } >"$2"
}

# What is under way: shown on a terminal only, where the next line replaces it.
begin() { [ ! -t 3 ] || printf '\r\033[K  %s ...' "$1" >&3; }

# finish LINE: a line that stays. File descriptor 3 is the terminal, also inside a part.
finish() {
  [ ! -t 3 ] || printf '\r\033[K' >&3
  printf '%s\n' "$1" >&3
}

# explain LOG: the lines that name a failure, the end of the log, and where the rest is.
explain() {
  {
    grep -nE "$TROUBLE" "$1" | head -40 || true
    echo "  ... the last lines of $1:"
    tail -30 "$1" | sed 's/^/  | /'
    echo "  The whole log is $1"
  } >&3
}

without_colour() { sed -u 's/\x1b\[[0-9;]*[a-zA-Z]//g; s/\r$//'; }

# note NAME PASSED FAILED SECONDS: adds one line to the sum.
note() {
  passed=$((passed + $2)) failed=$((failed + $3))
  summary+=("$(printf '%-12s %5d passed %3d failed %5d s' "$@")")
}

# The sum of all parts; the last line is what CI reads. Fails when a part did.
total() {
  say "sum"
  printf '%s\n' "${summary[@]}"
  echo "$passed passed, $failed failed"
  [ "$failed" = 0 ]
}

# What each runner prints at its end, as "passed failed". A check has no test runner: it passed when its last line is "ok".
count_check() { awk '{last=$0} END{print (last=="ok") ? "1 0" : "0 1"}'; }
count_cargo() { awk '/^test result: /{p+=$4; f+=$6} END{print p+0, f+0}'; }
count_plain() { awk '/^[0-9]+ passed, [0-9]+ failed/{p+=$1; f+=$3} END{print p+0, f+0}'; }
# Surefire's own sum is the line without a class name and a time.
count_surefire() {
  sed -n 's/^.*Tests run: \([0-9]*\), Failures: \([0-9]*\), Errors: \([0-9]*\), Skipped: \([0-9]*\)$/\1 \2 \3 \4/p' |
    tail -1 | awk '{p=$1-$2-$3-$4; f=$2+$3} END{print p+0, f+0}'
}
# JUnit's own runner, once or in several processes.
count_junit() {
  awk '/^OK \([0-9]+ tests?\)/{gsub(/[^0-9]/,""); p+=$0}
       /^Tests run: [0-9]+, +Failures: [0-9]+/{gsub(/[^0-9 ]/,""); f+=$2; p+=$1-$2} END{print p+0, f+0}'
}
count_xctest() {
  sed -n 's/^.*Executed \([0-9]*\) tests\{0,1\}, with \(\([0-9]*\) tests\{0,1\} skipped and \)\{0,1\}\([0-9]*\) failures\{0,1\}.*$/\1 0\3 \4/p' |
    tail -1 | awk '{p=$1-$2-$3; f=$3} END{print p+0, f+0}'
}
