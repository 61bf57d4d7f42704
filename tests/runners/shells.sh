# shellcheck shell=bash
# Both shells have the same screens, and ios/README.md says which file draws which. (Keys and pictures are compared where
# the shells run: SharedTagsTest in Kotlin, SharedTagsTests in Swift.)

check_shells() {
  local kotlin swift table file
  kotlin=$(awk '/^enum class Showing/{on=1} on; on && (/^ *;$/ || /}$/){exit}' android/ui/src/main/kotlin/app/restwater/ui/Showing.kt |
    sed 's/Which\.[A-Z_]*//g' | grep -oE '\b[A-Z_]{3,}\b' | sort)
  swift=$(sed -n 's/^    case \([a-zA-Z, ]*\)$/\1/p' ios/RestwaterKit/Sources/RestwaterKit/State/Showing.swift |
    tr -d ' ' | tr , '\n' | sed 's/\([A-Z]\)/_\1/g' | tr '[:lower:]' '[:upper:]' | sort)
  table=$(screens_of_the_table | awk -F'|' '{gsub(/ /, "", $2); print $2}' | tr , '\n' | sort)
  [ -n "$kotlin" ] || { echo "no screens found in Kotlin" && return 1; }
  if ! diff <(echo "$kotlin") <(echo "$swift"); then echo "^ Android's screens (<) and those of iOS (>)" && return 1; fi
  if ! diff <(echo "$kotlin") <(echo "$table"); then echo "^ the screens (<) and the table of ios/README.md (>)" && return 1; fi
  while IFS= read -r file; do
    [ -n "$(git ls-files "android/ui/*/$file" "ios/RestwaterKit/Sources/RestwaterKit/Screens/$file")" ] ||
      { echo "ios/README.md: no $file" && return 1; }
  done < <(screens_of_the_table | grep -oE '[A-Za-z]+\.(kt|swift)')
  echo "$(echo "$kotlin" | wc -l) screens in both shells and in the table"
  echo ok
}

# The rows below the mark, without the two of its head.
screens_of_the_table() { sed -n '/^<!-- screens -->/,/^$/p' ios/README.md | sed '1,3d;/^$/d'; }
