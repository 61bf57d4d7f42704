# shellcheck shell=bash
# The Markdown of the tree: every relative link leads to a file, and to a heading where it names one; every `./dev` command that
# is named exists, and so does the check, part or bench named after it; every file of the tree that is named by a path is there.

check_docs() {
  local file wrong=0 count=0
  while IFS= read -r file; do
    count=$((count + 1))
    links_lead_somewhere "$file" || wrong=1
    commands_exist "$file" || wrong=1
    files_exist "$file" || wrong=1
  done < <(git ls-files '*.md')
  echo "$count documents read"
  [ "$wrong" = 0 ] && [ "$count" -gt 0 ] && echo ok
}

# A file may be named by the end of its path, as `bank/keys.rs`. What is built, or written by each developer, git ignores.
files_exist() {
  local path wrong=0
  while IFS= read -r path; do
    [ -n "$(git ls-files -- "$path" "*/$path")" ] || git check-ignore -q "$path" || { echo "$1: no file $path" && wrong=1; }
  done < <(files_of "$1")
  return "$wrong"
}

# files_of FILE: the paths of files in backticks, with a folder and a suffix; a file may have none.
files_of() {
  # shellcheck disable=SC2016 # a backtick of Markdown
  { grep -oE '`[A-Za-z0-9_./-]+/[A-Za-z0-9_-]+\.(rs|kt|swift|sh|py|R|md|toml|json|jsonl|ftl|sql|xml|yml|tsv|xcprivacy|xcconfig|kts)`' "$1" || true; } |
    tr -d '`' | sed -E 's#^\./##; /\.\.\./d' | sort -u
}

links_lead_somewhere() {
  local link target heading wrong=0
  while IFS= read -r link; do
    target=${link%%#*}
    target=${target:+$(dirname "$1")/$target}
    target=${target:-$1} # a heading of the same file
    if [ ! -e "$target" ]; then
      echo "$1: no $link"
      wrong=1
    elif [[ $link == *#* ]]; then
      heading=${link#*#}
      grep -qxF -- "$heading" <<<"$(headings_of "$target")" || { echo "$1: $target has no heading #$heading" && wrong=1; }
    fi
  done < <(links_of "$1")
  return "$wrong"
}

# links_of FILE: its links and pictures that are files of the tree; a file may have none.
links_of() {
  { grep -oE '\]\([^) ]+|<img src="[^"]+' "$1" || true; } | sed -E 's/^(\]\(|<img src=")//; /^[a-z]+:/d'
}

# The headings as GitHub names them in a link: small letters, no punctuation, hyphens for spaces.
headings_of() {
  sed -n 's/^##* //p' "$1" | tr '[:upper:]' '[:lower:]' | sed 's/[^[:alnum:] _-]//g; s/ /-/g'
}

commands_exist() {
  local task name wrong=0
  while read -r task name; do
    known_task "$task" || { echo "$1: './dev help' has no '$task'" && wrong=1 && continue; }
    [ -z "$name" ] || known_name "$task" "$name" || { echo "$1: './dev $task' has no '$name'" && wrong=1; }
  done < <(commands_of "$1")
  return "$wrong"
}

# Each `./dev TASK` with the small-letter word after it, if there is one; only inside code, where words are commands.
commands_of() {
  # shellcheck disable=SC2016 # a backtick of Markdown
  # `./dev` in a text, or at the beginning of a line of a block of code.
  { grep -oE '(`|^)(\./dev [^`#]*)' "$1" || true; } | sed 's/^`//' |
    awk '{ name = ($3 ~ /^[a-z]+$/) ? $3 : ""; sub(/[^a-z].*/, "", $2); if ($2 != "") print $2, name }' | sort -u
}

# (The helpers' output goes into a here-string, not a pipe: `grep -q` stops reading early, and pipefail would call that wrong.)
known_task() { grep -qE "^\./dev $1( |$)" <<<"$(help)"; }

known_name() {
  case $1 in
    check) [[ " ${CHECKS[*]} " == *" $2 "* ]] ;;
    test) [[ " ${PARTS[*]} " == *" $2 "* ]] ;;
    bench) grep -qxF "$2" <<<"$(bench_names && echo profiles)" ;;
  esac
}
