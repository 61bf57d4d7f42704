# shellcheck shell=bash
# Both shells have the same screens, and ios/README.md says which file draws which. (Keys and pictures are compared where the
# shells run: SharedTagsTest in Kotlin, SharedTagsTests in Swift.) And neither puts a text together: what separates a label and
# its value is not the same in every language, so the core joins them, in one place (core/screen/src/joined.rs).

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
  local sources core joins
  # The log of the system is in English and for developers.
  mapfile -t sources < <(git ls-files android/ui/src/main android/app/src/main ios/RestwaterKit/Sources/RestwaterKit ios/App |
    grep -E '\.(kt|swift)$' | grep -vE '/app/restwater/core/|/System/Log\.swift$')
  joins=$(texts_joined_in "${sources[@]}")
  if [ -n "$joins" ]; then echo "$joins" && echo "^ a text put together by a shell: it belongs into the record" && return 1; fi
  mapfile -t core < <(git ls-files core/screen/src core/report/src core/app/src | grep '\.rs$' | grep -vE '/joined\.rs$|/tests?/|/tests\.rs$')
  [ ${#core[@]} -gt 100 ] || { echo "the core's sources were not found" && return 1; }
  joins=$(texts_joined_in_rust "${core[@]}")
  if [ -n "$joins" ]; then echo "$joins" && echo "^ a text put together by hand: Wording joins texts (core/screen/src/joined.rs)" && return 1; fi
  echo "$(echo "$kotlin" | wc -l) screens in both shells and in the table, and $((${#sources[@]} + ${#core[@]})) files that join no text"
  echo ok
}

# The rows below the mark, without the two of its head.
screens_of_the_table() { sed -n '/^<!-- screens -->/,/^$/p' ios/README.md | sed '1,3d;/^$/d'; }

# texts_joined_in_rust FILE...: the same in Rust, above a file's own tests, without the texts of errors.
texts_joined_in_rust() {
  # shellcheck disable=SC2016 # dollars of awk
  awk '
    FNR == 1 { tests = 0; before = "" }
    before ~ /^ *#\[cfg\(test\)\]$/ && /^ *mod [a-z_]+ \{$/ { tests = 1 }
    { above = before; before = $0 }
    tests || /^ *\/\// || /#\[error\(/ || above ~ /#\[error\($/ { next }
    /((format|write)!\([^"]*|^ *)"[^"]*\{[^"}]*\}[:.,;] / || /(join|push_str)\("[:.,;] / { print FILENAME ":" FNR ":" $0 }
  ' "$@"
}

# texts_joined_in FILE...: the lines on which a value is followed by a mark and a space within a text, or on which such a mark
# is put between parts, in Kotlin or Swift.
texts_joined_in() {
  local mark='\x{a0}? ?[:.,;\x{2013}\x{2014}] '
  # shellcheck disable=SC2016 # dollars of Kotlin
  local value='(\$\{[^}]*\}|\$[A-Za-z_]\w*|\\\((?:[^()]|\([^()]*\))*\))'
  LC_ALL=C.UTF-8 grep -HnP "^(?!\s*(//|\*|/\*)).*(\"[^\"]*$value$mark|\\+ *\"$mark\"|(joinToString\(|separator: ?)\"[^\"]*$mark)" "$@" || true
}
