# shellcheck shell=bash
# What the scripts of the workflows share. Each of them can be run by hand: it first prints the comment at its head, which
# says what it is about to do, and with --help it stops there.

cd "$(dirname "${BASH_SOURCE[0]}")/../.." || exit
TREE=$PWD
export TREE

about() {
  sed -n '2,/^[^#]/{s/^# \{0,1\}//p;}' "$TREE/.github/scripts/$(basename "$0")"
  case ${1:-} in -h | --help) exit 0 ;; esac
}

# needs COMMAND HINT: stops with a hint where a command is missing.
needs() { command -v "$1" >/dev/null || { echo "$(basename "$0"): needs $1: $2" >&2 && exit 1; }; }

# The compiler that rust-toolchain.toml names; a hosted machine has another one.
rust_of_the_tree() {
  needs rustup "https://rustup.rs"
  rustc --version || rustup toolchain install
}

# The Gradle of the tree where it has a wrapper, else the machine's own.
gradle_run() (
  cd "$TREE/android" || exit
  if [ -x gradlew ]; then ./gradlew --console=plain "$@"; else gradle --console=plain "$@"; fi
)
