# shellcheck shell=bash
# What independent tools say about the APK: Debian's apksigner (an older release than the one that signed), aapt2, zipalign and
# readelf, and androguard for what must have survived R8. What was checked last is written to apk-checked.txt, which is
# committed.

ANDROGUARD=4.1.4
APK_CHECKED=tests/runners/apk-checked.txt

# When named on the command line the check always runs; as part of all checks only when a source of the APK has changed since.
check_apk() {
  local inputs
  inputs=$(apk_inputs)
  if [ -n "${ALL_CHECKS:-}" ] && grep -qx "inputs $inputs" $APK_CHECKED; then
    echo "not run: nothing the APK is made of has changed since $APK_CHECKED was written (./dev check apk runs it anyway)"
    return "$NOT_RUN"
  fi
  rust
  make_apk
  debs apksigner zipalign binutils python3-venv
  apk_venv
  signature_holds
  badging_holds
  languages_hold
  libraries_load
  zipalign -c -p 4 "$APK"
  agp_holds
  profile_holds
  target/apk-venv/bin/python tests/runners/apk_check.py "$APK" "$TREE/$ANDROID_OUT/aar/jna-$JNA/classes.jar" \
    "$KOTLIN_BINDINGS" $APK_CHECKED
  shrunk_bindings_work
  record_apk "$inputs"
  echo ok
}

# One hash of everything from which the APK is made and by which it is checked, except the native library, which it lacks here.
apk_inputs() {
  git ls-files -co --exclude-standard -- android/app/src/main android/app/build.gradle.kts android/app/proguard-rules.pro android/ui core/face/res \
    android/gradle tests/runners/apk* tests/runners/Apk* tests/runners/android-libraries.txt tests/runners/android-versions.lock ":!$APK_CHECKED" |
    LC_ALL=C sort | xargs sha256sum | sha256sum | cut -d' ' -f1
}

record_apk() {
  {
    echo "What ./dev check apk held last, and the sizes in bytes. It writes this file; commit it with what changed."
    echo "inputs $1"
    target/apk-venv/bin/python -c "
import sys; sys.path.insert(0, 'tests/runners')
from apk_check import sizes
for name, size in sizes('$APK').items(): print(f'{name}: {size}')"
  } >$APK_CHECKED.new
  mv $APK_CHECKED.new $APK_CHECKED
  [ -z "$(git status --porcelain $APK_CHECKED)" ] || echo "$APK_CHECKED was rewritten: commit it"
}

apk_venv() {
  [ -x target/apk-venv/bin/python ] || python3 -m venv target/apk-venv
  target/apk-venv/bin/python -c 'import androguard' 2>/dev/null || try target/apk-venv/bin/pip install --quiet "androguard==$ANDROGUARD"
}

signature_holds() {
  local said=$APK_OUT/signature.txt
  apksigner verify --verbose --min-sdk-version "$(catalogue minSdk)" "$APK" >"$said" 2>&1 || { cat "$said" && return 1; }
  for it in 'Verifies' 'Verified using v2 scheme (APK Signature Scheme v2): true' 'Verified using v3 scheme (APK Signature Scheme v3): true'; do
    grep -qxF "$it" "$said" || { cat "$said" && echo "apksigner does not say: $it" && return 1; }
  done
  echo "apksigner: signatures v2 and v3 hold"
}

# What the system will read from it agrees with the Gradle files.
badging_holds() {
  local said=$APK_OUT/badging.txt it
  aapt2 dump badging "$APK" >"$said" 2>"$said".err || { cat "$said".err && return 1; }
  for it in "package: name='$(app_gradle applicationId)' versionCode='$(app_gradle versionCode)' versionName='$(app_gradle versionName)'" \
    "sdkVersion:'$(catalogue minSdk)'" "targetSdkVersion:'$(catalogue targetSdk)'" \
    "launchable-activity: name='$(app_gradle namespace).android.MainActivity'" "native-code: '$ABI'"; do
    grep -qF "$it" "$said" || { cat "$said" && echo "aapt2 dump badging does not say: $it" && return 1; }
  done
  echo "aapt2: $(sed -n "s/^package: \(name='[^']*' versionCode='[^']*' versionName='[^']*'\).*/\1/p" "$said"), SDK $(catalogue minSdk) to $(catalogue targetSdk)"
}

# The APK has words in the languages that the Gradle file names (those without a language are English), and the system offers
# the same to choose from.
languages_hold() {
  local want said offered
  want=$(app_locales | tr , '\n' | sort)
  said=$(sed -n "s/^locales: //p" "$APK_OUT"/badging.txt | tr -d "'" | tr ' ' '\n' | sed 's/^--_--$/en/; s/-.*//' | grep . | sort -u)
  offered=$(sed -n 's/.*<locale android:name="\([a-z]*\).*/\1/p' android/app/src/main/res/xml/locales.xml | sort)
  if [ "$said" != "$want" ] || [ "$offered" != "$want" ]; then
    echo "languages in the APK: $said; offered by the system: $offered; of the Gradle file: $want" | tr '\n' ' ' && return 1
  fi
  tr '\n' ' ' <<<"languages: $want" && echo
}

# Every native library loads on a phone with pages of 16 KB, and needs no library but the system's.
libraries_load() {
  local so folder=$APK_OUT/unpacked wanted step aligned
  rm -rf "$folder"
  unzip -q "$APK" 'lib/*' -d "$folder"
  for so in "$folder"/lib/*/*.so; do
    readelf -hW "$so" | grep 'Machine:' | grep -q AArch64 || { echo "$so: not for AArch64" && return 1; }
    aligned=0
    while read -r step; do
      [ $((step % 16384)) = 0 ] || { echo "$so: a part of it is at multiples of $step, not of 16 KB" && return 1; }
      aligned=$((aligned + 1))
    done < <(readelf -lW "$so" | awk '$1 == "LOAD" {print $NF}')
    [ $aligned -gt 0 ] || { echo "$so: no part of it is read by readelf" && return 1; }
    wanted=$(readelf -dW "$so" | sed -n 's/.*(NEEDED).*\[\(.*\)\]/\1/p' | grep -vxE 'lib(c|m|dl|log|android|z)\.so' || true)
    [ -z "$wanted" ] || { echo "$so wants $wanted" && return 1; }
    echo "readelf: ${so##*/} is for AArch64 and for pages of 16 KB"
  done
}

# The Gradle files, which nothing here runs, agree with each other and with what the plugin and the libraries require.
agp_holds() {
  local folders
  mapfile -t folders < <(aars phone)
  agp_java tests/runners/ApkDemands.java "$(catalogue compileSdk)" >"$APK_OUT"/demands.txt
  python3 tests/runners/apk_gradle.py "$APK_OUT"/demands.txt "${folders[@]}"
}

# Every line of the baseline profile is well formed and matches classes of the app, by their names before R8.
profile_holds() {
  local line names
  while read -r line; do
    names=$(sed -nE 's|^(HSP)?L([a-zA-Z/]+)/\*\*;(->\*\*\(\*\*\)\*\*)?$|\2|p' <<<"$line")
    [ -n "$names" ] || { echo "the baseline profile has a line that is not understood: $line" && return 1; }
    grep -q "^${names//\//.}\." "$APK_OUT"/mapping.txt || { echo "the baseline profile matches no class: $line" && return 1; }
  done < <(grep -v '^#' android/app/src/main/baselineProfiles/restwater.txt)
  echo "baseline profile: every line matches classes of the app (Gradle compiles it: not run here)"
}

# The bindings and JNA after R8 still work: the same rules once more, but to class files, which run here over the real core
# beside what was compiled. (On a phone the same classes are dex.) Both must play a day with the same result.
shrunk_bindings_work() {
  local out=$APK_OUT/drive libraries it
  native_library
  maven_get "net.java.dev.jna:jna:$JNA"
  libraries=$(grep -E '/(kotlin-stdlib|kotlinx-coroutines-core-jvm|annotations)-[0-9.]+\.jar' "$ANDROID_OUT"/phone.jars | paste -sd:):$(jar_of "net.java.dev.jna:jna:$JNA")
  rm -rf "$out"
  mkdir -p "$out"
  # The Compose plugin wants its library on the class path even where no screen is.
  compile_kotlin "$out"/classes "$ANDROID_OUT/ui:$(paste -sd: "$ANDROID_OUT"/phone.jars)" tests/runners/ApkDrive.kt
  (cd "$ANDROID_OUT"/ui && zip -qr "$TREE/$out/bindings.jar" app/restwater/core)
  (cd "$out"/classes && zip -qr ../drive.jar .)
  { cat "$APK_OUT"/rules.pro && echo '-keep class app.restwater.apk.ApkDriveKt { void main(java.lang.String[]); }'; } >"$out"/rules.pro
  # shellcheck disable=SC2046 # no path here contains a space
  r8 --classfile --pg-conf "$out"/rules.pro --output "$out"/shrunk.jar \
    "$out"/bindings.jar "$out"/drive.jar $(tr : ' ' <<<"$libraries")
  for it in "$ANDROID_OUT/ui:$out/classes:$libraries" "$out/shrunk.jar"; do
    rm -rf "$out"/log
    mkdir "$out"/log
    java -Djna.library.path="$LIBRARY" -cp "$it" app.restwater.apk.ApkDriveKt "$out"/log >"$out/said.$(basename "${it%%:*}")"
  done
  diff "$out"/said.ui "$out"/said.shrunk.jar || { echo "^ the bindings as compiled (<) and after R8 (>)" && return 1; }
  echo "the bindings after R8: $(wc -l <"$out"/said.ui) answers as before it, $(stat -c %s "$out"/shrunk.jar) bytes of class files"
}
