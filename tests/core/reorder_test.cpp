// SPDX-License-Identifier: GPL-3.0-or-later
// When to buy more, against worked examples of textbooks.
#include "core/stock/reorder.h"

#include "core/stock/demand.h"

#include <gtest/gtest.h>

#include <cmath>

namespace holdfast {
namespace {

Demand normal(double mean, double deviation) {
    return {mean, deviation * deviation};
}

// Stevenson, Operations Management, chapter on inventory: sand of a builders' yard, 50 t within the lead time
// with a deviation of 5 t, a risk of 3 %: z = 1.88, safety stock 9.40 t, reorder point 59.40 t. The book
// rounds z.
TEST(Reorder, SandOfTheBuildersYardIsOrderedAtFiftyNineTonnes) {
    const ReorderLevels levels = measuredLevels(normal(50, 5), normal(50, 5), 0.03);
    EXPECT_NEAR(levels.point, 59.40, 0.01);
}

// The same book: a restaurant uses 50 jars a week with a deviation of 3, the lead time is two weeks, the risk
// 10 %: 100 + 1.28 · √2 · 3 = 105.43. The book rounds z.
TEST(Reorder, JarsOfTwoWeeksSpreadByTheRootOfTwo) {
    const Demand inLead = overPeriods(normal(50, 3), 2);
    EXPECT_DOUBLE_EQ(inLead.mean, 100);
    EXPECT_NEAR(std::sqrt(inLead.variance), 4.243, 0.001);
    EXPECT_NEAR(measuredLevels(inLead, inLead, 0.1).point, 105.43, 0.01);
}

// A published exercise of a high-volume item: 70 a day, four days, a deviation of 15 within them, 95 %:
// 280 + 1.65 · 15 = 304.75. Its z is rounded up from 1.645.
TEST(Reorder, FourDaysAtSeventyAreOrderedAtThreeHundredAndFive) {
    EXPECT_NEAR(measuredLevels(normal(280, 15), normal(280, 15), 0.05).point, 304.75, 0.1);
}

TEST(Reorder, BoughtIsUpToTheLevelOnceThePointIsReached) {
    const ReorderLevels levels{10, 25};
    EXPECT_EQ(levels.toBuy(11), 0);
    EXPECT_EQ(levels.toBuy(10), 15);
    EXPECT_EQ(levels.toBuy(-3), 28) << "what is promised and not there is bought, too";
}

// Poisson tables [M]: with a mean of 4, F(7) = .94887 and F(8) = .97864; with a mean of 9, F(14) = .95853.
TEST(Reorder, CountedThingsTakeTheLeastNumberThatIsEnough) {
    const ReorderLevels levels = countedLevels({4, 4}, {9, 9}, 0.05);
    EXPECT_EQ(levels.point, 8);
    EXPECT_EQ(levels.upTo, 14);
    EXPECT_EQ(countedLevels({4, 4}, {9, 9}, 0.052).point, 7);
}

TEST(Reorder, AnEvenChanceNeedsNoSafetyStockAndNoneIsUsedNeedsNothing) {
    EXPECT_NEAR(measuredLevels(normal(50, 5), normal(50, 5), 0.5).point, 50, 1e-9);
    EXPECT_EQ(measuredLevels({50, 0}, {60, 0}, 0.01).point, 50) << "what does not spread needs none either";
    EXPECT_EQ(countedLevels({0, 0}, {0, 0}, 0.05).point, 0);
    EXPECT_EQ(measuredLevels({0, 0}, {0, 0}, 0.05).upTo, 0);
}

} // namespace
} // namespace holdfast
