# shellcheck shell=bash
# What the app stores are sent: texts, checked for the stores' limits, and pictures, made from the demo day (docs/stores.md).

PILLOW=13.0.0
STORE_LOCALES=(en-GB de-DE fr-FR)
ANDROID_PAPERS=android/fastlane/metadata/android
IOS_PAPERS=ios/fastlane/metadata
# Each text and its longest length: characters, for the App Store's keywords bytes.
ANDROID_TEXTS=(title.txt:30 short_description.txt:80 full_description.txt:4000)
IOS_TEXTS=(name.txt:30 subtitle.txt:30 keywords.txt:100 promotional_text.txt:170 description.txt:4000 release_notes.txt:4000)
CHANGELOG_LONGEST=500
# iOS takes the log into the phone's own backup, so what is said of privacy there names it (docs/privacy.md).
declare -A OWN_BACKUP=([en-GB]="the phone's own backup" [de-DE]="der eigenen Sicherung des Handys" [fr-FR]="la sauvegarde du téléphone")
declare -A IOS_PURPOSES=([en-GB]=Config/Restwater-Info.plist [de-DE]=Resources/de.lproj/InfoPlist.strings [fr-FR]=Resources/fr.lproj/InfoPlist.strings)

# pictures [FOLDER]: every picture the stores ask for, into target/stores; from the demo day, or from all PNGs of a folder.
pictures() {
  local out=target/stores python names size screens
  python=$(pillow)
  rm -rf $out
  # Google Play: at most twice as high as wide, 9:16 to be featured. App Store: the 6.9 in screen, from which Apple makes the
  # smaller ones. The app is drawn at each size, so nothing is scaled: WIDTHxHEIGHT@PIXELS_PER_MM.
  for size in 1080x1920@15.75 1320x2868@18.11; do
    if [ $# -gt 0 ]; then
      screens=("$1"/*.png)
    else
      desktop_app
      step "play the demo day at ${size%@*}" play_day tests/days/demo.jsonl "target/screens/${size%@*}" "$size"
      mapfile -t names <tests/runners/store-pictures.txt
      screens=("${names[@]/#/target/screens/${size%@*}/}")
      screens=("${screens[@]/%/.png}")
    fi
    case $size in
      1080*)
        local graphics=$out/android/en-GB/images
        $python tests/runners/pictures.py screens 1080x1920 $graphics/phoneScreenshots "${screens[@]}"
        $python tests/runners/pictures.py banner 1024x500 $graphics/featureGraphic.png "${screens[@]:0:3}"
        $python tests/runners/pictures.py icon 512x512 $graphics/icon.png ios/App/Resources/Assets.xcassets/AppIcon.appiconset/fan.png
        ;;
      *) $python tests/runners/pictures.py screens "${size%@*}" $out/ios/screenshots/en-GB "${screens[@]}" ;;
    esac
  done
  echo "The pictures are in $out, in the folders that fastlane expects; docs/stores.md says how they are sent."
}

# A Python with Pillow, in a folder of its own under target/.
pillow() {
  local venv=target/pillow
  if [ "$($venv/bin/python -c 'import PIL; print(PIL.__version__)' 2>/dev/null)" != $PILLOW ]; then
    debs python3-venv
    step "fetch Pillow $PILLOW" fetch_pillow $venv
  fi
  echo $venv/bin/python
}

fetch_pillow() {
  python3 -m venv "$1"
  try "$1/bin/python" -m pip install --quiet "pillow==$PILLOW"
}

# The stores' texts: each exists in every language, none is too long, and the release notes are those of the changelog.
check_stores() {
  local language text version code wrong=0
  code=$(sed -n 's/.*versionCode = \([0-9]*\).*/\1/p' android/app/build.gradle.kts)
  version=$(sed -n 's/^version = "\(.*\)"/\1/p' Cargo.toml)
  for language in "${STORE_LOCALES[@]}"; do
    for text in "${ANDROID_TEXTS[@]}" "changelogs/$code.txt:$CHANGELOG_LONGEST"; do
      fits "$ANDROID_PAPERS/$language/${text%:*}" "${text#*:}" || wrong=1
    done
    for text in "${IOS_TEXTS[@]}"; do fits "$IOS_PAPERS/$language/${text%:*}" "${text#*:}" || wrong=1; done
    cmp "$ANDROID_PAPERS/$language/changelogs/$code.txt" "$IOS_PAPERS/$language/release_notes.txt" || wrong=1
    names_backup "$IOS_PAPERS/$language/description.txt" "${OWN_BACKUP[$language]}" || wrong=1
    names_backup "ios/App/${IOS_PURPOSES[$language]}" "${OWN_BACKUP[$language]}" || wrong=1
  done
  if ! diff <(changelog_note "$version") "$ANDROID_PAPERS/en-GB/changelogs/$code.txt"; then
    echo "^ docs/CHANGELOG.md of $version (<) and the stores' release note (>)" && wrong=1
  fi
  [ "$wrong" = 0 ] && echo ok
}

# names_backup FILE WORDS
names_backup() { grep -qF "$2" "$1" || { echo "$1 does not say that the log goes into $2" && return 1; }; }

# fits FILE LONGEST
fits() {
  [ -s "$1" ] || { echo "$1 is not there, or empty" && return 1; }
  local length unit=-m
  [ "${1##*/}" != keywords.txt ] || unit=-c
  length=$(($(LC_ALL=C.UTF-8 wc $unit <"$1") - 1)) # without the end of its last line
  [ "$length" -le "$2" ] || { echo "$1: $length long, the store takes $2" && return 1; }
}

# The paragraph under a version's number in docs/CHANGELOG.md.
changelog_note() { awk -v head="## $1" '$0 == head {on = 1; next} on && /^(-|##)/ {exit} on && NF' docs/CHANGELOG.md; }
