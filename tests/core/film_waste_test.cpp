// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/film_waste.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

ShopSettings settingsSaying(int percent) {
    ShopSettings settings;
    settings.filmWastePercent = percent;
    return settings;
}

TEST(FilmWaste, IsWhatADecalsAreaIsToBeRaisedBy) {
    // 1 m of a 500 mm roll gave decals of 400 000 mm²: a fourth of their area more was cut.
    const FilmWaste waste = filmWaste({20, 500'000, 400'000}, settingsSaying(20));
    EXPECT_TRUE(waste.isMeasured);
    EXPECT_EQ(waste.percent, 25);
    EXPECT_EQ(filmWaste({20, 500'001, 400'000}, settingsSaying(20)).percent, 26) << "rounded up";
}

TEST(FilmWaste, TheSettingStandsUntilThereAreCutsEnough) {
    const FilmWaste waste = filmWaste({kFewestCuts - 1, 500'000, 400'000}, settingsSaying(35));
    EXPECT_FALSE(waste.isMeasured);
    EXPECT_EQ(waste.percent, 35);
    EXPECT_TRUE(filmWaste({kFewestCuts, 500'000, 400'000}, settingsSaying(35)).isMeasured);
    EXPECT_FALSE(filmWaste({kFewestCuts, 500'000, 0}, settingsSaying(35)).isMeasured);
    EXPECT_TRUE(filmWaste({kFewestCuts, 500'000, 1}, settingsSaying(35)).isMeasured);
}

TEST(FilmWaste, StaysBetweenNothingAndFiveHundredPercent) {
    EXPECT_EQ(filmWaste({20, 300'000, 400'000}, settingsSaying(20)).percent, 0);
    EXPECT_EQ(filmWaste({20, 9'000'000, 400'000}, settingsSaying(20)).percent, 500);
}

} // namespace
} // namespace holdfast
