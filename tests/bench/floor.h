// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Work timed beside a floor: the least that any program would have to do for the same, in the same run on the
// same machine. The ratio of the two says more than milliseconds, which belong to one machine on one day.
//
// Every benchmark of a program has the same four counters, which run.sh turns into a table: ms (the median),
// p95_ms, floor_ms (the floor's median) and times_floor.

#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <vector>

namespace holdfast::bench {

template <class Work>
double secondsOf(Work&& work) {
    const auto begins = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begins).count();
}

// REQUIRES: some times, a share from 0 to 1.
inline double quantile(std::vector<double> times, double share) {
    const auto at = static_cast<std::size_t>(share * static_cast<double>(times.size() - 1) + 0.5);
    std::ranges::nth_element(times, times.begin() + static_cast<std::ptrdiff_t>(at));
    return times[at];
}

// Runs the two in turn, so that what disturbs the machine disturbs both.
template <class Work, class Floor>
void runBesideFloor(benchmark::State& state, Work&& work, Floor&& floor) {
    std::vector<double> times, floors;
    for (auto _ : state) {
        times.push_back(secondsOf(work));
        floors.push_back(secondsOf(floor));
        state.SetIterationTime(times.back());
    }
    const double median = quantile(times, 0.5), least = quantile(floors, 0.5);
    state.counters["ms"] = median * 1e3;
    state.counters["p95_ms"] = quantile(times, 0.95) * 1e3;
    state.counters["floor_ms"] = least * 1e3;
    state.counters["times_floor"] = median / std::max(least, 1e-9);
}

} // namespace holdfast::bench
