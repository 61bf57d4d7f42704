#!/usr/bin/env bash
# release.sh TAG [publish]: checks that TAG is the version that Cargo.toml, Gradle and the changelog name, writes SHA256SUMS and
# notes.md beside the files in target/release-files, and with `publish` makes a draft release of them on GitHub (gh).
set -euo pipefail
# shellcheck source=.github/scripts/lib.sh
. "$(dirname "$0")/lib.sh"
about "$@"
# shellcheck source=tests/runners/stores.sh
. tests/runners/stores.sh
tag=${1:?usage: release.sh TAG [publish]}
version=${tag#v}
grep -qx "version = \"$version\"" Cargo.toml || { echo "Cargo.toml has another version than $version" >&2 && exit 1; }
grep -q "versionName = \"$version\"" android/app/build.gradle.kts || { echo "Gradle has another version than $version" >&2 && exit 1; }
cd target/release-files
rm -f SHA256SUMS notes.md
ls ./*.apk ./*.aab ./*-ios-unsigned.xcarchive.zip >/dev/null
sha256sum -- *.apk *.aab *.zip >SHA256SUMS
(cd "$TREE" && changelog_note "$version") >notes.md
[ -s notes.md ] || { echo "docs/CHANGELOG.md says nothing about $version" >&2 && exit 1; }
printf '\nThe files are not signed. Their checksums are in SHA256SUMS.\n' >>notes.md
cat SHA256SUMS notes.md
if [ "${2:-}" = publish ]; then
  needs gh "https://cli.github.com"
  gh release create "$tag" --draft --verify-tag --title "Restwater $version" --notes-file notes.md -- *.apk *.aab *.zip SHA256SUMS
fi
