// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/press_first.h"

#include "tests/core/reckoned_builder.h"

#include <gtest/gtest.h>

namespace holdfast::test {

namespace {

const LocalDate kToday = localDate(2026, 11, 25); // a Wednesday, 10:00

GarmentBuilder promisedIn(Days days) {
    GarmentBuilder garment = aGarment();
    garment.uncut()
        .decal([](Decal& decal) {
            decal.width = 200_mm;
            decal.height = 100_mm;
        })
        .order([days](Order& order) { order.promised = LocalTime{kToday + days} + Hours{15}; })
        .condition([](RollCondition& condition) { condition.useBy = kToday + Days{5}; });
    return garment;
}

DecalId decalAt(const ReckonedShop& shop, std::size_t at) {
    return std::next(shop.facts.garments.begin(), static_cast<std::ptrdiff_t>(at))->decals.front().id;
}

GarmentId garmentAt(const ReckonedShop& shop, std::size_t at) {
    return std::next(shop.facts.garments.begin(), static_cast<std::ptrdiff_t>(at))->id;
}

} // namespace

TEST(PressedFirst, WorkPromisedAfterTheUseByIsWastedUnlessItGoesFirst) {
    const ReckonedShop shop = reckoned(aShop().with(promisedIn(Days{2})).with(promisedIn(Days{12})));
    const DecalId late = decalAt(shop, 1);
    ASSERT_EQ(shop.allotment.useFirst.front().pressEarly, std::vector{late});

    const PressedFirst nothing = pressedFirst(shop, kRoll, {});
    const PressedFirst first = pressedFirst(shop, kRoll, std::vector{late});
    ASSERT_EQ(first.rolls.size(), 1u);
    EXPECT_EQ(first.rolls[0].roll, kRoll);
    EXPECT_EQ(first.length, 108_mm);
    EXPECT_TRUE(first.fits);
    EXPECT_EQ(nothing.rolls[0].wasteBefore, nothing.rolls[0].wasteAfter);
    EXPECT_EQ(first.rolls[0].wasteBefore, nothing.rolls[0].wasteAfter);
    EXPECT_EQ(first.rolls[0].wasteBefore - first.rolls[0].wasteAfter, first.length);
    EXPECT_TRUE(first.slipped.empty());
    EXPECT_TRUE(first.notReady.empty());
}

TEST(PressedFirst, ANestBrokenUpIsNoFilmSaved) {
    // Both are pressed in time, and side by side they take one row; cut apart they take two, and save
    // nothing.
    const ReckonedShop shop = reckoned(aShop().with(promisedIn(Days{2})).with(promisedIn(Days{3})));
    const PressedFirst first = pressedFirst(shop, kRoll, std::vector{decalAt(shop, 0)});
    EXPECT_EQ(first.rolls[0].wasteBefore, first.rolls[0].wasteAfter);
}

TEST(PressedFirst, ChosenFromAFresherRollItSparesThatOne) {
    ReckonedShop shop = reckoned(aShop().with(promisedIn(Days{2})));
    // A second roll of the film, fresher and longer, that the decal was allotted to.
    FilmRoll fresh = aRoll(kOtherRoll, aFilm());
    shop.facts.rolls.add(fresh);
    RollCondition condition = shop.conditions.at(kRoll);
    condition.roll = kOtherRoll;
    condition.useBy = kToday + Days{50};
    std::map<RollId, RollCondition> conditions{{kRoll, shop.conditions.at(kRoll)}, {kOtherRoll, condition}};
    shop.conditions = RollConditions{conditions};
    shop.allotment = allot(shop.facts, shop.conditions, {}, shop.now);

    const std::vector decals{decalAt(shop, 0)};
    const PressedFirst fromFresh = pressedFirst(shop, kOtherRoll, decals);
    ASSERT_EQ(fromFresh.rolls.size(), 2u);
    EXPECT_EQ(fromFresh.rolls[0].roll, kRoll);
    EXPECT_GT(fromFresh.rolls[0].wasteAfter, fromFresh.rolls[0].wasteBefore);
    EXPECT_LT(fromFresh.rolls[1].wasteAfter, fromFresh.rolls[1].wasteBefore);
}

TEST(PressedFirst, SaysWhichPromisesSlipAndByHowMuch) {
    // Due today, the rest being none: pressed first it is in time, behind another it is not.
    GarmentBuilder now = promisedIn(Days{0});
    now.order([](Order& order) { order.promised = LocalTime{kToday} + Hours{10} + Minutes{9}; });
    const auto noRest = [](ShopSettings& settings) { settings.restBeforeWash = Hours{0}; };
    const ReckonedShop shop = reckoned(aShop().settings(noRest).with(now).with(promisedIn(Days{12})));
    const PlannedGarment* alone = shop.plan.find(garmentAt(shop, 0));
    EXPECT_EQ(alone, nullptr) << "it is not cut yet";

    const PressedFirst first = pressedFirst(shop, kRoll, std::vector{decalAt(shop, 1)});
    ASSERT_EQ(first.slipped.size(), 1u);
    EXPECT_EQ(first.slipped[0].garment, garmentAt(shop, 0));
    EXPECT_GT(first.slipped[0].lateAfter, first.slipped[0].lateBefore);
    EXPECT_LT(first.slipped[0].lateAfter, Hours{1});
    EXPECT_TRUE(pressedFirst(shop, kRoll, std::vector{decalAt(shop, 0)}).slipped.empty());
}

TEST(PressedFirst, LatenessGoesOverTheHoursTheShopIsOpen) {
    GarmentBuilder now = promisedIn(Days{0});
    now.order([](Order& order) { order.promised = LocalTime{kToday} + Hours{10} + Minutes{9}; });
    const auto closing = [](ShopSettings& settings) {
        settings.restBeforeWash = Hours{0};
        settings.week[3] = OpeningHours{Hours{9}, Hours{10} + Minutes{5}};
    };
    const ReckonedShop shop = reckoned(aShop().settings(closing).with(now).with(promisedIn(Days{12})));
    const PressedFirst first = pressedFirst(shop, kRoll, std::vector{decalAt(shop, 1)});
    ASSERT_EQ(first.slipped.size(), 1u);
    EXPECT_GT(first.slipped[0].lateAfter, Hours{22}); // goes on tomorrow at nine
}

TEST(PressedFirst, WhatIsHeldOrUnwashedCannotGoFirst) {
    GarmentBuilder unwashed = promisedIn(Days{12});
    unwashed.onUnwashedTee();
    const ReckonedShop shop = reckoned(aShop().with(unwashed));
    const PressedFirst first = pressedFirst(shop, kRoll, std::vector{decalAt(shop, 0)});
    EXPECT_EQ(first.notReady, std::vector{garmentAt(shop, 0)});
}

TEST(PressedFirst, SaysWhereTheRollIsTooShort) {
    GarmentBuilder garment = promisedIn(Days{2});
    garment.roll([](FilmRoll& roll) { roll.left = 107_mm; });
    const ReckonedShop shop = reckoned(aShop().with(garment));
    const PressedFirst first = pressedFirst(shop, kRoll, std::vector{decalAt(shop, 0)});
    EXPECT_FALSE(first.fits);
    EXPECT_EQ(first.length, 108_mm);
}

} // namespace holdfast::test
