# shellcheck shell=bash
# swift test on Linux. Debian bookworm has no Swift, Debian trixie has: Swift lives in a trixie root of its own,
# made from Debian's packages (3 GB, about 90 s, as root), a package cache outside the tree like Maven's.

SWIFT_ROOT=${SWIFT_ROOT:-$HOME/.cache/swift-trixie}

swift_tests() {
  swift_root || return "$?"
  native_library
  # shellcheck disable=SC2016 # expanded in the root
  step "compile the Swift package and run its tests" in_swift_root 'cd /src/restwater && export LD_LIBRARY_PATH=$PWD/target/debug &&
    swift test --disable-swift-testing --package-path ios/RestwaterKit --scratch-path target/swift -Xlinker -L"$LD_LIBRARY_PATH"'
}

# The root, made at first use; says so where it can't be.
swift_root() {
  if [ "$(id -u)" != 0 ]; then
    echo "not run: Swift's root needs chroot and mount, so it needs root"
    return "$NOT_RUN"
  fi
  if ! command -v apt-get >/dev/null; then
    echo "not run: Swift's root is made from Debian's packages, and there is no apt-get here"
    return "$NOT_RUN"
  fi
  [ -e "$SWIFT_ROOT/restwater-root-made" ] || { debs debootstrap && step "make Swift's root" try make_swift_root; }
  mkdir -p "$SWIFT_ROOT/src/restwater" target/swift
}

# in_swift_root SCRIPT: runs it in the root, with this tree at /src/restwater. The mounts are the shell's own and end
# with it, so that several trees can use the root at once and nothing stays mounted.
in_swift_root() {
  # shellcheck disable=SC2016 # expanded by the inner shell
  SCRIPT=$1 unshare --mount --propagation private bash -euc '
    mount -t proc proc "$0/proc"
    mount --rbind /dev "$0/dev"
    mount --bind "$PWD" "$0/src/restwater"
    exec chroot "$0" /bin/bash -c "$SCRIPT"' "$SWIFT_ROOT" 2>&1
}

make_swift_root() {
  local mirror
  # shellcheck disable=SC2016 # apt's own variable, not the shell's
  mirror=$(apt-get indextargets --format '$(REPO_URI)' | grep -v security | head -1)
  rm -rf --one-file-system "$SWIFT_ROOT"
  mkdir -p "$(dirname "$SWIFT_ROOT")" target/logs
  debootstrap --variant=minbase --include=swiftlang,ca-certificates,libc6-dev,libstdc++-14-dev trixie \
    "$SWIFT_ROOT" "$mirror" >target/logs/debootstrap.log &&
    touch "$SWIFT_ROOT/restwater-root-made"
}
