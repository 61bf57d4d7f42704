# shellcheck shell=bash
# The screens in a phone-sized window on a PC: Kotlin built by Maven over the library of the dev profile.

DESKTOP=android/desktop

# What Compose needs to draw, on a screen or without one.
drawing() { debs libgl1 fontconfig fonts-dejavu-core; }

kotlin_tests() {
  java_tools
  drawing
  windows
  debs xvfb
  native_library
  step "compile the screens" maven -q -f $DESKTOP/pom.xml test-compile
  step "run their tests" with_display maven -f $DESKTOP/pom.xml test
}

# with_display COMMAND...: with a virtual display if the machine has none, so that the window can be clicked.
with_display() {
  if [ -n "${DISPLAY:-}" ] || ! command -v Xvfb >/dev/null; then
    "$@"
    return
  fi
  local number=$PWD/target/logs/display server status=0
  mkdir -p target/logs
  : >"$number"
  Xvfb -displayfd 3 -screen 0 1600x1200x24 -nolisten tcp 3>"$number" 2>/dev/null &
  server=$!
  until [ -s "$number" ] || ! kill -0 $server 2>/dev/null; do sleep 0.1; done
  DISPLAY=:$(cat "$number") "$@" || status=$?
  kill $server
  return $status
}

# A window needs the JDK's windowing half too.
windows() {
  find -L "$(dirname "$(readlink -f "$(command -v java)")")/../lib" -name libawt_xawt.so | grep -q . || debs openjdk-17-jre
}

# Compiles the desktop app when a source is newer than the last build, and notes its class path.
desktop_app() {
  java_tools
  drawing
  native_library
  local made=target/desktop/class-path
  if [ ! -e $made ] || [ -n "$(find android/ui/src $DESKTOP/src/main $DESKTOP/pom.xml -newer $made -print -quit)" ]; then
    step "compile the screens" maven -q -f $DESKTOP/pom.xml compile dependency:build-classpath -Dmdep.outputFile="$PWD/$made.new"
    mv $made.new $made
  fi
}

# quietly COMMAND...: without JNA's remark about Rust's worker threads, which are still attached when the JVM ends: nothing
# is lost by it, and it reads like a failure.
quietly() { "$@" 2> >(grep --line-buffered -v 'could not detach thread' >&2); }

# desktop_java CLASS ARGUMENT...: a main class of the desktop app.
desktop_java() {
  quietly java -Djna.library.path="$PWD/$LIBRARY" -cp "$PWD/target/desktop/classes:$(cat target/desktop/class-path)" "$@"
}

# run [DATA]: a window on the log in the folder DATA; without a display, the demo day into target/screens.
run_app() {
  if [ -z "${DISPLAY:-}" ]; then
    desktop_app
    # Not as a step, since the output is what matters: the advice over the day.
    play_day tests/days/demo.jsonl target/screens
    echo "There is no display: pictures of the demo day are in target/screens."
    return
  fi
  windows
  desktop_app
  desktop_java app.restwater.desktop.MainKt "${1:-${XDG_DATA_HOME:-$HOME/.local/share}/restwater}"
}

# play DAY OUT [WIDTHxHEIGHT@PIXELS_PER_MM [LANGUAGE]]: a day file through the real actions and screens, headless.
play() {
  if [ $# -lt 2 ] || [ $# -gt 4 ]; then
    echo "usage: ./dev play DAY OUT [WIDTHxHEIGHT@PX_PER_MM [LANGUAGE]]" >&2
    return 2
  fi
  desktop_app
  play_day "$@"
}

# play_day DAY OUT [WIDTHxHEIGHT@PIXELS_PER_MM [LANGUAGE]]: by the app that desktop_app has built.
play_day() {
  # The pictures are in English if no language is given, whatever that of this machine.
  desktop_java -Djava.awt.headless=true -Duser.language=en -Duser.country=GB app.restwater.desktop.PlayKt "$@"
}

# kotlin_bench act|ffi|ui: timed through the bindings, on the real screens; compiled with the tests, beside a bare SQLite
# and an empty library.
kotlin_bench() {
  desktop_app
  release_library
  cargo build --release --quiet -p restwater-empty
  maven -q -f $DESKTOP/pom.xml test-compile dependency:build-classpath -DincludeScope=test -Dmdep.outputFile="$PWD/target/desktop/test-class-path"
  java -Djava.awt.headless=true -Djna.library.path="$PWD/$LIBRARY" \
    -cp "$PWD/target/desktop/test-classes:$PWD/target/desktop/classes:$(cat target/desktop/test-class-path)" app.restwater.desktop.BenchKt "$1"
}
