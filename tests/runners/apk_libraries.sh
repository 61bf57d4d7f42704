# shellcheck shell=bash
# The libraries of the Android app and the tools that compile it, without Gradle: what ./dev apk and ./dev test android
# are both based on. Versions are those of the Gradle catalogue, so that each is written once.

ANDROID_OUT=target/android
CATALOGUE=android/gradle/libs.versions.toml
COURSIER=2.1.24
FRAMEWORK=15-robolectric-13954326 # Android 15, the newest that Java 17 can read
ARSC=14-robolectric-10818077      # Debian's aapt2 reads the resource table of Android 14, not of 15

# catalogue NAME: a version of the Gradle build.
catalogue() { sed -n "s/^$1 = \"\(.*\)\"$/\1/p" $CATALOGUE; }
KOTLIN=$(catalogue kotlin) JNA=$(catalogue jna)

# stale STAMP PATH...: is a file under one of the paths newer than the stamp, or the stamp not there?
stale() {
  local stamp=$1
  shift
  [ ! -e "$stamp" ] || [ -n "$(find "$@" -newer "$stamp" -print -quit)" ]
}

# Where Maven keeps group:artifact:version[:type]. Its repository comes first in the tools' class path.
jar_of() {
  local group artifact version type repository
  IFS=: read -r group artifact version type <<<"$1"
  repository=$(sed 's|/io/get-coursier/.*||' "$TREE/$ANDROID_OUT/tools.cp")
  echo "$repository/${group//.//}/$artifact/$version/$artifact-$version.${type:-jar}"
}

# maven_get GROUP:ARTIFACT:VERSION[:TYPE]...: single files, without what they depend on.
maven_get() {
  local it
  for it in "$@"; do
    [ -s "$(jar_of "$it")" ] || maven -q dependency:get -Dtransitive=false -Dartifact="$it"
  done
}

# class_path_of OUT GROUP:ARTIFACT:VERSION...: the class path of the artifacts with all they depend on. Made again when
# another list is asked for than the last time, or when a jar is gone.
class_path_of() {
  local out=$1 it group artifact version
  shift
  # shellcheck disable=SC2046 # a path of Maven's repository contains no space
  if [ "$(cat "$out.of" 2>/dev/null)" = "$*" ] && ls $(tr : ' ' <"$out") >/dev/null 2>&1; then return 0; fi
  {
    echo '<project xmlns="http://maven.apache.org/POM/4.0.0"><modelVersion>4.0.0</modelVersion>'
    echo '<groupId>app.restwater</groupId><artifactId>tools</artifactId><version>1</version><packaging>pom</packaging><dependencies>'
    for it in "$@"; do
      IFS=: read -r group artifact version <<<"$it"
      echo "<dependency><groupId>$group</groupId><artifactId>$artifact</artifactId><version>$version</version></dependency>"
    done
    echo '</dependencies></project>'
  } >"$out.pom"
  maven -q -f "$out.pom" dependency:build-classpath -Dmdep.outputFile="$TREE/$out"
  echo "$*" >"$out.of"
}

# Coursier, the Kotlin compiler, Android's framework classes and its resource table.
fetch_android_tools() {
  mkdir -p $ANDROID_OUT
  class_path_of $ANDROID_OUT/tools.cp "io.get-coursier:coursier-cli_2.13:$COURSIER" \
    "org.jetbrains.kotlin:kotlin-compiler-embeddable:$KOTLIN" "org.jetbrains.kotlin:kotlin-compose-compiler-plugin-embeddable:$KOTLIN"
  maven_get "org.robolectric:android-all:$FRAMEWORK" "org.robolectric:android-all:$ARSC"
}

# resolve NAME LIST...: what the libraries in the lists need, as $ANDROID_OUT/NAME.libs (files), the AARs unpacked under
# aar/, and NAME.jars (class files, one path per line). Coursier takes an .aar if the POM says so, and the highest version.
resolve() {
  local name=$1 out=$ANDROID_OUT
  shift
  stale $out/"$name".jars "$@" tests/runners/android-versions.lock tests/runners/apk_libraries.sh $CATALOGUE || return 0
  try coursier_fetch "$out/$name.libs" "$@"
  # On a phone JNA is an .aar with a native part for each ABI; its POM names only the plain jar.
  if [ "$name" = phone ]; then
    maven_get "net.java.dev.jna:jna:$JNA:aar"
    jar_of "net.java.dev.jna:jna:$JNA:aar" >>"$out/$name.libs"
  fi
  unpack_aars "$out/$name.libs"
  # Robolectric's fonts and native libraries come in a jar without a class; R8 has no use for it.
  if [ "$name" = phone ]; then
    jars_of "$out/$name.libs" | with_classes >"$out/$name.jars.new"
  else
    jars_of "$out/$name.libs" >"$out/$name.jars.new"
  fi
  mv "$out/$name.jars.new" "$out/$name.jars"
}

coursier_fetch() {
  local out=$1 wanted forced
  shift
  mapfile -t wanted < <(cat "$@")
  mapfile -t forced < <(sed 's/^/--force-version=/' tests/runners/android-versions.lock)
  java -cp "$(cat $ANDROID_OUT/tools.cp)" coursier.cli.Coursier fetch -A aar,jar,bundle "${wanted[@]}" "${forced[@]}" \
    >"$out.new" 2>$ANDROID_OUT/resolve.log || { tail -20 $ANDROID_OUT/resolve.log && return 1; }
  mv "$out.new" "$out"
}

# unpack_aars LIBS: those that are not unpacked yet; a folder that is there is whole.
unpack_aars() {
  local file to
  mkdir -p $ANDROID_OUT/aar
  while read -r file; do
    to=$ANDROID_OUT/aar/$(basename "$file" .aar)
    case $file in *.jar) continue ;; esac
    [ ! -d "$to" ] || continue
    rm -rf "$to.new"
    unzip -oq "$file" -d "$to.new"
    mv "$to.new" "$to"
  done <"$1"
}

# jars_of LIBS: the class files of the libraries. An AAR has them in classes.jar and, some, in libs/*.jar too (lint.jar is
# for a build machine).
jars_of() {
  local file name
  while read -r file; do
    name=$(basename "$file" .aar)
    case $file in
      # A plain POM may bring the JVM variant of a library whose Android variant is here; Gradle's metadata would not.
      *-jvm-*.jar) [ -d "$ANDROID_OUT/aar/$(basename "$file" .jar | sed 's/-jvm-/-android-/')" ] || echo "$file" ;;
      *.jar) echo "$file" ;;
      *.aar) find "$TREE/$ANDROID_OUT/aar/$name" \( -path '*/libs/*.jar' -o -name classes.jar \) | sort ;;
    esac
  done <"$1"
}

# Reads names of jars and prints those with a class, since the root of a multiplatform library contains only metadata.
with_classes() {
  local jar
  while read -r jar; do
    # Not `grep -q`: it would close the pipe on unzip, and pipefail would call that a failure.
    if unzip -l "$jar" 2>/dev/null | grep '\.class$' >/dev/null; then echo "$jar"; fi
  done
}

# aars NAME: the folders of the unpacked AARs that NAME.libs names.
aars() { sed -n "s|.*/\(.*\)\.aar$|$TREE/$ANDROID_OUT/aar/\1|p" "$ANDROID_OUT/$1.libs"; }

# libraries_without_network NAME: no library's manifest asks for the network.
libraries_without_network() {
  local manifests
  mapfile -t manifests < <(aars "$1" | sed 's|$|/AndroidManifest.xml|')
  if grep -lE 'android.permission.(INTERNET|ACCESS_NETWORK_STATE)' "${manifests[@]}"; then
    echo "^ libraries that ask for the network" && return 1
  fi
}

# link_resources NAME MANIFEST OUT OPTION...: the resources of the app and of NAME's libraries, linked into the archive OUT
# (in aapt2's own format or a phone's, as the options say); beside it OUT.classes has the R classes that name them.
link_resources() {
  local name=$1 manifest=$2 out=$3 folder flat packages
  shift 3
  flat=$out.flat
  rm -rf "$flat" "$out.java" "$out.classes"
  mkdir -p "$flat" "$out.java" "$out.classes" $ANDROID_OUT/framework
  while read -r folder; do
    [ -z "$(ls "$folder/res" 2>/dev/null)" ] || aapt2 compile --dir "$folder/res" -o "$flat/$(basename "$folder").zip"
  done < <(aars "$name")
  aapt2 compile --dir android/app/src/main/res -o "$flat/zz-app.zip"
  aapt2 compile --dir core/face/res -o "$flat/zz-face.zip"
  # Debian's aapt2 can't read the framework's own jar (zip64), so it gets the table alone.
  if [ ! -e $ANDROID_OUT/framework.apk ]; then
    unzip -oq "$(jar_of org.robolectric:android-all:$ARSC)" resources.arsc AndroidManifest.xml -d $ANDROID_OUT/framework
    (cd $ANDROID_OUT/framework && zip -q -0 ../framework.apk resources.arsc AndroidManifest.xml)
  fi
  packages=$(aars "$name" | sed 's|$|/AndroidManifest.xml|' | xargs grep -oh 'package="[^"]*"' | cut -d'"' -f2 | sort -u | paste -sd:)
  aapt2 link -I $ANDROID_OUT/framework.apk --manifest "$manifest" --auto-add-overlay --non-final-ids --java "$out.java" \
    --extra-packages "$packages" --min-sdk-version "$(catalogue minSdk)" --target-sdk-version "$(catalogue targetSdk)" "$@" \
    -o "$out" "$flat"/*.zip
  find "$out.java" -name R.java >"$out.java/list"
  javac -nowarn --release 17 -d "$out.classes" @"$out.java/list"
}

# compile_kotlin OUT CLASSPATH OPTION|SOURCE...: with the Compose compiler plugin.
compile_kotlin() {
  local out=$1 classpath=$2
  shift 2
  rm -rf "$out"
  java -Xmx2g -cp "$(cat $ANDROID_OUT/tools.cp)" org.jetbrains.kotlin.cli.jvm.K2JVMCompiler -no-stdlib -no-reflect -jvm-target 17 \
    "-Xplugin=$(jar_of org.jetbrains.kotlin:kotlin-compose-compiler-plugin-embeddable:"$KOTLIN")" \
    -cp "$classpath:$(jar_of org.robolectric:android-all:$FRAMEWORK)" -d "$out" "$@"
  touch "$out"
}

# compile_app R-CLASSES: android/ui, then android/app with warnings as errors, against what a phone gets and no test library.
compile_app() {
  local out=$ANDROID_OUT classes=$1 libs
  libs=$(paste -sd: $out/phone.jars)
  if stale $out/ui android/ui/src $out/phone.jars; then
    compile_kotlin $out/ui "$libs" -nowarn android/ui/src/main/kotlin android/ui/src/generated/kotlin
  fi
  if stale $out/app android/app/src/main $out/ui; then
    compile_kotlin $out/app "$out/ui:$libs:$classes" -Werror android/app/src/main/kotlin
  fi
}
