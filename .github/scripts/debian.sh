#!/usr/bin/env bash
# Prepares a Debian container that has Rust and git for `./dev`: lets git work in the mounted tree, which belongs to another
# user. Everything else is installed by `./dev` itself when a part needs it.
set -euo pipefail
# shellcheck source=.github/scripts/lib.sh
. "$(dirname "$0")/lib.sh"
about "$@"
needs git "apt-get install git"
needs cargo "https://rustup.rs"
git config --global --get-all safe.directory 2>/dev/null | grep -qxF "$TREE" || git config --global --add safe.directory "$TREE"
git ls-files | wc -l | xargs echo "files in the tree:"
rustc --version
