#!/usr/bin/env bash
# Tests that take hours, run by hand and not with tests/run.sh. They need nothing beforehand.
#   bash tests/long/run.sh small_changes [--changes 300] [--seed 1] [--only core/film]
#     Makes small changes in core, one at a time, and says which of them no test of core or db catches.
#   bash tests/long/run.sh byte_flips
#     Flips every byte of a small closed shop, one at a time: no flip may hang or crash, and none may be called whole where a
#     row reads otherwise. Some 20 minutes on two cores.
set -euo pipefail

top=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
# shellcheck source=app/packages.sh
. "$top/app/packages.sh"

case ${1:-} in
small_changes)
    shift
    need_packages "to build and test Holdfast" "${build_packages[@]}" libgtest-dev python3
    exec python3 "$top/tests/long/small_changes.py" "$@"
    ;;
byte_flips)
    need_packages "to build and test Holdfast" "${build_packages[@]}" libgtest-dev
    build=$top/build/long-flips
    cmake -G Ninja -S "$top" -B "$build" -DCMAKE_BUILD_TYPE=Debug -DHOLDFAST_APP=OFF -DHOLDFAST_TESTS=ON \
        -DHOLDFAST_SANITIZE=ON -DCMAKE_UNITY_BUILD=ON
    ninja -C "$build" holdfast_db_tests
    for part in 0 1; do
        HOLDFAST_EVERY_BYTE=$part/2 "$build/tests/db/holdfast_db_tests" --gtest_filter='ByteFlips.NoByteOfTheFile' &
        runs[part]=$!
    done
    wait "${runs[0]}" && wait "${runs[1]}"
    ;;
*)
    sed -n '2,7s/^# //p' "${BASH_SOURCE[0]}"
    exit 2
    ;;
esac
