#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Sets up, builds and passes all tests. `bash tests/run.sh` does everything; it needs nothing beforehand.
#   1. core and db under the address and undefined-behaviour sanitizers
#   2. core once more without them, which also holds it to the time it may take; then app, offscreen
#   3. printing through a print service of its own (cupsd in a temporary folder), measured
#   4. the program as it is installed and packed, looked at by Debian's checkers
#   5. the road through the shop once more in a real window under Xvfb
#   6. the source read over by clang-format and clang-tidy (tests/lint.sh)
# It ends with a line "N passed, N failed".
set -euo pipefail

top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
# shellcheck source=app/packages.sh
. "$top/app/packages.sh"
# shellcheck source=tests/lint.sh
. "$top/tests/lint.sh"

need_packages "to build and test Holdfast" "${build_packages[@]}" libgtest-dev libical-dev sqlite3 xvfb xauth openbox \
    x11-utils procps util-linux poppler-utils zbar-tools locales cups cups-client cups-filters dbus-daemon \
    pulseaudio pulseaudio-utils libcanberra-pulse dpkg-dev lintian desktop-file-utils appstream shared-mime-info \
    man-db groff fish zsh qt6-l10n-tools "${lint_packages[@]}"

started=$SECONDS
passed=0
failed=0

# count_tests PROGRAM LOG ENDED: shows what failed, and counts. A program that does not end well counts as failed even
# where it names no test.
count_tests() {
    local program=$1 log=$2 ended=$3 good bad=0
    if [ "$ended" != 0 ]; then
        cat "$log" >&2
        bad=$(grep -cE '^\[  FAILED  \] .*\([0-9]+ ms\)$' "$log" || true)
        if [ "$bad" = 0 ]; then
            say "$program ended before its end."
            bad=1
        fi
    fi
    good=$(sed -nE 's/^\[  PASSED  \] ([0-9]+) tests?\..*/\1/p' "$log" | tail -n 1)
    passed=$((passed + ${good:-0}))
    failed=$((failed + bad))
}

# run_tests SHARES PROGRAM WORDS...: runs one test program, in so many shares at once.
run_tests() {
    local shares=$1 program=$2 logs share begun=$SECONDS runs=()
    shift 2
    logs=$(mktemp -d)
    say "── ${program#"$top/build/"} $*"
    for ((share = 0; share < shares; share++)); do
        GTEST_TOTAL_SHARDS=$shares GTEST_SHARD_INDEX=$share "$program" --gtest_brief=1 "$@" >"$logs/$share" 2>&1 &
        runs+=($!)
    done
    for ((share = 0; share < shares; share++)); do
        if wait "${runs[share]}"; then
            count_tests "$program" "$logs/$share" 0
        else
            count_tests "$program" "$logs/$share" $?
        fi
    done
    say "   $((SECONDS - begun)) s"
    rm -rf "$logs"
}

# build FOLDER TARGETS WORDS...: configures when new, then builds these targets, eight files at a time (a unity
# build: half the time and less).
build() {
    local folder=$1 targets=$2
    shift 2
    [ -f "$folder/build.ninja" ] || cmake -G Ninja -S "$top" -B "$folder" -DHOLDFAST_TESTS=ON \
        -DHOLDFAST_WARNINGS_AS_ERRORS=ON -DCMAKE_UNITY_BUILD=ON "$@" >&2
    # shellcheck disable=SC2086
    ninja -C "$folder" --quiet $targets >&2
}

say "Building the tests"
# Lines and names are enough to read a failure by, and build in less time than all there is to debug.
build "$top/build/tests" "holdfast_core_tests holdfast_app_tests holdfast_printing_tests holdfast_install_tests" -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_FLAGS_DEBUG=-g1
say "Building core and db with sanitizers"
build "$top/build/sanitize" "holdfast_core_tests holdfast_db_tests" -DCMAKE_BUILD_TYPE=Debug -DHOLDFAST_APP=OFF -DHOLDFAST_SANITIZE=ON

export LC_ALL=C.UTF-8
run_tests 2 "$top/build/sanitize/tests/holdfast_core_tests"
run_tests 2 "$top/build/sanitize/tests/db/holdfast_db_tests"
run_tests 2 "$top/build/tests/tests/holdfast_core_tests"
QT_QPA_PLATFORM=offscreen run_tests 2 "$top/build/tests/tests/holdfast_app_tests"
run_tests 1 "$top/build/tests/tests/holdfast_printing_tests"
run_tests 1 "$top/build/tests/tests/holdfast_install_tests"

say "Once more in a real window"
cat >"$top/build/in-window.sh" <<'WINDOW'
openbox &
manager=$!
sleep 1
HOLDFAST_TEST_DISPLAY=1 QT_QPA_PLATFORM=xcb "$@"
result=$?
kill "$manager" 2>/dev/null
exit $result
WINDOW
in_window=$top/build/in-window
cat >"$in_window" <<WINDOW
#!/usr/bin/env bash
exec xvfb-run -a -s "-screen 0 1366x768x24" bash "$top/build/in-window.sh" "$top/build/tests/tests/holdfast_app_tests" "\$@"
WINDOW
chmod +x "$in_window"
run_tests 1 "$in_window" --gtest_filter='Road.*'

# check WORDS NAME: a check of the source counts as one test.
check() {
    local begun=$SECONDS
    say "── $1"
    if "$2"; then passed=$((passed + 1)); else failed=$((failed + 1)); fi
    say "   $((SECONDS - begun)) s"
}
check "The form of the source" has_its_form
check "What clang-tidy says" is_tidy

say "Took $((SECONDS - started)) s."
echo "$passed passed, $failed failed"
[ "$failed" = 0 ] && [ "$passed" -gt 0 ]
