# shellcheck shell=bash
# What a fresh machine lacks: installed by the system's own package clients, or named when that can't be done.

say() { printf '\n== %s\n' "$*"; }

# try COMMAND...: up to four times with growing pauses; registries and locks fail now and then.
try() {
  local n
  for n in 1 2 3; do
    "$@" && return 0
    echo "dev: failed, again in $((n * 10)) s: $*" >&2
    sleep $((n * 10))
  done
  "$@"
}

has_deb() { [ "$(dpkg-query -W -f '${db:Status-Abbrev}' "$1" 2>/dev/null)" = 'ii ' ]; }

# debs PACKAGE...: Debian packages, only those missing.
debs() {
  local missing=() package
  for package in "$@"; do
    command -v dpkg-query >/dev/null && has_deb "$package" || missing+=("$package")
  done
  [ ${#missing[@]} -gt 0 ] || return 0
  if [ "$(id -u)" != 0 ] || ! command -v apt-get >/dev/null; then
    echo "dev: please install: ${missing[*]}   (on Debian as root: apt-get install ${missing[*]})" >&2
    return 1
  fi
  step "install ${missing[*]}" try install_debs "${missing[@]}"
}

# Two parts at the same time may both miss something; apt refuses the second instead of waiting.
install_debs() (
  exec 9>"${TMPDIR:-/tmp}/restwater-apt.lock"
  flock 9
  apt-get update -qq >&2 &&
    DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends -o DPkg::Lock::Timeout=300 "$@" >/dev/null
)

# tool COMMAND PACKAGE: installs the command from its Debian package unless it is there already.
tool() { command -v "$1" >/dev/null || debs "$2"; }

# Rust itself with the parts named (clippy, rustfmt).
rust() {
  if ! command -v cargo >/dev/null; then
    echo "dev: please install Rust $(pinned_rust) with rustup" >&2
    return 1
  fi
  pinned_toolchain || return 1
  local part
  for part in "$@"; do
    [ "$part" = rustfmt ] && cargo fmt --version >/dev/null 2>&1 && continue
    [ "$part" = clippy ] && cargo clippy --version >/dev/null 2>&1 && continue
    try rustup component add "$part" || return 1
  done
}

pinned_rust() { sed -n 's/^channel = "\(.*\)"/\1/p' "$TREE/rust-toolchain.toml"; }

# The release that rust-toolchain.toml names. A machine may have it under another name (`stable`) and not be able to
# download it once more: then that one is used. Without rustup the installed cargo is used.
pinned_toolchain() {
  command -v rustup >/dev/null || return 0
  (cd "$TREE" && rustc --version >/dev/null 2>&1) && return 0
  local default
  default=$(cd / && rustup show active-toolchain 2>/dev/null | cut -d' ' -f1)
  if [ -n "$default" ] && rustc "+$default" --version 2>/dev/null | grep -qF "rustc $(pinned_rust) "; then
    export RUSTUP_TOOLCHAIN=$default
    return 0
  fi
  step "install Rust $(pinned_rust)" try rustup toolchain install
}

# rust_target TRIPLE: the standard library of a phone's target.
rust_target() {
  local said n
  for n in 1 2 3 4; do
    rustup target list --installed | grep -qx "$1" && return 0
    said=$(RUST_BACKTRACE=0 rustup target add "$1" 2>&1) && return 0
    # If the registry says that there is none, that is final; any other error may be the network's.
    grep -q 'status code: 404\|does not contain component' <<<"$said" && return 1
    sleep $((n * 5))
  done
  echo "$said" >&2
  return 1
}

# A JDK of version 17 and Maven.
java_tools() {
  tool javac openjdk-17-jdk-headless && tool mvn maven
}

# mvn, which tries again when the registry failed, but not when our own code did.
maven() {
  local log n
  mkdir -p target/logs
  log=$(mktemp target/logs/maven.XXXXXX)
  for n in 1 2 3 4; do
    # CI leaves no compiler daemon behind; elsewhere it makes the next build faster.
    mvn -B -Dstyle.color=never --no-transfer-progress ${CI:+-Dkotlin.compiler.daemon=false} -Dmaven.wagon.http.retryHandler.count=5 "$@" 2>&1 | tee "$log"
    if [ "${PIPESTATUS[0]}" = 0 ]; then
      rm -f "$log"
      return 0
    fi
    grep -q 'Could not transfer\|Could not resolve\|Non-resolvable\|Could not find artifact' "$log" || break
    [ "$n" = 4 ] || { echo "dev: Maven could not fetch, again in $((n * 10)) s" >&2 && sleep $((n * 10)); }
  done
  rm -f "$log"
  return 1
}
