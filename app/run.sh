#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Sets up, builds and opens Holdfast. Further words go to the program:
#   bash app/run.sh --demo                       the shop of the demo
#   bash app/run.sh --demo report walk --json    a report of it on standard output
# What this script says goes to standard error. With no display, `--demo` alone draws the tour into build/tour
# and prints the day's walk.
set -euo pipefail

top=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
# shellcheck source=app/packages.sh
. "$top/app/packages.sh"

need_packages "to build Holdfast" "${build_packages[@]}"

build=$top/build/release
if [ ! -f "$build/build.ninja" ]; then
    say "Preparing the build in build/release"
    cmake -G Ninja -S "$top" -B "$build" -DCMAKE_BUILD_TYPE=Release -DCMAKE_UNITY_BUILD=ON >&2
fi
[ -x "$build/app/holdfast" ] || say "Building Holdfast; the first time takes some minutes"
ninja -C "$build" --quiet holdfast | grep -v 'no work to do' >&2 || [ "${PIPESTATUS[0]}" = 0 ]

# Qt wants a UTF-8 locale and complains of a bare one.
[ -n "${LC_ALL:-}${LC_CTYPE:-}${LANG:-}" ] || export LC_ALL=C.UTF-8

program=$build/app/holdfast
if [ $# = 1 ] && [ "$1" = --demo ] && [ -z "${DISPLAY:-}" ] && [ -z "${WAYLAND_DISPLAY:-}" ]; then
    say "There is no display here: drawing the tour into build/tour, and the day's walk follows."
    "$program" --demo tour "$top/build/tour" >&2
    exec "$program" --demo report walk
fi
exec "$program" "$@"
