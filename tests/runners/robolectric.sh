# shellcheck shell=bash
# The Android app on the Android 15 framework, by Robolectric on a JVM: no Gradle, no SDK, no device. The same Kotlin
# as on a phone (android/ui, android/app), compiled against the real androidx libraries, over the release library.

ANDROID_OUT=target/android
KOTLIN=2.4.20 COURSIER=2.1.24
FRAMEWORK=15-robolectric-13954326 # JDK 17 runs Android 15; newer ones ask for JDK 21
ARSC=14-robolectric-10818077      # Debian's aapt2 reads the resource table of Android 14, not of 15

android_tests() {
  java_tools
  debs aapt unzip zip
  native_library
  mkdir -p $ANDROID_OUT
  step "fetch the Android libraries" fetch_android_libraries
  step "link the resources" link_android_resources
  step "compile the app" compile_android
  step "run its tests" run_robolectric
}

# stale STAMP PATH...: is a file under one of the paths newer than the stamp, or the stamp not there?
stale() {
  local stamp=$1
  shift
  [ ! -e "$stamp" ] || [ -n "$(find "$@" -newer "$stamp" -print -quit)" ]
}

# Where Maven keeps the jar of group:artifact:version. Its repository is the first entry of the tools' class path.
jar_of() {
  local group artifact version repository
  IFS=: read -r group artifact version <<<"$1"
  repository=$(sed 's|/io/get-coursier/.*||' "$TREE/$ANDROID_OUT/tools.cp")
  echo "$repository/${group//.//}/$artifact/$version/$artifact-$version.jar"
}

# Coursier resolves Android libraries: unlike Maven it takes an .aar where the POM says so, and the highest version.
fetch_android_libraries() {
  stale $ANDROID_OUT/libs.txt tests/runners/android-libraries.txt tests/runners/android-versions.lock || return 0
  local jar
  cat >$ANDROID_OUT/tools.pom <<P
<project xmlns="http://maven.apache.org/POM/4.0.0"><modelVersion>4.0.0</modelVersion>
<groupId>app.restwater</groupId><artifactId>tools</artifactId><version>1</version><packaging>pom</packaging><dependencies>
<dependency><groupId>io.get-coursier</groupId><artifactId>coursier-cli_2.13</artifactId><version>$COURSIER</version></dependency>
<dependency><groupId>org.jetbrains.kotlin</groupId><artifactId>kotlin-compiler-embeddable</artifactId><version>$KOTLIN</version></dependency>
<dependency><groupId>org.jetbrains.kotlin</groupId><artifactId>kotlin-compose-compiler-plugin-embeddable</artifactId><version>$KOTLIN</version></dependency>
</dependencies></project>
P
  maven -q -f $ANDROID_OUT/tools.pom dependency:build-classpath -Dmdep.outputFile="$TREE/$ANDROID_OUT/tools.cp"
  for jar in android-all:$FRAMEWORK android-all-instrumented:$FRAMEWORK-i7 android-all:$ARSC; do
    maven -q dependency:get -Dtransitive=false -Dartifact="org.robolectric:$jar"
  done
  try coursier_fetch
  mv $ANDROID_OUT/libs.txt.new $ANDROID_OUT/libs.txt
}

coursier_fetch() {
  local wanted forced
  mapfile -t wanted <tests/runners/android-libraries.txt
  mapfile -t forced < <(sed 's/^/--force-version=/' tests/runners/android-versions.lock)
  java -cp "$(cat $ANDROID_OUT/tools.cp)" coursier.cli.Coursier fetch -A aar,jar,bundle "${wanted[@]}" "${forced[@]}" \
    >$ANDROID_OUT/libs.txt.new 2>$ANDROID_OUT/resolve.log || { tail -20 $ANDROID_OUT/resolve.log && return 1; }
}

# Resources of the app and of every library, and the R classes that name them.
link_android_resources() {
  local app=android/app/src/main stamp=$ANDROID_OUT/r-classes/made
  stale $stamp $app/AndroidManifest.xml $app/res $ANDROID_OUT/libs.txt tests/runners/robolectric.sh || return 0
  (
    cd "$ANDROID_OUT" || exit
    rm -rf aar flat r-java r-classes framework
    mkdir -p aar flat r-java r-classes framework
    while read -r file; do
      case $file in *.aar) unzip -oq "$file" -d "aar/$(basename "$file" .aar)" ;; esac
    done <libs.txt
    if grep -lE 'android.permission.(INTERNET|ACCESS_NETWORK_STATE)' aar/*/AndroidManifest.xml; then
      echo "^ libraries that ask for the network" && exit 1
    fi
    for dir in aar/*/; do
      [ -z "$(ls "$dir/res" 2>/dev/null)" ] || aapt2 compile --dir "$dir/res" -o "flat/$(basename "$dir").zip"
    done
    aapt2 compile --dir "$TREE/$app/res" -o flat/zz-app.zip
    # Debian's aapt2 can't read the framework's own jar (zip64), so it gets the table alone.
    unzip -oq "$(jar_of org.robolectric:android-all:$ARSC)" resources.arsc AndroidManifest.xml -d framework
    rm -f framework.apk
    (cd framework && zip -q -0 ../framework.apk resources.arsc AndroidManifest.xml)
    # What Gradle's manifest merger does for a test: the package, and the empty activity of Compose's test rule.
    sed -e 's|<manifest |<manifest package="app.restwater" |' \
      -e 's|</application>|<activity android:name="androidx.activity.ComponentActivity" android:exported="false"/></application>|' \
      "$TREE/$app/AndroidManifest.xml" >AndroidManifest.xml
    packages=$(grep -oh 'package="[^"]*"' aar/*/AndroidManifest.xml | cut -d'"' -f2 | sort -u | paste -sd:)
    aapt2 link -I framework.apk --manifest AndroidManifest.xml --auto-add-overlay --non-final-ids --java r-java \
      --extra-packages "$packages" --min-sdk-version 26 --target-sdk-version 35 -o resources.apk flat/*.zip
    find r-java -name R.java >r-java.list
    javac -nowarn -d r-classes @r-java.list
    touch r-classes/made
  )
}

# The class path of everything but our own Kotlin.
android_libs() {
  local jars=("$ANDROID_OUT"/aar/*/classes.jar)
  { printf '%s\n' "${jars[@]}" && grep '\.jar$' $ANDROID_OUT/libs.txt && echo $ANDROID_OUT/r-classes; } | paste -sd:
}

# compile_kotlin OUT CLASSPATH OPTION|SOURCE...: with the Compose compiler plugin, when a source is newer than OUT.
compile_kotlin() {
  local out=$1 classpath=$2
  shift 2
  rm -rf "$out"
  java -Xmx2g -cp "$(cat $ANDROID_OUT/tools.cp)" org.jetbrains.kotlin.cli.jvm.K2JVMCompiler -no-stdlib -no-reflect -jvm-target 17 \
    "-Xplugin=$(jar_of org.jetbrains.kotlin:kotlin-compose-compiler-plugin-embeddable:$KOTLIN)" \
    -cp "$classpath:$(jar_of org.robolectric:android-all:$FRAMEWORK)" -d "$out" "$@"
  touch "$out"
}

# android/ui, then android/app with warnings as errors, then its tests.
compile_android() {
  local out=$ANDROID_OUT libs
  libs=$(android_libs)
  if stale $out/ui android/ui/src $out/libs.txt; then
    compile_kotlin $out/ui "$libs" -nowarn android/ui/src/main/kotlin android/ui/src/generated/kotlin
  fi
  if stale $out/app android/app/src/main $out/ui $out/r-classes/made; then
    compile_kotlin $out/app "$out/ui:$libs" -Werror android/app/src/main/kotlin
  fi
  if stale $out/tests android/app/src/test $out/app; then
    compile_kotlin $out/tests "$out/app:$out/ui:$libs" -Xfriend-paths=$out/app android/app/src/test/kotlin
  fi
}

# Every *Test.kt under android/app/src/test, by class name.
run_robolectric() {
  local classes out=$ANDROID_OUT tests=android/app/src/test/kotlin
  mapfile -t classes < <(cd $tests && find . -name '*Test.kt' | sort | sed 's|^\./||; s|\.kt$||; s|/|.|g')
  mkdir -p $out/robolectric $out/config/com/android/tools target/screens/android
  cp -n "$(jar_of org.robolectric:android-all-instrumented:$FRAMEWORK-i7)" $out/robolectric/
  printf 'android_merged_manifest=%s\nandroid_resource_apk=%s\nandroid_merged_assets=\nandroid_custom_package=app.restwater\n' \
    "$TREE/$out/AndroidManifest.xml" "$TREE/$out/resources.apk" >$out/config/com/android/tools/test_config.properties
  # The framework's plain classes come last: Robolectric's own, instrumented, must win.
  # Robolectric reaches into the JDK's file descriptors where the framework closes one.
  java -Xmx2g --add-opens java.base/java.io=ALL-UNNAMED --add-opens java.base/java.lang=ALL-UNNAMED -Drobolectric.offline=true -Drobolectric.dependency.dir="$TREE/$out/robolectric" \
    -Djna.library.path="$TREE/$LIBRARY" -Drestwater.tree="$PWD" -Drestwater.screens="$TREE/target/screens/android" \
    -cp "$out/tests:$out/app:$out/ui:$out/config:$(android_libs):$(jar_of org.robolectric:android-all:$FRAMEWORK)" \
    org.junit.runner.JUnitCore "${classes[@]}"
}
