# shellcheck shell=bash
# swift test on Linux. Debian bookworm has no Swift but Debian trixie has, so Swift runs in a trixie root of its own,
# made from Debian's packages (2.5 GB, one to five minutes, as root), a package cache outside the tree like Maven's.

SWIFT_ROOT=${SWIFT_ROOT:-$HOME/.cache/swift-trixie}

swift_tests() {
  swift_can_be_here || return "$?"
  # At the first run the root comes over the network while the core is compiled.
  native_library &
  local core=$!
  swift_root
  wait "$core"
  # shellcheck disable=SC2016 # expanded in the root
  step "compile the Swift package and run its tests" in_swift_root 'cd /src/restwater && export LD_LIBRARY_PATH=$PWD/target/debug &&
    swift test --disable-swift-testing --package-path ios/RestwaterKit --scratch-path target/swift -Xlinker -L"$LD_LIBRARY_PATH"'
}

# The Swift of the tree by swift-format, which Debian's swiftlang brings; generated files are left out. If the
# root can't be made, this is reported and the rest of the check counts.
swift_format() {
  swift_can_be_here || return 0
  swift_root
  mkdir -p target/logs
  git ls-files 'ios/*.swift' ':!ios/RestwaterKit/Sources/RestwaterCore' >target/logs/swift-files
  in_swift_root 'cd /src/restwater &&
    xargs -a target/logs/swift-files /usr/libexec/swift/bin/swift-format lint --strict --configuration ios/.swift-format'
}

# The root, which is made at first use; if that is impossible, the reason is printed.
swift_root() {
  swift_can_be_here || return "$?"
  [ -e "$SWIFT_ROOT/restwater-root-made" ] || { debs mmdebstrap && step "make Swift's root" try make_swift_root; } || return 1
  mkdir -p "$SWIFT_ROOT/src/restwater" target/swift
}

swift_can_be_here() {
  if [ "$(id -u)" != 0 ]; then
    echo "not run: Swift's root needs chroot and mount, so it needs root"
    return "$NOT_RUN"
  fi
  if ! command -v apt-get >/dev/null; then
    echo "not run: Swift's root is made from Debian's packages, and there is no apt-get here"
    return "$NOT_RUN"
  fi
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
  # A third faster here than debootstrap: packages are fetched side by side and dpkg does not wait for the disk.
  mmdebstrap --mode=root --variant=essential --include=swiftlang,ca-certificates,libc6-dev,libstdc++-14-dev trixie \
    "$SWIFT_ROOT" "$mirror" >target/logs/mmdebstrap.log 2>&1 &&
    touch "$SWIFT_ROOT/restwater-root-made"
}
