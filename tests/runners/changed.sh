# shellcheck shell=bash
# `./dev test --changed` and `./dev watch CRATE`: the tests that a change can affect. Cargo knows which crate a file
# belongs to and which crates use that one; what each shell is made of is listed here.

BACON=3.26.0

# Runs the parts that the working tree and the commits since main touch.
test_changed() {
  rust || return 1
  tool jq jq
  local files crates parts name
  files=$(changed_files)
  mapfile -t crates < <(crates_of <<<"$files" | dependents)
  mapfile -t parts < <(parts_of "$files" "${crates[@]}")
  echo "changed since $(branch_point | cut -c1-9): ${crates[*]:-no crate}; parts: ${parts[*]:-none}"
  for name in "${parts[@]}"; do
    if [ "$name" = rust ]; then
      part rust cargo rust_tests "${crates[@]}"
    else
      run_parts "$name"
    fi
  done
  total
}

# Where this branch left main; without a main, the last commit.
branch_point() {
  local main
  for main in main origin/main; do
    git merge-base HEAD "$main" 2>/dev/null && return 0
  done
  git rev-parse HEAD
}

# Every file that differs from the branch point, committed or not, and every new one.
changed_files() {
  git diff --name-only "$(branch_point)" --
  git ls-files --others --exclude-standard
}

# Reads files, prints the packages that contain them. A file that concerns all packages prints them all.
crates_of() {
  local file folders longest name folder
  folders=$(crate_folders)
  while IFS= read -r file; do
    case $file in
      Cargo.toml | Cargo.lock | rust-toolchain.toml | .cargo/* | tests/runners/rust.sh)
        cut -d' ' -f1 <<<"$folders"
        ;;
      core/locales/*) echo restwater-screen ;; # the words are in no crate's folder; this one is compiled with them
      tests/runners/* | *.md) ;;
      *)
        longest=
        while read -r name folder; do
          if [[ $file == "$folder"/* && ${#folder} -gt ${#longest} ]]; then longest=$folder found=$name; fi
        done <<<"$folders"
        [ -z "$longest" ] || echo "$found"
        ;;
    esac
  done | sort -u
}

# Each package of the workspace that is built by default, and its folder.
crate_folders() {
  cargo metadata --no-deps --format-version 1 --locked | jq -r --arg tree "$TREE/" '
    .workspace_default_members as $members | .packages[] | select(.id | IN($members[]))
    | "\(.name) \(.manifest_path | ltrimstr($tree) | rtrimstr("/Cargo.toml"))"'
}

# Reads packages, prints them and every package of the workspace that uses one of them, directly or through others.
dependents() {
  local touched
  mapfile -t touched
  cargo metadata --no-deps --format-version 1 --locked | jq -r '
    [.packages[] | {name, uses: [.dependencies[] | select(.path) | .name]}] as $all
    | def grown: . as $have | [$all[] | select((.name | IN($have[])) or any(.uses[]; IN($have[]))) | .name];
      def closure: grown as $next | if ($next | length) == length then . else ($next | closure) end;
      $ARGS.positional | closure[]' --args "${touched[@]}"
}

# parts_of FILES CRATE...: the parts of ./dev test. All shells load the bindings, play the day files and show the typeface. Two
# documents are tested: the SQL of pooling.md is run, and the taps of first-cast.md are counted in the window.
parts_of() {
  local files=$1
  shift
  {
    [ $# = 0 ] || echo rust
    [[ " $* " != *" restwater-tests "* ]] || printf '%s\n' reference pool
    [[ " $* " != *" restwater-bindings "* ]] || printf '%s\n' kotlin android swift
    sed -nE '
      s#^tests/(days|tests/snapshots)/.*#kotlin\nandroid\nswift#p
      s#^(tests/pool/.*|docs/pooling\.md)$#pool#p
      s#^docs/first-cast\.md$#kotlin#p
      s#^core/face/res/.*#kotlin\nandroid\nswift#p
      s#^android/(ui/|gradle/).*#kotlin\nandroid#p
      s#^android/desktop/.*#kotlin#p
      s#^android/app/.*#android#p
      s#^ios/RestwaterKit/.*#swift#p
      s#^tests/runners/(desktop|native)\.sh$#kotlin#p
      s#^tests/runners/(robolectric\.sh|native\.sh|apk_libraries\.sh|android-.*)$#android#p
      s#^tests/runners/(swift|native)\.sh$#swift#p
      s#^(dev|tests/runners/(count|install)\.sh)$#rust\nreference\npool\nkotlin\nandroid\nswift#p' <<<"$files"
  } | awk '{named[$0]} END {n = split("rust reference pool kotlin android swift", order); for (i = 1; i <= n; i++) if (order[i] in named) print order[i]}'
}

# watch_crate CRATE: its tests again at every save, by bacon; `waits` is short for `restwater-waits`.
watch_crate() {
  [ $# = 1 ] || { echo "usage: ./dev watch CRATE" >&2 && return 2; }
  rust || return 1
  tool jq jq
  local names name
  names=$(crate_folders | cut -d' ' -f1)
  name=$(grep -xE "(restwater-)?$1" <<<"$names" | head -1) || true
  [ -n "$name" ] || { echo "dev watch: no crate '$1'; the crates are" "$(paste -sd' ' <<<"$names")" >&2 && return 2; }
  if [ "$(bacon --version 2>/dev/null)" != "bacon $BACON" ]; then
    step "install bacon $BACON, once" try cargo install --locked "bacon@$BACON"
  fi
  bacon --job test -- --package "$name"
}
