// SPDX-License-Identifier: GPL-3.0-or-later
// The trade's own numbers: common practice, no source. Each may be changed in a shop; here stands what a new
// shop starts with.

#include "core/care/care_card.h"
#include "core/facts/climate.h"
#include "core/facts/film.h"
#include "core/facts/press.h"
#include "core/facts/settings.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>

namespace holdfast {
namespace {

// Common practice, no source: storage at 30–50 % relative humidity and steady room temperature.
TEST(CommonPractice, FilmIsKeptDryAndAtRoomTemperature) {
    const StorageLimits limits;
    EXPECT_EQ(limits.humidity, (Band<Humidity>{{30}, {50}}));
    EXPECT_EQ(limits.temperature, (Band<Celsius>{{10}, {30}}));
    EXPECT_EQ(limits.allowedOutside, Hours{72});
}

// Common practice, no source: preheat 15 s; finishing press 5 s on the front and 5 s on the back.
TEST(CommonPractice, PreheatAndFinishingPress) {
    const Recipe recipe;
    EXPECT_EQ(recipe.preheat, Seconds{15});
    EXPECT_EQ(recipe.finishFront, Seconds{5});
    EXPECT_EQ(recipe.finishBack, Seconds{5});
}

// Common practice, no source: the platen within 3 °C of the recipe.
TEST(CommonPractice, PlatenWithinThreeDegrees) {
    EXPECT_EQ(Press{}.tolerance, Celsius{3});
}

// Common practice, no source: rest at least 24 h before the first wash, 72 h better.
TEST(CommonPractice, RestBeforeTheFirstWash) {
    const ShopSettings settings;
    EXPECT_EQ(settings.restBeforeWash, Hours{24});
    EXPECT_EQ(settings.betterRest, Hours{72});
}

// Common practice, no source: inside out, cold or warm, mild detergent, no bleach or softener; tumble low or
// line dry; no iron on the decal (cloth and low heat if it must be); no dry-cleaning.
TEST(CommonPractice, CareOfAPressedGarment) {
    Film film;
    film.care = {.washCelsius = 95,
                 .agitation = Agitation::Normal,
                 .tumble = Tumble::Normal,
                 .ironCelsius = 200,
                 .bleach = Bleach::Any,
                 .cleaning = Cleaning::All};
    const std::array<const Film*, 1> films{&film};
    const CareCard card = careCard(film.care, films, std::nullopt, std::nullopt);
    const auto says = [&](std::string_view part) {
        return std::ranges::any_of(card.lines, [&](const CareLine& line) {
            return line.words.english().find(part) != std::string::npos;
        });
    };
    for (const char* advice :
         {"inside out", "cold or warm", "Mild detergent", "No bleach", "no softener", "on a line",
          "tumble dry low", "not iron on the decal", "through a cloth at low heat", "not dry-clean"})
        EXPECT_TRUE(says(advice)) << advice;
}

// Where the film's sheet gives no factor, ageing doubles for each 10 °C above 22 °C: a rule of thumb.
TEST(CommonPractice, AgeingDoublesForTenDegrees) {
    EXPECT_EQ(AgeingModel{}.q10, 2.0);
    EXPECT_EQ(AgeingModel{}.reference, Celsius{22});
    EXPECT_EQ(kAllowedGap, Hours{72});
}

} // namespace
} // namespace holdfast
