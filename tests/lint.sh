#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Reads the source over: the form that .clang-format gives it, and the checks of .clang-tidy over core, db and app.
# Sourced by tests/run.sh; run alone it does the same: `bash tests/lint.sh`. Clang 19 is in Debian 12 and 13, and
# forms differ from one version to the next.

lint_packages=(clang-19 clang-tidy-19 clang-format-19)

# Names each file that is not in the form: `git ls-files '*.cpp' '*.h' | xargs clang-format-19 -i` gives it.
has_its_form() {
    (cd "$top" && find core db app tests -name '*.cpp' -o -name '*.h' | sort | xargs -P2 -n60 clang-format-19 --dry-run -Werror)
}

# Several files together, as they are compiled: the headers they share are read once.
is_tidy() {
    local build=$top/build/lint moc ended=0
    [ -f "$build/build.ninja" ] || CC=clang-19 CXX=clang++-19 cmake -G Ninja -S "$top" -B "$build" -DCMAKE_BUILD_TYPE=Debug \
        -DCMAKE_CXX_FLAGS=-Wno-deprecated-declarations -DCMAKE_UNITY_BUILD=ON -DCMAKE_DISABLE_PRECOMPILE_HEADERS=ON >&2
    # What the build writes is included by the rest. What moc writes is asked for by itself: its target would have all
    # libraries built before.
    ninja -C "$build" --quiet core/garment_drawings.cpp db/schema_steps.cpp >&2
    for moc in "$build"/app/CMakeFiles/*_autogen.dir/AutogenInfo.json; do
        cmake -E cmake_autogen "$moc" Debug >&2
    done
    sed -nE 's,^  "file": "(.*/Unity/.*)"\,?$,\1,p' "$build/compile_commands.json" >"$build/files"
    [ -s "$build/files" ] && xargs -a "$build/files" -P2 -n1 clang-tidy-19 -p "$build" --quiet >"$build/tidy.log" 2>/dev/null ||
        ended=$?
    # What is said of a header is said once, however many groups include it.
    grep -E ': (error|warning): ' "$build/tidy.log" | sort -u >&2 || true
    return "$ended"
}

if [ "${BASH_SOURCE[0]}" = "$0" ]; then
    set -euo pipefail
    top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
    # shellcheck source=app/packages.sh
    . "$top/app/packages.sh"
    need_packages "to read the source over" "${build_packages[@]}" "${lint_packages[@]}"
    has_its_form
    is_tidy
fi
