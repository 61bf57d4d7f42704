# shellcheck shell=bash
# The Android app on the Android 15 framework, by Robolectric on a JVM: no Gradle, no SDK, no device. The same Kotlin
# as on a phone (android/ui, android/app), compiled against the real androidx libraries, over the release library.

ANDROID_TESTS=$ANDROID_OUT/tests
# Older Androids that a test may ask for beside $FRAMEWORK: 8.0, 12 and 14 (API 26, 31 and 34).
OLDER=(8.0.0_r4-robolectric-r1 12-robolectric-7732740 14-robolectric-10818077)

android_tests() {
  java_tools
  debs aapt unzip zip
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
instrumented() { printf 'org.robolectric:android-all-instrumented:%s-i7\n' "${OLDER[@]}" "$FRAMEWORK"; }

fetch_frameworks() {
  local jars
  mapfile -t jars < <(instrumented)
  maven_get "${jars[@]}"
}

# Resources of the app and of every library, and the R classes that name them.
link_test_resources() {
  local app=android/app/src/main out=$ANDROID_TESTS/resources.apk
  mkdir -p "$ANDROID_TESTS"
  stale "$out" $app/AndroidManifest.xml $app/res face/res "$ANDROID_OUT"/tests.jars || return 0
  # What Gradle's manifest merger does for a test: the package, and the empty activity of Compose's test rule.
  sed -e 's|<manifest |<manifest package="app.restwater" |' \
    -e 's|</application>|<activity android:name="androidx.activity.ComponentActivity" android:exported="false"/></application>|' \
    $app/AndroidManifest.xml >"$ANDROID_TESTS"/AndroidManifest.xml
  link_resources tests "$ANDROID_TESTS"/AndroidManifest.xml "$out".new
  rm -rf "$out".classes
  mv "$out".new.classes "$out".classes
  mv "$out".new "$out"
}

# The class path of the tests but for our own Kotlin.
test_libraries() { { cat "$ANDROID_OUT"/tests.jars && echo "$ANDROID_TESTS"/resources.apk.classes; } | paste -sd:; }

compile_tests() {
  local out=$ANDROID_OUT
  if stale "$ANDROID_TESTS"/classes android/app/src/test "$out"/app "$out"/tests.jars; then
    compile_kotlin "$ANDROID_TESTS"/classes "$out/app:$out/ui:$(test_libraries)" -Xfriend-paths="$out"/app android/app/src/test/kotlin
  fi
}

# Every *Test.kt under android/app/src/test, by class name; only those of ROBOLECTRIC_TESTS where that names some.
run_robolectric() {
  local jar classes out=$ANDROID_TESTS tests=android/app/src/test/kotlin
  mapfile -t classes < <(cd $tests && find . -name '*Test.kt' | sort | sed 's|^\./||; s|\.kt$||; s|/|.|g' |
    grep -E "${ROBOLECTRIC_TESTS:-.}")
  mkdir -p "$out"/robolectric "$out"/config/com/android/tools target/screens/android
  while read -r jar; do cp -n "$(jar_of "$jar")" "$out"/robolectric/; done < <(instrumented)
  printf 'android_merged_manifest=%s\nandroid_resource_apk=%s\nandroid_merged_assets=\nandroid_custom_package=app.restwater\n' \
    "$TREE/$out/AndroidManifest.xml" "$TREE/$out/resources.apk" >"$out"/config/com/android/tools/test_config.properties
  # The framework's plain classes come last: Robolectric's own, instrumented, must win.
  # Robolectric reaches into the JDK's file descriptors where the framework closes one.
  java -Xmx2g --add-opens java.base/java.io=ALL-UNNAMED --add-opens java.base/java.lang=ALL-UNNAMED -Drobolectric.offline=true -Drobolectric.dependency.dir="$TREE/$out/robolectric" \
    -Djna.library.path="$TREE/$LIBRARY" -Drestwater.tree="$PWD" -Drestwater.screens="$TREE/target/screens/android" \
    -cp "$out/classes:$ANDROID_OUT/app:$ANDROID_OUT/ui:$out/config:android/app/robolectric:$(test_libraries):$(jar_of org.robolectric:android-all:"$FRAMEWORK")" \
    org.junit.runner.JUnitCore "${classes[@]}"
}
