// SPDX-License-Identifier: GPL-3.0-or-later
// Which holds leave a promised day true, and what is said while one does not. Which is which is common
// practice, no source.

#include "core/shop/settled_day.h"

#include "tests/core/reckoned_builder.h"

#include <gtest/gtest.h>

namespace holdfast::test {

namespace {

struct Told {
    bool isSettled = true;
    std::string words;
};

Told toldOf(const ShopBuilder& builder) {
    const ReckonedShop shop = reckoned(builder);
    const Finding* finding = whatUnsettlesDay(shop, *shop.facts.orders.begin());
    return finding ? Told{false, unsettledWords(*finding).english()} : Told{};
}

Told toldOf(const GarmentBuilder& garment) {
    return toldOf(aShop().with(garment));
}

GarmentBuilder onStretchyTee() {
    GarmentBuilder garment = aGarment();
    garment.label([](FabricLabel& label) { label.stretch = Stretch::High; });
    return garment;
}

} // namespace

TEST(SettledDay, ADayIsSettledWhereNothingHolds) {
    EXPECT_TRUE(toldOf(aGarment()).isSettled);
}

TEST(SettledDay, WhatThePromiseTakesTimeForLeavesItTrue) {
    EXPECT_TRUE(toldOf(aGarment().onUnwashedTee()).isSettled);
    EXPECT_TRUE(toldOf(aGarment().onSoftenedTee()).isSettled);
    EXPECT_TRUE(toldOf(aGarment().onNoBlank()).isSettled);
    EXPECT_TRUE(toldOf(aGarment().lacking("No roll.")).isSettled);
}

TEST(SettledDay, WhatSomebodyMustDecideOrBringLeavesItOpen) {
    EXPECT_EQ(toldOf(onStretchyTee()).words, "Stretches more than the film: choose another film first.");
    EXPECT_FALSE(toldOf(aGarment().onUnreadLabel()).isSettled);
    EXPECT_FALSE(toldOf(aGarment().onZipHoodie(std::nullopt)).isSettled);
    EXPECT_TRUE(toldOf(aGarment().onZipHoodie(WayRound::Pillow)).isSettled);
    EXPECT_FALSE(toldOf(aShop().with(aGarment()).withoutPress()).isSettled);
    EXPECT_FALSE(toldOf(aGarment().film([](Film& film) { film.recipe.reset(); })).isSettled);
}

TEST(SettledDay, ADepositLeavesItOpenOnlyWhereWorkWaitsForIt) {
    for (const bool holds : {true, false}) {
        const auto shop = aShop()
                              .with(aGarment().order([](Order& order) {
                                  order.total = Money{2000};
                                  order.paid = Money{};
                              }))
                              .settings([&](ShopSettings& settings) {
                                  settings.depositPercent = 25;
                                  settings.depositHolds = holds;
                              });
        EXPECT_NE(toldOf(shop).isSettled, holds);
    }
}

TEST(SettledDay, AWaivedHoldLeavesTheDayAsItIs) {
    GarmentBuilder garment = onStretchyTee();
    garment.waived(Rule::FilmUnfitStretch);
    EXPECT_TRUE(toldOf(garment).isSettled);
}

TEST(SettledDay, OneGarmentLeavesTheWholeOrderOpen) {
    GarmentBuilder second = aGarment();
    second.decal([](Decal& decal) { decal.confirmedBy.clear(); });
    ReckonedShop shop = reckoned(aShop().with(aGarment()).with(second));
    const OrderId first = shop.facts.orders.begin()->id;
    EXPECT_EQ(whatUnsettlesDay(shop, shop.facts.orders.at(first)), nullptr);
    std::vector<Garment> garments(shop.facts.garments.begin(), shop.facts.garments.end());
    for (Garment& garment : garments)
        garment.order = first;
    shop.facts.garments = Roster<Garment>{std::move(garments)};
    EXPECT_NE(whatUnsettlesDay(shop, shop.facts.orders.at(first)), nullptr);
}

TEST(SettledDay, NothingIsSaidOfWhatIsNoOpenOrder) {
    for (const OrderState state : {OrderState::Quoted, OrderState::Cancelled, OrderState::HandedOver}) {
        GarmentBuilder garment = onStretchyTee();
        garment.order([&](Order& order) { order.state = state; });
        EXPECT_TRUE(toldOf(garment).isSettled);
    }
}

} // namespace holdfast::test
