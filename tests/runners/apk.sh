# shellcheck shell=bash
# A signed APK without the Android SDK and without Gradle: the manifest merger, R8 with its real rules and apksig come from
# Maven, in the versions of the Android Gradle plugin of the catalogue; aapt2 from Debian. What differs from Gradle's APK
# is listed in android/README.md.

APK_OUT=$ANDROID_OUT/apk
APK=$APK_OUT/restwater.apk
ABI=arm64-v8a CARGO_NDK=4.1.2

# make_apk [OUT]: a step is repeated only when one of its inputs is newer than its result.
make_apk() {
  local start=$SECONDS
  java_tools
  debs aapt unzip zip
  mkdir -p "$APK_OUT"
  apk_step "tools" fetch_apk_tools
  apk_step "libraries" resolve phone tests/runners/android-libraries.txt
  apk_step "native library" apk_native
  apk_step "manifest" merge_manifest
  apk_step "resources" link_apk_resources
  apk_step "Kotlin" compile_app "$APK_OUT"/linked.apk.classes
  apk_step "R8" shrink
  apk_step "packing and signing" pack_and_sign
  if [ -n "${1:-}" ]; then cp "$APK" "$1"; fi
  echo "${1:-$APK}: $(stat -c %s "$APK") bytes, in $((SECONDS - start)) s"
}

# apk_step NAME COMMAND...: prints how long it took. (No && and no `if` round it: `set -e` would be off inside.)
apk_step() {
  local name=$1 start=$SECONDS
  shift
  "$@"
  printf '%6d s  %s\n' $((SECONDS - start)) "$name"
}

# builder brings R8, the manifest merger, apksig and the build tools' own checks; Android's default rules are in `gradle`.
fetch_apk_tools() {
  local agp
  agp=$(catalogue agp)
  fetch_android_tools
  class_path_of "$ANDROID_OUT"/agp.cp "com.android.tools.build:builder:$agp"
  maven_get "com.android.tools.build:gradle:$agp"
}

agp_java() { java -cp "$(cat "$ANDROID_OUT"/agp.cp)" "$@"; }

# librestwater.so, if there is an NDK to link it with.
apk_native() {
  mkdir -p "$APK_OUT"/lib/$ABI
  if [ -z "${ANDROID_NDK_HOME:-}" ]; then
    echo "ANDROID_NDK_HOME names no NDK: the APK gets no librestwater.so and can't be used on a phone; all else is made and checked"
    return 0
  fi
  rust && rust_target aarch64-linux-android
  command -v cargo-ndk >/dev/null || try cargo install --locked --quiet "cargo-ndk@$CARGO_NDK"
  RUSTFLAGS="-C link-arg=-Wl,-z,max-page-size=16384" cargo ndk --platform "$(catalogue minSdk)" --target $ABI \
    --output-dir "$TREE/$APK_OUT/lib" build --release --locked --package restwater-bindings --no-default-features
}

# app_gradle NAME: a plain value of the app's Gradle file.
app_gradle() { sed -n "s/^ *$1 = \"\{0,1\}\([^\"]*\)\"\{0,1\}$/\1/p" android/app/build.gradle.kts; }

merge_manifest() {
  local out=$APK_OUT/AndroidManifest.xml main=$APK_OUT/main.xml package libraries
  stale "$out" android/app/src/main/AndroidManifest.xml android/app/build.gradle.kts "$ANDROID_OUT"/phone.jars || return 0
  package=$(app_gradle applicationId)
  # Gradle passes the namespace beside the file; the merger's command line needs it inside.
  sed "s|<manifest |<manifest package=\"$(app_gradle namespace)\" |" android/app/src/main/AndroidManifest.xml >"$main"
  libraries=$(aars phone | sed 's|$|/AndroidManifest.xml|' | paste -sd:)
  agp_java com.android.manifmerger.Merger --main "$main" --libs "$libraries" --property PACKAGE="$package" \
    --property MIN_SDK_VERSION="$(catalogue minSdk)" --property TARGET_SDK_VERSION="$(catalogue targetSdk)" \
    --property VERSION_CODE="$(app_gradle versionCode)" --property VERSION_NAME="$(app_gradle versionName)" --out "$out".new --log WARNING
  mv "$out".new "$out"
}

# In aapt2's proto format, which is what R8's resource shrinker reads.
link_apk_resources() {
  local out=$APK_OUT/linked.apk
  stale "$out" "$APK_OUT"/AndroidManifest.xml android/app/src/main/res core/face/res "$ANDROID_OUT"/phone.jars || return 0
  link_resources phone "$APK_OUT"/AndroidManifest.xml "$out".new --proto-format --proguard "$APK_OUT"/manifest-rules.pro -c "$(app_locales)" \
    --version-code "$(app_gradle versionCode)" --version-name "$(app_gradle versionName)"
  rm -rf "$out".classes
  mv "$out".new.classes "$out".classes
  mv "$out".new "$out"
}

# The languages that the app has words in, as the Gradle file filters the libraries' words by them.
app_locales() { sed -n 's/.*localeFilters += listOf(\(.*\)).*/\1/p' android/app/build.gradle.kts | tr -d '" '; }

# The rules that Gradle would pass to R8: Android's own out of its plugin, the project's, the manifest's, each library's.
gather_rules() {
  local plugin folder jar it
  plugin=$(jar_of "com.android.tools.build:gradle:$(catalogue agp)")
  for it in header optimizations common; do unzip -p "$plugin" com/android/build/gradle/proguard-$it.txt; done
  cat android/app/proguard-rules.pro "$APK_OUT"/manifest-rules.pro
  while read -r folder; do
    if [ -e "$folder/proguard.txt" ]; then cat "$folder/proguard.txt" && echo; fi
  done < <(aars phone)
  while read -r jar; do rules_of_jar "$jar"; done <"$ANDROID_OUT"/phone.jars
}

# rules_of_jar JAR: a jar may bring rules for R8, some for a range of its versions (ours is newer than every upper end), or
# else rules for any shrinker.
rules_of_jar() {
  local jar=$1 names
  names=$(unzip -Z1 "$jar" | grep -E '^META-INF/com\.android\.tools/r8(-from-[0-9.]+)?/.+\.pro$' || unzip -Z1 "$jar" | grep -E '^META-INF/proguard/.+\.pro$' || true)
  for it in $names; do unzip -p "$jar" "$it" && echo; done
}

# Robolectric's framework has no java.*, so R8 reads that of the JDK.
shrink() {
  local out=$APK_OUT/dex it jars
  stale "$out" "$ANDROID_OUT"/app "$ANDROID_OUT"/ui "$APK_OUT"/linked.apk android/app/proguard-rules.pro tests/runners/apk.sh || return 0
  gather_rules >"$APK_OUT"/rules.pro
  for it in "$ANDROID_OUT/app" "$ANDROID_OUT/ui" "$APK_OUT/linked.apk.classes"; do
    rm -f "$TREE/$it.jar"
    (cd "$it" && zip -qr "$TREE/$it.jar" .)
  done
  mapfile -t jars <"$ANDROID_OUT"/phone.jars
  rm -rf "$out" "$out".new
  mkdir "$out".new
  r8 --dex --min-api "$(catalogue minSdk)" --lib "$(jar_of org.robolectric:android-all:"$FRAMEWORK")" --pg-conf "$APK_OUT"/rules.pro \
    --pg-map-output "$APK_OUT"/mapping.txt --android-resources "$APK_OUT"/linked.apk "$APK_OUT"/shrunk.apk --output "$out".new \
    "$ANDROID_OUT"/app.jar "$ANDROID_OUT"/ui.jar "$APK_OUT"/linked.apk.classes.jar "${jars[@]}"
  mv "$out".new "$out"
}

# r8 OPTION|INPUT...: quiet about rules that match nothing and about files that several jars bring, loud about the rest.
r8() {
  local log=$APK_OUT/r8.log
  agp_java -Xmx3g com.android.tools.r8.R8 --release --lib "$(jdk)" "$@" >"$log" 2>&1 || { tail -40 "$log" && return 1; }
  grep -A2 '^Warning' "$log" | grep -v 'META-INF/.* already exists' || true
}

jdk() { dirname "$(dirname "$(readlink -f "$(command -v javac)")")"; }

# Libraries are stored uncompressed, since they are mapped from the APK as it is. Of their other
# files, those that libraries look up by name are included.
pack_and_sign() {
  local packed=$APK_OUT/packed.apk folder
  rm -rf "$packed" "$APK_OUT"/pack
  mkdir -p "$APK_OUT"/pack
  cp -a "$APK_OUT"/lib "$APK_OUT"/pack/
  while read -r folder; do
    if [ -d "$folder/jni/$ABI" ]; then cp "$folder/jni/$ABI"/*.so "$APK_OUT"/pack/lib/$ABI/; fi
  done < <(aars phone)
  aapt2 convert --output-format binary -o "$APK_OUT"/binary.apk "$APK_OUT"/shrunk.apk
  aapt2 optimize --enable-resource-path-shortening -o "$packed" "$APK_OUT"/binary.apk
  (cd "$APK_OUT"/pack && zip -q -0 -X -r ../packed.apk lib)
  (cd "$APK_OUT"/dex && zip -q -9 -X -r ../packed.apk . -i '*.dex' 'META-INF/services/*')
  apk_key
  agp_java tests/runners/ApkSign.java "$packed" "$APK" "$(catalogue minSdk)"
}

# The key named by the four variables that Gradle reads too; without them a key that is deleted with target/. An update of an
# installed app must be signed with the same key, so an APK with that key is only for trying out.
apk_key() {
  [ -z "${RESTWATER_KEYSTORE:-}" ] || return 0
  export RESTWATER_KEYSTORE=$APK_OUT/try-out.p12 RESTWATER_KEYSTORE_PASSWORD=try-out RESTWATER_KEY_ALIAS=try-out RESTWATER_KEY_PASSWORD=try-out
  [ -e "$RESTWATER_KEYSTORE" ] || keytool -genkeypair -keystore "$RESTWATER_KEYSTORE" -storetype PKCS12 -storepass try-out -alias try-out \
    -keyalg EC -groupname secp256r1 -validity 365 -dname "CN=Restwater for trying out"
}
