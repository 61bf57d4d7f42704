#!/usr/bin/env bash
# shellcheck disable=SC2034,SC2317 # names and functions that only the sourced scripts use
# Tests of the runners themselves, as `./dev check runners`: does it count what each runner prints, does a part that crashes
# fail, are the right parts chosen for a change, do the checks of the docs and of the shells find what is wrong?
set -euo pipefail
cd "$(dirname "$0")/../.."
TREE=$PWD
exec 3>/dev/null
for script in install count rust changed docs android_workflow check shells; do
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

same "cargo: every binary's closing line is added" "5 passed, 2 failed" "$(ends=101 counted cargo $'test a ... FAILED\ntest result: FAILED. 2 passed; 2 failed; 0 ignored\ntest result: ok. 3 passed; 0 failed; 0 ignored')"
same "surefire: the sum, not the classes; skipped tests don't pass" "2 passed, 0 failed" "$(counted surefire $'[INFO] Tests run: 3, Failures: 0, Errors: 0, Skipped: 1, Time elapsed: 1 s -- in A\n[INFO] Tests run: 3, Failures: 0, Errors: 0, Skipped: 1')"
same "junit: all passed" "12 passed, 0 failed" "$(counted junit 'OK (12 tests)')"
same "junit: some failed" "10 passed, 2 failed" "$(ends=1 counted junit 'Tests run: 12,  Failures: 2')"
same "junit: two processes are added" "19 passed, 1 failed" "$(ends=1 counted junit $'Tests run: 12,  Failures: 1\nOK (8 tests)')"
same "xctest" "7 passed, 2 failed" "$(ends=1 counted xctest $'\e[31mExecuted 9 tests, with 2 failures (0 unexpected) in 0.1 (0.1) seconds\e[0m')"
same "plain" "4 passed, 0 failed" "$(counted plain '4 passed, 0 failed')"
same "a check passes by its last line" "1 passed, 0 failed" "$(counted check ok)"
same "a check without it fails" "0 passed, 1 failed" "$(counted check 'no such file')"
same "a runner that crashed is a failure" "3 passed, 1 failed" "$(ends=139 counted cargo 'test result: ok. 3 passed; 0 failed; 0 ignored')"
same "a runner without a test is a failure" "0 passed, 1 failed" "$(counted cargo '')"
same "a part that can't run is not counted" "0 passed, 0 failed" "$(ends=$NOT_RUN counted cargo 'not run: no root')"
PEERS=(no-such-program:no-deb:a_test)
same "a comparison whose program is missing is named" "not run: a_test, since no-such-program is not installed" "$(peer_tests)"
same "and its line is among those that the terminal shows" 1 "$(peer_tests | grep -cE "$CLOSING" || true)"

# Two parts at the same time: all counts are added, a failed command ends its part, and the second's lines come last.
fails() { false; echo '9 passed, 0 failed'; }
slow() { sleep 0.2; echo '2 passed, 1 failed'; }
quick() { echo '3 passed, 0 failed'; }
both() {
  passed=10 failed=20 summary=(earlier)
  side_by_side "part ${1}-test plain $1" "part ${2}-test plain $2"
  echo "$passed passed, $failed failed: ${summary[*]%% *}"
}
same "two parts side by side" "15 passed, 21 failed: earlier slow-test quick-test" "$(both slow quick)"
same "a part that stops at its first failing command, side by side" "13 passed, 21 failed: earlier quick-test fails-test" "$(both quick fails)"
same "what the second prints comes after the first" "slow-test quick-test" \
  "$({ both slow quick >/dev/null; } 3>&1 | sed -n 's/ .*passed .*failed .*s$//p' | paste -sd' ')"

parts() { parts_of "$@" | paste -sd' '; }
same "most documents touch no part" "" "$(parts docs/performance.md)"
same "a document whose taps are tested" "kotlin" "$(parts docs/first-cast.md)"
same "a document whose SQL is run" "pool" "$(parts docs/pooling.md)"
same "the typeface" "kotlin android swift" "$(parts core/face/res/font/restwater.ttf)"
same "the libraries of the Android build" "android" "$(parts tests/runners/apk_libraries.sh)"
crate_folders() { printf '%s\n' "restwater-screen core/screen" "restwater-swim core/swim"; }
same "a word belongs to the crate that is compiled with it" "restwater-screen" "$(crates_of <<<core/locales/de-DE/bank.ftl)"
same "a source belongs to the crate of its folder" "restwater-swim" "$(crates_of <<<core/swim/src/lib.rs)"
same "a document belongs to no crate" "" "$(crates_of <<<docs/performance.md)"
same "the Android app" "android" "$(parts android/app/src/main/AndroidManifest.xml)"
same "the shared screens" "kotlin android" "$(parts android/ui/src/main/kotlin/A.kt)"
same "the Swift package" "swift" "$(parts ios/RestwaterKit/Sources/A.swift)"
same "the bindings" "rust kotlin android swift" "$(parts bindings/src/lib.rs restwater-bindings)"
same "the runners" "rust reference pool kotlin android swift" "$(parts tests/runners/count.sh)"

script=$(mktemp)
printf '%s\n' 'IMAGE="system-images;android-34;default;x86_64"' 'gradle_run :app:connectedDebugAndroidTest' >"$script"
same "an emulator whose APK has no library for it" "$script: the APK would hold no library for the emulator's x86_64" "$(emulator_abi "$script" android/app/build.gradle.kts || true)"
echo 'gradle_run -Pandroid.injected.build.abi=x86_64 :app:connectedDebugAndroidTest' >>"$script"
same "an emulator whose APK has it" "" "$(emulator_abi "$script" android/app/build.gradle.kts)"

# What an Android job lacks is said; a job that has it passes. job JAVA GRADLE CONDITION
job() {
  printf '%s\n' "java-version: \"$1\"" "gradle/actions/setup-gradle@1" "gradle-version: \"$2\"" '- id: apk' 'run: .github/scripts/android-emulator.sh' "$3" >"$script"
}
wrapper=$(mktemp)
echo 'distributionUrl=https\://services.gradle.org/distributions/gradle-9.3.1-bin.zip' >"$wrapper"
job 17 9.2 'uses: another'
same "Java 17 for API 36" "$script: tests run on API 36, which needs Java 21, and it sets up Java 17" "$(java_of_tests android/app/src/test "$script" || true)"
same "the machine's own Gradle" "$script: 0 of 1 jobs with Gradle name the wrapper's 9.3.1" "$(gradle_of_wrapper "$wrapper" "$script" || true)"
same "an emulator that unit tests keep from running" "$script: the emulator waits for the unit tests" "$(emulator_comes_to_run "$script" || true)"
same "tests with Gradle's 512 MB" "$script gives the tests no memory of their own (maxHeapSize)" "$(heap_of_tests "$script" || true)"
# shellcheck disable=SC2016 # an expression of the workflow
job 21 9.3.1 "if: \${{ !cancelled() && steps.apk.outcome == 'success' }}"
same "a job with all of it" "" "$(java_of_tests android/app/src/test "$script" && gradle_of_wrapper "$wrapper" "$script" && emulator_comes_to_run "$script")"
kotlin=$(mktemp -d)
echo 'LocationManagerCompat.getCurrentLocation(manager)' >"$kotlin"/A.kt
same "a call without its permission" "1" "$(permission_lint "$kotlin" | grep -c 'without its permission')"
sed -i '1i @SuppressLint("MissingPermission")' "$kotlin"/A.kt
same "a call with it" "" "$(permission_lint "$kotlin")"
rm -r "$script" "$wrapper" "$kotlin"

help() { echo "./dev run"; }
CHECKS=(docs)
page=target/logs/runners-test.md
mkdir -p target/logs
# shellcheck disable=SC2016 # backticks of Markdown
printf '# A page\n[here](#a-page) [gone](gone.md) [no heading](#gone) `./dev run` `./dev fly` `bank/keys.rs` `pad/gone.rs`\n' >$page
same "a link to nothing, a missing heading, an unknown command, a file that is not there" 4 "$({ links_lead_somewhere $page; commands_exist $page; files_exist $page; } | wc -l)"

# Checks that looked at nothing, or whose tools failed, must not pass.
# checked COMMAND: whether a check's last line says that it passed.
checked() { (set +e; "$@" 2>/dev/null) | count_check; }
git() { [ "$1" != ls-files ] || return 0; command git "$@"; }
same "a check of no document" "0 1" "$(checked check_docs)"
unset -f git
rust() { :; }
cargo() { return 101; }
same "a network check without cargo's answer" "0 1" "$(checked check_network)"
cargo() { echo restwater-log; }
same "a network check of another tree" "0 1" "$(checked check_network)"
cargo() { printf '%s\n' restwater-bindings restwater-log; }
git() { return 128; }
same "a network check without git's answer" "0 1" "$(checked check_network)"
git() { return 1; }
same "a network check that finds nothing" "1 0" "$(checked check_network)"
git() { echo "core/a.rs:1:std::net"; }
same "a network check that finds a socket" "0 1" "$(checked check_network)"
unset -f git cargo
CATALOGUE=/dev/null KOTLIN=1 DESKTOP=target/logs
printf '<kotlin>1</kotlin>\n' >target/logs/pom.xml
same "a check of no version" "0 1" "$(checked check_versions)"
rm target/logs/pom.xml

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

# shellcheck disable=SC2016 # braces of Rust
{
  printf '%s\n' 'format!("{}. {}", a.title, a.says)' 'format!("{said}, {more}")' 'write!(out, "{label}: {value}")' 'parts.join(", ")'
  printf '%s\n' 'out.push_str("; ");' 'format!(' '    "{a}. {b}",' ')'
} >$shell
same "every way in which the core puts a text together by hand" 6 "$(texts_joined_in_rust $shell | wc -l)"
{
  printf '%s\n' 'words.listed(&parts)' 'format!("row-{tag}")' 'lines.join("\n")' '// "{a}: {b}"' '#[error("line {line}: {why}")]'
  printf '%s\n' '#[cfg(test)]' 'mod tests;' 'format!("{n} kg")' '#[cfg(test)]' 'mod tests {' 'format!("{a}, {b}")'
} >$shell
same "tags, errors and tests are no such text" "" "$(texts_joined_in_rust $shell)"

[ "$failures" = 0 ] && echo ok
