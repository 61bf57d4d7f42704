#!/usr/bin/env bash
# shellcheck disable=SC2034,SC2317 # names and functions that only the sourced scripts use
# The workbench's own tests, as `./dev check runners`: does it count what each runner prints, does a part that crashes fail, are
# the right parts chosen for a change, do the checks of the docs and of the shells find what is wrong?
set -euo pipefail
cd "$(dirname "$0")/../.."
TREE=$PWD
exec 3>/dev/null
for script in install count changed docs shells; do
  # shellcheck source=/dev/null
  . "tests/runners/$script.sh"
done
failures=0

# same WHAT EXPECTED ACTUAL
same() {
  [ "$2" = "$3" ] || { printf '%s\n  expected: %s\n  actual:   %s\n' "$@" && failures=$((failures + 1)); }
}

# counted KIND TEXT: the sum that one part gives whose runner prints TEXT and ends with the status $ends.
counted() {
  local kind=$1 text=$2
  passed=0 failed=0 summary=()
  prints() {
    printf '%s\n' "$text"
    return "${ends:-0}"
  }
  part runners-test "$kind" prints
  echo "$passed passed, $failed failed"
}

count_check() { awk '{last=$0} END{print (last=="ok") ? "1 0" : "0 1"}'; }

same "cargo: every binary's closing line is added" "5 passed, 2 failed" "$(ends=101 counted cargo $'test a ... FAILED\ntest result: FAILED. 2 passed; 2 failed; 0 ignored\ntest result: ok. 3 passed; 0 failed; 0 ignored')"
same "surefire: the sum, not the classes; skipped tests don't pass" "2 passed, 0 failed" "$(counted surefire $'[INFO] Tests run: 3, Failures: 0, Errors: 0, Skipped: 1, Time elapsed: 1 s -- in A\n[INFO] Tests run: 3, Failures: 0, Errors: 0, Skipped: 1')"
same "junit: all passed" "12 passed, 0 failed" "$(counted junit 'OK (12 tests)')"
same "junit: some failed" "10 passed, 2 failed" "$(ends=1 counted junit 'Tests run: 12,  Failures: 2')"
same "xctest" "7 passed, 2 failed" "$(ends=1 counted xctest $'\e[31mExecuted 9 tests, with 2 failures (0 unexpected) in 0.1 (0.1) seconds\e[0m')"
same "plain" "4 passed, 0 failed" "$(counted plain '4 passed, 0 failed')"
same "a check passes by its last line" "1 passed, 0 failed" "$(counted check ok)"
same "a check without it fails" "0 passed, 1 failed" "$(counted check 'no such file')"
same "a runner that crashed is a failure" "3 passed, 1 failed" "$(ends=139 counted cargo 'test result: ok. 3 passed; 0 failed; 0 ignored')"
same "a runner without a test is a failure" "0 passed, 1 failed" "$(counted cargo '')"
same "a part that can't run is not counted" "0 passed, 0 failed" "$(ends=$NOT_RUN counted cargo 'not run: no root')"

parts() { parts_of "$@" | paste -sd' '; }
same "a document touches no part" "" "$(parts docs/performance.md)"
same "the Android app" "android" "$(parts android/app/src/main/AndroidManifest.xml)"
same "the shared screens" "kotlin android" "$(parts android/ui/src/main/kotlin/A.kt)"
same "the Swift package" "swift" "$(parts ios/RestwaterKit/Sources/A.swift)"
same "the bindings" "rust kotlin android swift" "$(parts bindings/src/lib.rs restwater-bindings)"
same "the runners" "rust reference pool kotlin android swift" "$(parts tests/runners/count.sh)"

help() { echo "./dev run"; }
CHECKS=(docs)
page=target/logs/runners-test.md
mkdir -p target/logs
# shellcheck disable=SC2016 # backticks of Markdown
printf '# A page\n[here](#a-page) [gone](gone.md) [no heading](#gone) `./dev run` `./dev fly`\n' >$page
same "a link to nothing, a missing heading, an unknown command" 3 "$({ links_lead_somewhere $page; commands_exist $page; } | wc -l)"

shell=target/logs/runners-test.kt
# shellcheck disable=SC2016,SC1003 # dollars of Kotlin, backslashes of Swift
{
  printf '%s\n' '"${row.label}: ${row.value}"' '"$label: $sub"' '"${a.title}. ${a.says}"' 'listOf(a, b).joinToString(", ")' 'a + ": " + b'
  printf '%s\n' '"\(row.label): \(row.value)"' '"\(name(of: row)). \(says)"' '[a, b].joined(separator: ". ")'
} >$shell
same "every way in which a shell puts a text together" 8 "$(texts_joined_in $shell | wc -l)"
# shellcheck disable=SC2016,SC1003 # the same
printf '%s\n' 'row.spoken' '"row-${row.tag}"' '"…$it"' 'all.joinToString("\n")' '"step-\(i)"' 'all.joined(separator: " ")' '// "${a}: ${b}"' >$shell
same "tags, lines and sentences below each other are no such text" "" "$(texts_joined_in $shell)"

[ "$failures" = 0 ] && echo ok
