# shellcheck shell=bash
# Checks of the tree that don't run the app. Each prints what it found and counts as one test.

CHECKS=(format lints layers shell bindings phones shells swiftui xcode network versions docs stores workflows runners apk)
ACTIONLINT=1.7.12
# Crates that open a connection. None of them may be a dependency, direct or indirect.
NETWORK_CRATES='reqwest|hyper|ureq|curl|curl-sys|isahc|attohttpc|surf|tonic|tungstenite|quinn|rustls|native-tls|openssl|openssl-sys|socket2|mio|async-std|smol|async-io|libp2p|trust-dns.*|hickory.*|sentry.*|opentelemetry.*'

run_checks() {
  local name
  local ALL_CHECKS= # for check_apk
  if [ $# = 0 ]; then
    # shellcheck disable=SC2034 # read in apk_check.sh
    ALL_CHECKS=yes
    set -- "${CHECKS[@]}"
  fi
  for name in "$@"; do
    declare -F "check_$name" >/dev/null || { echo "dev check: no '$name'; the checks are ${CHECKS[*]}" >&2 && return 2; }
    part "$name" check "check_$name"
  done
}

check_format() {
  rust rustfmt
  cargo fmt --all --check
  swift_format
  echo ok
}

check_lints() {
  rust clippy
  cargo clippy --quiet --locked --workspace --all-targets -- -D warnings
  echo ok
}

check_shell() {
  tool shellcheck shellcheck
  local scripts
  mapfile -t scripts < <(git ls-files '*.sh' dev .ci/run ':!android/gradlew')
  shellcheck -x "${scripts[@]}"
  echo ok
}

check_runners() { bash tests/runners/runners_test.sh; }

# Whether what the workflows run is there, and then the workflows by actionlint, a Go module; with Go and shellcheck it also
# reads the scripts inside them.
check_workflows() {
  local script
  while IFS= read -r script; do
    [ -x "$script" ] || { echo "a workflow runs $script, which is not there or can't be run" && return 1; }
  done < <(grep -ohE 'run: (\./|\.github/)[a-z./-]+' .github/workflows/*.yml | sed 's/^run: //' | sort -u)
  emulator_abi .github/scripts/android-emulator.sh android/app/build.gradle.kts || return 1
  permission_lint android/app/src/main || return 1
  emulator_comes_to_run .github/workflows/ci.yml || return 1
  for script in .github/workflows/{ci,release}.yml; do
    gradle_of_wrapper android/gradle/wrapper/gradle-wrapper.properties "$script" || return 1
    java_of_tests android/app/src/test "$script" || return 1
  done
  tool shellcheck shellcheck
  local lint=target/tools/actionlint
  if ! command -v go >/dev/null && [ ! -x $lint ]; then
    echo "not run: actionlint is installed by Go, and there is no Go here"
    return "$NOT_RUN"
  fi
  if [ "$($lint --version 2>/dev/null | head -1)" != "v$ACTIONLINT" ]; then
    step "install actionlint $ACTIONLINT" try env GOBIN="$TREE/target/tools" go install "github.com/rhysd/actionlint/cmd/actionlint@v$ACTIONLINT"
  fi
  $lint -no-color
  echo ok
}

# emulator_abi SCRIPT GRADLE: a debug build holds the core for one ABI, so Gradle has to be told that of the emulator's image.
emulator_abi() {
  local abi
  abi=$(sed -n 's/^IMAGE=".*;\(.*\)"$/\1/p' "$1")
  [ -n "$abi" ] || { echo "$1 names no image" && return 1; }
  grep -q "gradle_run .*-Pandroid.injected.build.abi=$abi\( \|$\)" "$1" || { echo "$1: the APK would hold no library for the emulator's $abi" && return 1; }
  grep -q "\"$abi\"" "$2" || { echo "$2 does not know the emulator's ABI $abi" && return 1; }
}

check_bindings() {
  bindings_drift
  echo ok
}

# Core and bindings for the phones' targets. There is no Android NDK and no Apple SDK here, so nothing is linked and no C
# is compiled. libsqlite3-sys is told to expect a ready SQLite; it still uses the bindings of its bundled version, so the
# Rust that is checked is the Rust that ships.
check_phones() {
  rust
  local target
  for target in aarch64-linux-android armv7-linux-androideabi aarch64-apple-ios aarch64-apple-ios-sim; do
    if rust_target "$target"; then
      check_for "$target"
      echo "$target checked"
    else
      # Its standard library can't be downloaded, so it is checked from source, by an unstable switch of the compiler. That
      # happens in a folder of its own: the switch would cause everything else to be built again.
      try rustup component add rust-src
      RUSTC_BOOTSTRAP=1 check_for "$target" -Z build-std=std,panic_unwind --target-dir target/std-from-source
      echo "$target checked, with the standard library from source"
    fi
  done
  echo ok
}

# check_for TARGET CARGO-OPTION...
check_for() {
  LIBSQLITE3_SYS_USE_PKG_CONFIG=1 cargo check --quiet --locked -p restwater-bindings --no-default-features --target "$@"
}

# Dependencies only point down, between the crates of the core and inside each.
check_layers() {
  rust
  tool python3 python3
  python3 tests/runners/layers.py
}

# No crate, class or permission that ships can reach a network.
check_network() {
  rust
  local crates features found=0
  crates=$(cargo tree --locked -p restwater-bindings -e normal --target all --prefix none --format '{p}') || return 1
  features=$(cargo tree --locked -p restwater-bindings -e normal,features --target all --prefix none) || return 1
  grep -q '^restwater-bindings' <<<"$crates" || { echo "cargo tree does not name restwater-bindings" && return 1; }
  if awk '{print $1}' <<<"$crates" | sort -u | grep -xE "$NETWORK_CRATES"; then
    echo "^ crates that open a connection" && found=1
  fi
  if grep 'tokio feature "net"' <<<"$features"; then
    echo "^ tokio with its network part" && found=1
  fi
  absent "Rust's own sockets" 'std::net|TcpStream|UdpSocket' core bindings || found=1
  absent "a network class in the Android tree" 'java\.net\.(URL|Http|Socket|Server)|HttpURLConnection|okhttp|ktor|android\.net\.(Connectivity|http)|WebView' android || found=1
  absent "a network permission" 'uses-permission[^>]*(INTERNET|NETWORK_STATE|WIFI)' android || found=1
  absent "a network class or entitlement in the iOS tree" 'URLSession|NWConnection|import Network|CFSocket|WKWebView|com\.apple\.security\.network' ios ':!*.md' || found=1
  echo "$(wc -l <<<"$crates") crates and the sources of core, bindings, android and ios looked through"
  [ "$found" = 0 ] && echo ok
}

# absent WHAT PATTERN PATH...: nothing in these paths matches. git grep says 1 when it found nothing; anything above is an error.
absent() {
  local what=$1 pattern=$2 status=0
  shift 2
  git grep -nE "$pattern" -- "$@" || status=$?
  case $status in
    1) return 0 ;;
    0) echo "^ $what" ;;
    *) echo "git grep failed ($status) when it looked for $what" ;;
  esac
  return 1
}

# The phone build has the same library versions as the Robolectric run, and there is one Kotlin version everywhere. The tooling
# for previews has Compose's own version and is only in builds on a developer's machine.
check_versions() {
  local drift=0 count=0 module version
  grep -q "<kotlin>$KOTLIN</kotlin>" "$DESKTOP/pom.xml" || { echo "$DESKTOP/pom.xml: another Kotlin than $KOTLIN" && drift=1; }
  while read -r module version; do
    count=$((count + 1))
    version=$(catalogue "$version")
    grep -qxF "$module:$version" tests/runners/android-libraries.txt tests/runners/android-test-libraries.txt tests/runners/android-versions.lock ||
      { echo "$module:$version is in the catalogue, not in what ./dev apk and ./dev test android resolve" && drift=1; }
  done < <(sed -n 's/.*module = "\([^"]*\)", version.ref = "\([^"]*\)".*/\1 \2/p' "$CATALOGUE" | grep -vE 'kotlin-gradle-plugin|ui-tooling')
  heap_of_tests android/app/build.gradle.kts || drift=1
  echo "$count versions compared"
  [ "$drift" = 0 ] && [ "$count" -gt 0 ] && echo ok
}
