// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/day_span.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

TEST(DaySpan, IsSaidOnceWhereItsEndsAgree) {
    EXPECT_EQ(spokenSpan({localDate(2027, 1, 2), localDate(2027, 1, 20)}), "2–20 Jan 2027");
    EXPECT_EQ(spokenSpan({localDate(2027, 1, 28), localDate(2027, 2, 9)}), "28 Jan – 9 Feb 2027");
    EXPECT_EQ(spokenSpan({localDate(2026, 12, 28), localDate(2027, 1, 9)}), "28 Dec 2026 – 9 Jan 2027");
    EXPECT_EQ(spokenSpan({localDate(2026, 1, 2), localDate(2027, 1, 20)}), "2 Jan 2026 – 20 Jan 2027");
    EXPECT_EQ(spokenSpan({localDate(2027, 1, 2), localDate(2027, 1, 2)}), "2 Jan 2027");
}

TEST(DaySpan, OfNearDaysNeedsNoYear) {
    EXPECT_EQ(nearSpan({localDate(2027, 1, 2), localDate(2027, 1, 20)}), "2–20 Jan");
    EXPECT_EQ(nearSpan({localDate(2026, 12, 28), localDate(2027, 1, 9)}), "28 Dec – 9 Jan");
    EXPECT_EQ(nearSpan({localDate(2026, 1, 2), localDate(2027, 1, 20)}), "2 Jan – 20 Jan");
    EXPECT_EQ(nearSpan({localDate(2027, 1, 2), localDate(2027, 1, 2)}), "2 Jan");
}

} // namespace
} // namespace holdfast
