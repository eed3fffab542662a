// SPDX-License-Identifier: GPL-3.0-or-later
// Change of size after washing, against ISO 5077 (read): (x_t − x_0)/x_0 · 100, negative is shrinkage.

#include "core/facts/blank_lot.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

using namespace literals;

// Examples computed from the formula.
TEST(ReferenceDimensionalChange, FollowsIso5077) {
    EXPECT_DOUBLE_EQ(dimensionalChange(350_mm, 343_mm), -2.0);
    EXPECT_DOUBLE_EQ(dimensionalChange(500_mm, 482_mm), -3.6);
    EXPECT_DOUBLE_EQ(dimensionalChange(500_mm, 500_mm), 0.0);
    // Area of the two together: −5.528 %.
    const double area =
        (1 + dimensionalChange(350_mm, 343_mm) / 100) * (1 + dimensionalChange(500_mm, 482_mm) / 100);
    EXPECT_NEAR((area - 1) * 100, -5.528, 1e-9);
}

// 10 → 12 is +20.0 % of the measure before, not 16.67 % of the one after (read in a textile laboratory's
// guide).
TEST(ReferenceDimensionalChange, TheBaseIsTheMeasureBefore) {
    EXPECT_DOUBLE_EQ(dimensionalChange(10_mm, 12_mm), 20.0);
}

} // namespace
} // namespace holdfast
