#!/usr/bin/env bash
# SPDX-License-Identifier: GPL-3.0-or-later
# Measures: builds the benches (beside the program, in build/release), runs them all and writes docs/benchmarks.md. It needs
# nothing beforehand, and is best run on a machine that has nothing else to do. It takes about three quarters of
# an hour. What it finds better for busy days goes into tests/bench/busy_days_best.txt.
#   bash tests/bench/run.sh [FOLDER]     FOLDER: open benchmark sets (strip-*.txt, tardiness-*.txt), if they are at hand
set -euo pipefail

top=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
# shellcheck source=app/packages.sh
. "$top/app/packages.sh"

need_packages "to measure Holdfast" "${build_packages[@]}" libbenchmark-dev
# Other libraries are run beside ours where Node.js is at hand: Debian's, or one that is there already.
command -v npm >/dev/null || need_packages "to run the other packing libraries" nodejs npm

sets=()
[ $# = 0 ] || sets=("$(cd "$1" && pwd)")

folder=$top/build/release
report=$top/docs/benchmarks.md

say "Building the benches"
cmake -G Ninja -S "$top" -B "$folder" -DCMAKE_BUILD_TYPE=Release -DHOLDFAST_BENCH=ON >&2
ninja -C "$folder" --quiet $(ninja -C "$folder" -t targets all | sed -nE 's/^(bench_[a-z_]+|[a-z]+_bench): phony$/\1/p') >&2

processor=$(sed -nE 's/^model name\s*: (.*)/\1/p' /proc/cpuinfo | head -n 1)
memory=$(awk '/^MemTotal/ { printf "%.1f GB", $2 / 1048576 }' /proc/meminfo)
system=$(sed -nE 's/^PRETTY_NAME="(.*)"/\1/p' /etc/os-release)
load=$(cut -d ' ' -f 1 /proc/loadavg)
written=$(mktemp)
trap 'rm -f "$written"' EXIT

{
    echo "# Benchmarks"
    echo
    echo "Written by \`tests/bench/run.sh\` on $(date -u +%Y-%m-%d). Times belong to one machine on one day; the"
    echo "last column is what to compare: how many times the *floor*, the least that any program would have to do"
    echo "for the same, measured in turn with it in the same run. What each floor is, its bench says in"
    echo "\`tests/bench/\`. The shop of db has 20,000 orders with 60,000 garments, 300 of them open."
    echo
    echo "Machine: ${processor:-unknown processor}, $(nproc) cores, $memory, $system, kernel $(uname -r);"
    echo "$(c++ --version | head -n 1), Release. Load average when it began: $load."
} >"$written"

for program in "$folder"/tests/bench/bench_*; do
    [ -x "$program" ] && [ -f "$program" ] || continue
    name=$(basename "$program")
    say "Running $name"
    {
        echo
        echo "## ${name#bench_}"
        echo
        echo "| what | median | 95 of 100 within | floor | × floor |"
        echo "|---|---:|---:|---:|---:|"
        # The last four columns are the counters in the order of the alphabet: floor_ms, ms, p95_ms, times_floor.
        "$program" --benchmark_format=csv 2>/dev/null | awk '
            function time(ms) { return ms >= 100 ? sprintf("%.0f ms", ms) : ms >= 1 ? sprintf("%.2f ms", ms) : sprintf("%.3f ms", ms) }
            /^name,/ { next }
            /^"/ {
                count = split($0, field, ",")
                what = $0
                sub(/^"/, "", what)
                sub(/".*/, "", what)
                sub(/\/(iterations:[0-9]+|manual_time)(\/.*)?$/, "", what)
                if (/true,"/) { printf "| %s | failed | | | |\n", what; next }
                printf "| %s | %s | %s | %s | %.1f |\n", what, time(field[count - 2]), time(field[count - 1]), time(field[count - 3]), field[count]
            }'
    } >>"$written"
done

peers=$top/build/peers
say "Fetching the other packing libraries"
bash "$top/tests/bench/peers/set_up.sh" "$peers"
say "Running nesting_bench"
{
    echo
    echo "## nesting"
    echo
    echo "A strip as short as can be. Gaps are above the optimum, which is known because the strips were cut up whole;"
    echo "C1 to C7 are the 21 strips of Hopper and Turton (2001), the others are made here the same way. Decals of a shop"
    echo "are drawn at random: their gaps are above the least length, a lower bound that mostly cannot be reached, and"
    echo "above the shortest of a long run. The other libraries pack fixed boxes: their box is made longer from the"
    echo "optimum, or the least length, on until all fits."
    echo
    echo "| what | figure | note |"
    echo "|---|---:|---|"
    "$folder/tests/bench/nesting_bench" "${sets[@]}" --peers "$peers"
} >>"$written"

say "Running schedule_bench"
{
    echo
    echo "## the order of work"
    echo
    echo "The search that orders the day, on problems whose best answer is known from the literature, on others of the"
    echo "same families, and on a day at the press."
    echo
    echo "| what | ours | best known | ratio | time |"
    echo "|---|---:|---:|---:|---:|"
    "$folder/tests/bench/schedule_bench" "${sets[@]}"
} >>"$written"

{
    echo
    echo "## checks"
    echo
    for shop in "0 20000" "500000 67000"; do
        say "Running check_bench $shop"
        # shellcheck disable=SC2086 # two arguments: entries and orders
        "$folder/tests/bench/check_bench" $shop | sed 's/^/- /'
    done
} >>"$written"

say "Running scale_bench"
{
    echo
    echo "## many years"
    echo
    "$folder/tests/bench/scale_bench" | sed 's/^/- /'
} >>"$written"

{
    echo
    echo "## window"
    echo
    for program in start_bench memory_bench table_bench; do
        say "Running $program"
        "$folder/tests/bench/$program" | sed 's/^/- /'
    done
} >>"$written"

cp "$written" "$report"
say "Written: $report"
cat "$report"
