// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/usual_use.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

namespace holdfast {

using namespace literals;

namespace {

// The same by trying: normal use drawn a great many times.
double wasteByTrying(double mean, double spread, double free) {
    std::mt19937 random{7};
    std::normal_distribution<double> use{mean, spread};
    constexpr int kTimes = 400'000;
    double waste = 0;
    for (int time = 0; time < kTimes; ++time)
        waste += free - std::clamp(use(random), 0.0, free);
    return waste / kTimes;
}

double wasted(const UseRate& rate, Days days, Millimetres spokenFor, Millimetres free) {
    return static_cast<double>((free - expectedUse(rate, days, spokenFor, free).expected).value);
}

} // namespace

TEST(UsualUse, MeanAndSpreadAreThoseOfTheWeeks) {
    const std::vector<Millimetres> weeks{200_mm, 400_mm, 600_mm};
    const UseRate rate = rateOf(weeks);
    EXPECT_DOUBLE_EQ(rate.weeklyMean, 400);
    EXPECT_DOUBLE_EQ(rate.weeklySpread, 200);                              // √((200² + 0 + 200²)/2)
    EXPECT_DOUBLE_EQ(rateOf(std::span{weeks}.first(1)).weeklySpread, 200); // one week says little
    EXPECT_DOUBLE_EQ(rateOf({}).weeklyMean, 0);
}

TEST(UsualUse, UseThatNeverVariesIsTakenAsItIs) {
    const UseRate steady{350, 0};
    EXPECT_EQ(expectedUse(steady, Days{28}, 0_mm, 3000_mm).expected, 1400_mm);
    EXPECT_EQ(expectedUse(steady, Days{28}, 400_mm, 3000_mm).expected, 1000_mm);
    EXPECT_EQ(expectedUse(steady, Days{28}, 400_mm, 600_mm).expected, 600_mm);
    EXPECT_EQ(expectedUse(steady, Days{28}, 1500_mm, 600_mm).expected, 0_mm);
    EXPECT_EQ(expectedUse(steady, Days{-3}, 0_mm, 600_mm).expected, 0_mm);
}

TEST(UsualUse, ExpectedWasteIsWhatTryingGives) {
    for (const std::int64_t free : {300, 1200, 3000}) {
        for (const double spread : {50.0, 250.0, 900.0}) {
            for (const std::int64_t spokenFor : {0, 800}) {
                const UseRate rate{400, spread};
                const double mean = 400.0 * 4 - static_cast<double>(spokenFor);
                EXPECT_NEAR(wasted(rate, Days{28}, {spokenFor}, {free}),
                            wasteByTrying(mean, spread * 2, static_cast<double>(free)), 8)
                    << free << " mm, spread " << spread << ", spoken for " << spokenFor;
            }
        }
    }
}

TEST(UsualUse, EightOfTenLieBetweenLowAndHigh) {
    const ExpectedUse use = expectedUse({400, 200}, Days{28}, 0_mm, 100'000_mm);
    EXPECT_EQ(use.expected, 1600_mm);
    EXPECT_NEAR(static_cast<double>(use.high.value), 1600 + 1.2816 * 400, 1);
    EXPECT_NEAR(static_cast<double>(use.low.value), 1600 - 1.2816 * 400, 1);
    const ExpectedUse ofShortRoll = expectedUse({400, 200}, Days{28}, 0_mm, 500_mm);
    EXPECT_LE(ofShortRoll.low, ofShortRoll.expected);
    EXPECT_EQ(ofShortRoll.high, 500_mm);
}

} // namespace holdfast
