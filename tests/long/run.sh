#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Tests that take hours, run by hand and not with tests/run.sh. They need nothing beforehand.
#   bash tests/long/run.sh small_changes [--changes 300] [--seed 1] [--only core/film]
#     Makes small changes in core, one at a time, and says which of them no test of core or db catches.
#   bash tests/long/run.sh byte_flips
#     Flips every byte of a small closed shop, one at a time: no flip may hang or crash, and none may be called whole where a
#     row reads otherwise. Some 20 minutes on two cores.
#   bash tests/long/run.sh failing_writes
#     Fails every call to the disk of every thing done with a shop, once and for ever, going on and ending after it.
#   bash tests/long/run.sh kills [--times 1000]
#     Kills the program at any moment of any thing: what was acknowledged must be there, and nothing be left behind.
#   bash tests/long/run.sh power_loss [--times 1000]
#     The same for a computer whose power goes: what was not synced is lost, kept or torn by sectors.
#   bash tests/long/run.sh merging [--times 10000]
#     Laptops, copies of them and files that were put back act and bring news by chance: nothing may be lost.
#   bash tests/long/run.sh fuzz [READER] [--seconds 600]
#     Feeds each reader (or the one of that name in tests/long/fuzz) with bytes that libFuzzer makes up, under sanitizers; what
#     makes one fail is put into tests/long/fuzz/corpus, where the tests read it ever after.
set -euo pipefail

top=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
# shellcheck source=app/packages.sh
. "$top/app/packages.sh"

# The tests of db under the sanitizers, in a build of their own.
build_db_tests() {
    need_packages "to build and test Holdfast" "${build_packages[@]}" libgtest-dev libical-dev
    build=$top/build/long
    cmake -G Ninja -S "$top" -B "$build" -DCMAKE_BUILD_TYPE=Debug -DHOLDFAST_APP=OFF -DHOLDFAST_TESTS=ON \
        -DHOLDFAST_SANITIZE=ON -DCMAKE_UNITY_BUILD=ON
    ninja -C "$build" holdfast_db_tests
    db_tests=$build/tests/db/holdfast_db_tests
}

# "--times N", or as many as usually.
times_of() {
    local usually=$1
    shift
    if [ "${1:-}" = --times ]; then echo "$2"; else echo "$usually"; fi
}

# fuzz_readers [READER] [--seconds N]: processor seconds of each, on one core. A reader fails where it takes longer than ten
# seconds for one input.
fuzz_readers() {
    local reader='*' seconds=600 name corpus found failed=0
    if [ "${1:-}" ] && [ "$1" != --seconds ]; then
        reader=$1
        shift
    fi
    if [ "${1:-}" = --seconds ]; then seconds=$2; fi
    # The first Clang that both Debian 12 and 13 have and that reads g++'s ranges.
    need_packages "to fuzz" "${build_packages[@]}" libgtest-dev libical-dev clang-19 libclang-rt-19-dev
    local build=$top/build/fuzz
    [ -f "$build/build.ninja" ] || CC=clang-19 CXX=clang++-19 cmake -G Ninja -S "$top" -B "$build" \
        -DCMAKE_BUILD_TYPE=None -DCMAKE_CXX_FLAGS="-O1 -g1 -fsanitize=fuzzer-no-link -Wno-deprecated-declarations" -DHOLDFAST_APP=OFF \
        -DHOLDFAST_TESTS=ON -DHOLDFAST_SANITIZE=ON -DHOLDFAST_FUZZ=ON -DCMAKE_UNITY_BUILD=ON
    for corpus in "$top"/tests/long/fuzz/corpus/$reader; do
        name=${corpus##*/}
        ninja -C "$build" "holdfast_fuzz_$name"
        found=$build/found/$name
        mkdir -p "$found"
        say "Fuzzing $name for $seconds s"
        # Leaks are of Qt's and SQLite's caches, which live as long as the program.
        QT_QPA_PLATFORM=offscreen ASAN_OPTIONS=detect_leaks=0 "$build/tests/long/fuzz/holdfast_fuzz_$name" -max_total_time="$seconds" \
            -timeout=10 -rss_limit_mb=4096 -print_final_stats=1 -artifact_prefix="$corpus/" "$found" "$corpus" \
            >"$build/$name.log" 2>&1 || failed=1
        grep -E '^(stat::number_of_executed_units|SUMMARY|not so|artifact_prefix)' "$build/$name.log" || tail -n 5 "$build/$name.log"
    done
    return "$failed"
}

case ${1:-} in
small_changes)
    shift
    need_packages "to build and test Holdfast" "${build_packages[@]}" libgtest-dev libical-dev python3
    exec python3 "$top/tests/long/small_changes.py" "$@"
    ;;
byte_flips)
    build_db_tests
    for part in 0 1; do
        HOLDFAST_EVERY_BYTE=$part/2 "$db_tests" --gtest_filter='ByteFlips.NoByteOfTheFile' &
        runs[part]=$!
    done
    wait "${runs[0]}" && wait "${runs[1]}"
    ;;
failing_writes)
    build_db_tests
    HOLDFAST_EVERY_WRITE=1 exec "$db_tests" --gtest_filter='FailingWrites.*'
    ;;
kills)
    shift
    build_db_tests
    HOLDFAST_KILLS=$(($(times_of 1000 "$@") / 2)) exec "$db_tests" --gtest_filter='Kills.*'
    ;;
power_loss)
    shift
    build_db_tests
    HOLDFAST_POWER_LOSSES=$(($(times_of 1000 "$@") / 2)) exec "$db_tests" --gtest_filter='PowerLosses.*'
    ;;
merging)
    shift
    build_db_tests
    HOLDFAST_ROUNDS=$(times_of 10000 "$@") exec "$db_tests" --gtest_filter='Chance/CopiesByChance.*'
    ;;
fuzz)
    shift
    fuzz_readers "$@"
    ;;
*)
    sed -n '2,18s/^# //p' "${BASH_SOURCE[0]}"
    exit 2
    ;;
esac
