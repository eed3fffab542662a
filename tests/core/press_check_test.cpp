// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/press.h"
#include "core/press/check_figures.h"

#include "tests/core/builders.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

PressCheck checkAt(Celsius set, std::vector<Celsius> readings) {
    PressCheck check;
    check.set = set;
    check.readings = std::move(readings);
    return check;
}

TEST(PressCheck, FiguresOfFiveSpots) {
    const CheckFigures figures = figuresOf(checkAt(150_C, {148_C, 151_C, 146_C, 147_C, 148_C}));
    EXPECT_DOUBLE_EQ(figures.meanOffset, -2.0);
    EXPECT_DOUBLE_EQ(figures.largestDeparture, -4.0);
    EXPECT_DOUBLE_EQ(figures.spread, 5.0);
    EXPECT_DOUBLE_EQ(figures.dialIn, 2.0);
}

TEST(PressCheck, OneSpotHasNoSpread) {
    const CheckFigures figures = figuresOf(checkAt(150_C, {153.5_C}));
    EXPECT_DOUBLE_EQ(figures.meanOffset, 3.5);
    EXPECT_DOUBLE_EQ(figures.largestDeparture, 3.5);
    EXPECT_DOUBLE_EQ(figures.spread, 0.0);
    EXPECT_DOUBLE_EQ(figures.dialIn, -3.5);
}

TEST(PressCheck, DialledInTheMeanMeetsTheRecipe) {
    PressCheck check = checkAt(160_C, {151.2_C, 158.9_C, 163.3_C, 149_C});
    const double dialIn = figuresOf(check).dialIn;
    for (Celsius& reading : check.readings)
        reading.value += dialIn;
    EXPECT_NEAR(figuresOf(check).meanOffset, 0.0, 1e-12);
}

TEST(PressCheck, LastOneCounts) {
    auto shop = aShop().with(aGarment()).build();
    PressCheck later = shop.facts.pressChecks.front();
    later.at += Hours{1};
    later.by = "second";
    PressCheck ofAnother = later;
    ofAnother.press = PressId{9};
    ofAnother.at += Hours{1};
    shop.facts.pressChecks.insert(shop.facts.pressChecks.begin(), {later, ofAnother});
    EXPECT_EQ(shop.facts.lastCheck(kBench)->by, "second");
    EXPECT_EQ(shop.facts.lastCheck(PressId{8}), nullptr);
}

} // namespace
} // namespace holdfast::test
