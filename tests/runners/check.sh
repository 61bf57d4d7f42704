# shellcheck shell=bash
# What can be said about the tree without running it. Each check prints what it found and counts as one.

CHECKS=(format lints shell bindings phones shells swiftui network versions links apk)
# Crates that open a connection. Restwater has none of them, whichever way they would come in.
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
    declare -F "check_$name" >/dev/null || { echo "dev check: no '$name'; there are ${CHECKS[*]}" >&2 && return 2; }
    part "$name" check "check_$name"
  done
}

# A check has no runner that counts: its last line says ok.
count_check() { awk '{last=$0} END{print (last=="ok") ? "1 0" : "0 1"}'; }

check_format() {
  rust rustfmt
  cargo fmt --all --check
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
  mapfile -t scripts < <(git ls-files '*.sh' dev .ci/run)
  shellcheck -x "${scripts[@]}"
  echo ok
}

check_bindings() {
  bindings_drift
  echo ok
}

# Core and bindings as the phones' targets see them. There is no Android NDK and no Apple SDK here, so nothing is
# linked and no C is compiled: libsqlite3-sys is told to expect a ready SQLite, and then still uses the very
# bindings of its bundled version, so that the Rust that is checked is the Rust that ships.
check_phones() {
  rust
  local target
  for target in aarch64-linux-android armv7-linux-androideabi aarch64-apple-ios aarch64-apple-ios-sim; do
    if rust_target "$target"; then
      check_for "$target"
      echo "$target checked"
    else
      # Its standard library is not to be had ready-made: it is checked from its source, by the compiler's unstable
      # switch for that, in a folder of its own since the switch would have everything else built again.
      try rustup component add rust-src
      RUSTC_BOOTSTRAP=1 check_for "$target" -Z build-std=std,panic_unwind --target-dir target/std-from-source
      echo "$target checked, with the standard library from source"
    fi
  done
  echo ok
}

# check_for TARGET CARGO-OPTION...
check_for() {
  LIBSQLITE3_SYS_USE_PKG_CONFIG=1 cargo check --quiet --locked -p restwater-core -p restwater-bindings --target "$@"
}

# Nothing that ships can reach a network: no crate, no class, no permission.
check_network() {
  rust
  local found=0
  if cargo tree --locked -p restwater-bindings -e normal --target all --prefix none --format '{p}' |
    awk '{print $1}' | sort -u | grep -xE "$NETWORK_CRATES"; then
    echo "^ crates that open a connection" && found=1
  fi
  if cargo tree --locked -p restwater-bindings -e normal,features --target all --prefix none | grep 'tokio feature "net"'; then
    echo "^ tokio with its network part" && found=1
  fi
  if git grep -nE 'std::net|TcpStream|UdpSocket' -- core bindings; then
    echo "^ Rust's own sockets" && found=1
  fi
  if git grep -nE 'java\.net\.(URL|Http|Socket|Server)|HttpURLConnection|okhttp|ktor|android\.net\.(Connectivity|http)|WebView' -- android; then
    echo "^ a network class in the Android tree" && found=1
  fi
  if git grep -nE 'uses-permission[^>]*(INTERNET|NETWORK_STATE|WIFI)' -- android; then
    echo "^ a network permission" && found=1
  fi
  if git grep -nE 'URLSession|NWConnection|import Network|CFSocket|WKWebView|com\.apple\.security\.network' -- ios ':!*.md'; then
    echo "^ a network class or entitlement in the iOS tree" && found=1
  fi
  [ "$found" = 0 ] && echo ok
}

# The libraries of the phone build are those that the Robolectric run resolves, and Kotlin is one everywhere.
check_versions() {
  local drift=0 module version
  grep -q "<kotlin>$KOTLIN</kotlin>" "$DESKTOP/pom.xml" || { echo "$DESKTOP/pom.xml: another Kotlin than $KOTLIN" && drift=1; }
  while read -r module version; do
    version=$(catalogue "$version")
    grep -qxF "$module:$version" tests/runners/android-libraries.txt tests/runners/android-test-libraries.txt tests/runners/android-versions.lock ||
      { echo "$module:$version is in the catalogue, not in what ./dev apk and ./dev test android resolve" && drift=1; }
  done < <(sed -n 's/.*module = "\([^"]*\)", version.ref = "\([^"]*\)".*/\1 \2/p' "$CATALOGUE" | grep -v kotlin-gradle-plugin)
  [ "$drift" = 0 ] && echo ok
}

# Every relative link and picture of the Markdown in the tree leads somewhere.
check_links() {
  local file link broken=0
  while IFS= read -r file; do
    while IFS= read -r link; do
      [ -e "$(dirname "$file")/$link" ] || { echo "$file: no $link" && broken=1; }
    done < <(links_of "$file")
  done < <(git ls-files '*.md')
  [ "$broken" = 0 ] && echo ok
}

# links_of FILE: its links and pictures that are files of the tree; a file may have none.
links_of() {
  { grep -oE '\]\([^)# ]+|<img src="[^"]+' "$1" || true; } | sed -E 's/^(\]\(|<img src=")//; /^[a-z]+:/d'
}
