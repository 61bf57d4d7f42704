# shellcheck shell=bash
# Checks the Xcode project on Linux, with a library that reads its format: every setting that a phone build depends on is
# asserted.

PBXPROJ=4.3.3
OPENSTEP_PARSER=2.0.3
DOCOPT=0.6.2

check_xcode() {
  python_with_pbxproj
  target/xcode/bin/python tests/runners/xcode_project.py
  echo ok
}

# A Python of its own under target/, with the library pinned.
python_with_pbxproj() {
  [ -e "target/xcode/pbxproj-$PBXPROJ" ] && return 0
  debs python3-venv
  mkdir -p target
  python3 -m venv target/xcode
  try target/xcode/bin/pip install --quiet --disable-pip-version-check --no-deps \
    "pbxproj==$PBXPROJ" "openstep-parser==$OPENSTEP_PARSER" "docopt==$DOCOPT"
  touch "target/xcode/pbxproj-$PBXPROJ"
}
