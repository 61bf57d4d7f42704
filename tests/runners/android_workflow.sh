# shellcheck shell=bash
# What the workflows' Android jobs need from what is around them; nothing here runs Gradle, so it is compared instead.

# From this API level on Robolectric's frameworks need Java 21 (DefaultSdkProvider of Robolectric 4.17).
JAVA_21_FROM_API=36

# java_of_tests TESTS WORKFLOW: the JDK that the workflow sets up can run the newest framework that a test asks for.
java_of_tests() {
  local api java
  api=$(grep -rhoE 'sdk = \[[0-9, ]+\]' "$1" | grep -oE '[0-9]+' | sort -n | tail -1)
  [ -n "$api" ] || { echo "no test under $1 asks for a framework" && return 1; }
  java=$(sed -n 's/.*java-version: "\([0-9]*\)".*/\1/p' "$2" | head -1)
  [ -n "$java" ] || { echo "$2 sets up no Java" && return 1; }
  if [ "$api" -ge $JAVA_21_FROM_API ] && [ "$java" -lt 21 ]; then
    echo "$2: tests run on API $api, which needs Java 21, and it sets up Java $java" && return 1
  fi
}

# heap_of_tests GRADLE: Gradle gives a test process 512 MB; five frameworks in one need more.
heap_of_tests() {
  grep -qE '^ *test\.maxHeapSize = "[1-9][0-9]*g"' "$1" || { echo "$1 gives the tests no memory of their own (maxHeapSize)" && return 1; }
}

# gradle_of_wrapper WRAPPER WORKFLOW: each job that sets up Gradle names the wrapper's version, since a hosted machine has another.
gradle_of_wrapper() {
  local wanted steps named
  wanted=$(sed -n 's/^distributionUrl=.*gradle-\([0-9.]*\)-bin\.zip$/\1/p' "$1")
  steps=$(grep -c 'gradle/actions/setup-gradle@' "$2")
  named=$(grep -cF "gradle-version: \"$wanted\"" "$2")
  if [ -z "$wanted" ] || [ "$steps" = 0 ] || [ "$steps" != "$named" ]; then
    echo "$2: $named of $steps jobs with Gradle name the wrapper's $wanted" && return 1
  fi
}

# emulator_comes_to_run WORKFLOW: the step after the one that makes the APK runs although unit tests or lint have failed.
emulator_comes_to_run() {
  local step
  step=$(grep -A1 'run: .github/scripts/android-emulator.sh' "$1")
  [ -n "$step" ] || { echo "$1 has no emulator" && return 1; }
  # shellcheck disable=SC2016 # an expression of the workflow
  grep -qF 'if: ${{ !cancelled() && steps.apk.outcome == '"'success'"' }}' <<<"$step" || { echo "$1: the emulator waits for the unit tests" && return 1; }
  grep -q 'id: apk' "$1" || { echo "$1: no step makes the APK" && return 1; }
}

# permission_lint FOLDER: Android's lint, which a build runs, looks for a check of the permission or an annotation in the function
# that makes the call, and fails the build where there is neither.
permission_lint() {
  local calls
  calls=$(grep -rnE -B6 '(getCurrentLocation|notifications\.notify)\(' --include=*.kt "$1")
  [ -n "$calls" ] || { echo "no call under $1 needs a permission" && return 1; }
  awk 'BEGIN { RS = "\n--\n" } !/SuppressLint\("MissingPermission"\)|@RequiresPermission/ { print "a call without its permission for the lint:\n" $0; bad = 1 } END { exit bad }' <<<"$calls"
}
