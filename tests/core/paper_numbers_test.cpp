// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/paper_numbers.h"

#include <gtest/gtest.h>

#include <limits>

namespace holdfast {

TEST(PaperNumbers, RollHasTwoDigitsAtLeast) {
    EXPECT_EQ(rollLabel(1), "R-01");
    EXPECT_EQ(rollLabel(27), "R-27");
    EXPECT_EQ(rollLabel(104), "R-104");
}

TEST(PaperNumbers, GarmentsAreLetteredOnBeyondZ) {
    EXPECT_EQ(garmentLetter(1), "a");
    EXPECT_EQ(garmentLetter(26), "z");
    EXPECT_EQ(garmentLetter(27), "aa");
    EXPECT_EQ(garmentLetter(52), "az");
    EXPECT_EQ(garmentLetter(53), "ba");
    EXPECT_EQ(garmentLetter(702), "zz");
    EXPECT_EQ(garmentLetter(703), "aaa");
    EXPECT_EQ(garmentLabel(418, 2), "418-b");
}

// A file may hold a position that no action wrote.
TEST(PaperNumbers, PositionThatIsNoneHasNoLetter) {
    EXPECT_EQ(garmentLetter(0), "");
    EXPECT_EQ(garmentLetter(-1), "");
    EXPECT_EQ(garmentLetter(std::numeric_limits<std::int64_t>::min()), "");
}

} // namespace holdfast
