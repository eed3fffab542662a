// SPDX-License-Identifier: GPL-3.0-or-later
// The shortest strips of ten small sets of rectangles, found by a general-purpose solver: glpsol of GLPK 5.0
// (Debian 12) on the model strip_optimum.mod beside this file, each proven optimal within 60 s. Where turned
// pieces took it longer there is no figure. The search must reach each.

#include "tests/core/strip_builders.h"

#include <gtest/gtest.h>

using namespace holdfast;
using namespace holdfast::strips;

namespace {

struct SolvedStrip {
    std::int64_t width = 0;
    std::vector<std::pair<std::int64_t, std::int64_t>> pieces; // across, along
    std::int64_t shortest = 0;
    std::optional<std::int64_t> shortestTurned;
};

const std::vector<SolvedStrip> kSolved{
    {11, {{4, 3}, {4, 4}, {2, 8}, {5, 3}, {2, 4}}, 8, 7},
    {14, {{9, 9}, {8, 5}, {5, 7}, {7, 7}, {8, 3}}, 24, 19},
    {16, {{8, 3}, {5, 5}, {2, 5}, {3, 3}, {5, 6}, {6, 6}}, 10, 9},
    {13, {{3, 3}, {2, 6}, {7, 5}, {8, 5}, {6, 5}, {2, 2}}, 11, 11},
    {13, {{4, 4}, {7, 7}, {6, 9}, {3, 6}, {6, 8}, {3, 4}}, 16, 16},
    {15, {{3, 4}, {8, 7}, {5, 3}, {2, 5}, {8, 4}, {4, 3}}, 11, 10},
    {10, {{4, 2}, {4, 8}, {5, 2}, {3, 3}, {5, 7}, {2, 3}, {6, 3}}, 13, 12},
    {10, {{4, 6}, {2, 6}, {2, 2}, {3, 5}, {6, 2}, {3, 2}, {6, 4}}, 11, std::nullopt},
    {13, {{8, 4}, {5, 6}, {2, 8}, {2, 5}, {3, 5}, {8, 5}, {2, 6}}, 14, std::nullopt},
    {11, {{6, 8}, {3, 3}, {5, 9}, {2, 4}, {3, 6}}, 14, 12},
};

StripTask asTask(const SolvedStrip& solved, bool mayTurn) {
    StripTask task = aStrip(solved.width, {}, mayTurn);
    for (const auto& [across, along] : solved.pieces)
        task.pieces.push_back({across, along, mayTurn, std::nullopt});
    return task;
}

} // namespace

TEST(StripOptimum, ReachesWhatTheSolverProved) {
    for (const SolvedStrip& solved : kSolved) {
        const StripTask task = asTask(solved, false);
        const StripPacking packing = packWithin(task, rounds(5'000)).value();
        EXPECT_EQ(faultOf(task, packing), std::nullopt);
        EXPECT_EQ(packing.length, solved.shortest);
        EXPECT_LE(leastLength(task), solved.shortest);
    }
}

TEST(StripOptimum, ReachesWhatTheSolverProvedWithTurns) {
    int proven = 0;
    for (const SolvedStrip& solved : kSolved) {
        if (!solved.shortestTurned)
            continue;
        ++proven;
        const StripTask task = asTask(solved, true);
        const StripPacking packing = packWithin(task, rounds(5'000)).value();
        EXPECT_EQ(faultOf(task, packing), std::nullopt);
        EXPECT_EQ(packing.length, *solved.shortestTurned);
        EXPECT_LE(leastLength(task), *solved.shortestTurned);
    }
    EXPECT_EQ(proven, 8);
}

// A strip that ends where the proven shortest one does takes every piece; one unit shorter takes all but
// some.
TEST(StripOptimum, AStripOfThatLengthTakesAllAndAShorterOneDoesNot) {
    for (const SolvedStrip& solved : kSolved) {
        StripTask task = asTask(solved, false);
        task.length = solved.shortest;
        EXPECT_EQ(packWithin(task, rounds(20'000)).value().placed(), task.pieces.size());
        task.length = solved.shortest - 1;
        EXPECT_LT(packWithin(task, rounds(2'000)).value().placed(), task.pieces.size());
    }
}
