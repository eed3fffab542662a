// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quality/signed_rank.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <vector>

namespace holdfast {
namespace {

// 1 … n, the first so many of them below zero.
std::vector<double> ranked(int count, int below) {
    std::vector<double> all;
    for (int size = 1; size <= count; ++size)
        all.push_back(size <= below ? -size : size);
    return all;
}

// Two-sided critical values at 5 %: 0 of 6, 2 of 7, 3 of 8, 5 of 9, 8 of 10. In every handbook's table of the
// signed-rank test; from memory.
TEST(SignedRank, AgreesWithTheTableOfCriticalValues) {
    EXPECT_DOUBLE_EQ(chanceOfSignedRanks(ranked(5, 0)), 2 / 32.0);
    EXPECT_DOUBLE_EQ(chanceOfSignedRanks(ranked(6, 0)), 2 / 64.0);
    const auto chanceOf = [](int count, int lone) {
        std::vector<double> all = ranked(count, 0);
        all[static_cast<std::size_t>(lone - 1)] *= -1;
        return chanceOfSignedRanks(all);
    };
    EXPECT_LE(chanceOf(7, 2), 0.05);
    EXPECT_GT(chanceOf(7, 3), 0.05);
    EXPECT_LE(chanceOf(8, 3), 0.05);
    EXPECT_GT(chanceOf(8, 4), 0.05);
    EXPECT_LE(chanceOf(9, 5), 0.05);
    EXPECT_GT(chanceOf(9, 6), 0.05);
    EXPECT_LE(chanceOf(10, 8), 0.05);
    EXPECT_GT(chanceOf(10, 9), 0.05);
}

// By hand: four equal sizes, one below; of 16 ways to give signs 5 have one or none below.
TEST(SignedRank, CountsTiesOutAndLeavesNothingsOut) {
    EXPECT_DOUBLE_EQ(chanceOfSignedRanks(std::vector<double>{1, 1, -1, 1, 0}), 2 * 5 / 16.0);
    EXPECT_DOUBLE_EQ(chanceOfSignedRanks(std::vector<double>{0, 0}), 1);
    EXPECT_DOUBLE_EQ(chanceOfSignedRanks({}), 1);
}

TEST(SignedRank, TheCentreIsTheMiddleOfTheMeansOfPairs) {
    // By hand: means of pairs 1, 2, 3.5, 3, 4.5, 6.
    EXPECT_DOUBLE_EQ(centreOf(std::vector<double>{1, 3, 6}, 0.05).estimate, 3.25);
    // Of six a sum of 0 has a chance of 1/64 and one of 1 has 2/64: at 5 % no mean is left out. At 8 % (2/64
    // at either end are few enough, 3/64 of a sum of 2 are not) one is.
    EXPECT_DOUBLE_EQ(centreOf(ranked(6, 0), 0.05).low, 1);
    EXPECT_DOUBLE_EQ(centreOf(ranked(6, 0), 0.05).high, 6);
    EXPECT_DOUBLE_EQ(centreOf(ranked(6, 0), 0.08).low, 1.5);
    EXPECT_DOUBLE_EQ(centreOf(ranked(6, 0), 0.08).high, 5.5);
    EXPECT_DOUBLE_EQ(centreOf(std::vector<double>{4}, 0.05).low, 4);
}

// Where nothing differs it is said no oftener than stated: of 4000, within three standard errors.
TEST(SignedRank, ChanceIsTakenForMoreNoOftenerThanStated) {
    std::mt19937 draw{20261201};
    std::normal_distribution<double> normal;
    for (const int count : {20, 80}) {
        int found = 0;
        int missed = 0;
        for (int shop = 0; shop < 4000; ++shop) {
            std::vector<double> all(static_cast<std::size_t>(count));
            for (double& each : all)
                each = normal(draw);
            found += chanceOfSignedRanks(all) <= 0.05;
            if (shop < 400) {
                const Centre centre = centreOf(all, 0.05);
                missed += centre.low > 0 || centre.high < 0;
            }
        }
        EXPECT_LE(found, 4000 * 0.05 + 3 * std::sqrt(4000 * 0.05 * 0.95)) << count;
        EXPECT_GE(found, 4000 * 0.05 - 4 * std::sqrt(4000 * 0.05 * 0.95)) << count;
        EXPECT_LE(missed, 400 * 0.05 + 3 * std::sqrt(400 * 0.05 * 0.95)) << count;
    }
}

} // namespace
} // namespace holdfast
