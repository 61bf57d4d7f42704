#!/usr/bin/env bash
# Size of the release library beside an empty uniffi library with bundled SQLite, both of the release profile, as they are
# built and as a phone gets them (without symbols: Gradle and Xcode strip them as they pack).
set -euo pipefail
cd "$(dirname "$0")/../.."
MOST=4000000

cargo build --release --quiet --no-default-features -p restwater-bindings -p restwater-empty
FOLDER=target/bench-library
mkdir -p $FOLDER
for name in restwater restwater_empty; do
  cp "target/release/lib$name.so" "$FOLDER/$name.so"
  strip --strip-unneeded -o "$FOLDER/$name.stripped.so" "$FOLDER/$name.so"
done

mb() { awk -v b="$1" 'BEGIN { printf "%.2f MB", b / 1e6 }'; }

# row WHAT SUFFIX JUDGED: goals are for what a phone gets.
row() {
  local ours empty outcome=held goal="<= 4 MB above it"
  ours=$(stat -c %s "$FOLDER/restwater$2.so")
  empty=$(stat -c %s "$FOLDER/restwater_empty$2.so")
  [ $((ours - empty)) -le $MOST ] || outcome=missed
  [ "$3" = judged ] || { outcome=noted && goal=-; }
  printf 'bench\tlibrary: %s\t%s\t%s empty library\t%s\t%s\t%s\n' "$1" "$(mb "$ours")" "$(mb "$empty")" \
    "$(awk -v a="$ours" -v b="$empty" 'BEGIN { printf "%.2f", a / b }')" "$goal" "$outcome"
}

row "as a phone gets it" .stripped judged
row "with its symbols" "" noted
