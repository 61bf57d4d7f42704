# shellcheck shell=bash
# Runs the parts of a test run one after the other, counts what each one's own runner printed, and sums it.

NOT_RUN=77 # a part that can't run here returns this after saying why
passed=0 failed=0 summary=()

# part NAME KIND COMMAND...: runs COMMAND, shows its output, counts it by the closing lines that KIND prints.
part() {
  local name=$1 kind=$2 status=0 start=$SECONDS p f log
  shift 2
  mkdir -p target/logs
  log=target/logs/$name.log
  say "$name"
  # The part stops at its first failing command, this run does not. (No `if`, no `&&` round it: bash would switch
  # `set -e` off inside.)
  set +e
  (
    set -e
    "$@"
  ) 2>&1 | tee "$log"
  status=${PIPESTATUS[0]}
  set -e
  if [ "$status" = "$NOT_RUN" ]; then
    summary+=("$(printf '%-10s %s' "$name" "$(grep '^not run: ' "$log" | tail -1)")")
    return 0
  fi
  read -r p f < <("count_$kind" <"$log")
  # A runner that failed without a failed test (it did not compile, it crashed) or ran no test counts as one failure.
  if [ "$f" = 0 ] && { [ "$status" != 0 ] || [ "$p" = 0 ]; }; then
    f=1
    echo "$name: failed as a whole (exit $status, $p tests passed)"
  fi
  note "$name" "$p" "$f" $((SECONDS - start))
}

# note NAME PASSED FAILED SECONDS: adds one line to the sum.
note() {
  passed=$((passed + $2)) failed=$((failed + $3))
  summary+=("$(printf '%-10s %5d passed %3d failed %5d s' "$@")")
}

# The sum of all parts; the last line is what CI reads. Fails when a part did.
total() {
  say "sum"
  printf '%s\n' "${summary[@]}"
  echo "$passed passed, $failed failed"
  [ "$failed" = 0 ]
}

# What each runner prints at its end, as "passed failed".
count_cargo() { awk '/^test result: /{p+=$4; f+=$6} END{print p+0, f+0}'; }
count_plain() { awk '/^[0-9]+ passed, [0-9]+ failed/{p=$1; f=$3} END{print p+0, f+0}'; }
# Surefire's own sum is the line without a class name and a time.
count_surefire() {
  sed -n 's/^.*Tests run: \([0-9]*\), Failures: \([0-9]*\), Errors: \([0-9]*\), Skipped: \([0-9]*\)$/\1 \2 \3 \4/p' |
    tail -1 | awk '{p=$1-$2-$3-$4; f=$2+$3} END{print p+0, f+0}'
}
count_junit() {
  awk '/^OK \([0-9]+ tests?\)/{gsub(/[^0-9]/,""); p=$0; f=0}
       /^Tests run: [0-9]+, +Failures: [0-9]+/{gsub(/[^0-9 ]/,""); f=$2; p=$1-$2} END{print p+0, f+0}'
}
count_xctest() {
  sed -n 's/^.*Executed \([0-9]*\) tests\{0,1\}, with \(\([0-9]*\) tests\{0,1\} skipped and \)\{0,1\}\([0-9]*\) failures\{0,1\}.*$/\1 0\3 \4/p' |
    tail -1 | awk '{p=$1-$2-$3; f=$3} END{print p+0, f+0}'
}
