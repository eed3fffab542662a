// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/shop_facts.h"

#include "tests/core/builders.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

std::int64_t freeUnits(const TestShop& shop) {
    return shop.facts.freeUnits(shop.facts.lots.at(kLot));
}

TEST(ShopFacts, UnitsKeptForGarmentsAreNotFree) {
    EXPECT_EQ(freeUnits(aShop().with(aGarment()).with(aGarment()).build()), 3);
}

TEST(ShopFacts, GarmentThatTookItsUnitKeepsNoOther) {
    // The ledger has lost the unit already.
    EXPECT_EQ(freeUnits(aShop().with(aGarment().underway("read-tag-1")).with(aGarment()).build()), 4);
    EXPECT_EQ(freeUnits(aShop().with(aGarment().pressed(hoursAgo(1))).build()), 5);
}

TEST(ShopFacts, SpoiledGarmentKeepsAUnitForItsNextAttempt) {
    auto shop = aShop().with(aGarment().pressed(hoursAgo(1))).build();
    Garment again = shop.garment();
    again.attempt = 2;
    shop.facts.garments = Roster<Garment>({again});
    EXPECT_EQ(freeUnits(shop), 4);
}

TEST(ShopFacts, CancelledAndHandedOverKeepNothing) {
    const auto cancelled = [](Order& order) { order.state = OrderState::Cancelled; };
    const auto handedOver = [](Garment& garment) { garment.handedOverAt = hoursAgo(1); };
    EXPECT_EQ(
        freeUnits(aShop().with(aGarment().order(cancelled)).with(aGarment().garment(handedOver)).build()), 5);
}

TEST(ShopFacts, FreeUnitsNeverFallBelowNone) {
    const auto last = [](BlankLot& lot) { lot.unitsLeft = 1; };
    EXPECT_EQ(freeUnits(aShop().with(aGarment().lot(last)).with(aGarment()).build()), 0);
}

TEST(ShopFacts, GarmentsOfAnOrderStandByPosition) {
    auto shop = aShop().with(aGarment()).with(aGarment()).with(aGarment()).build();
    std::vector<Garment> garments(shop.facts.garments.begin(), shop.facts.garments.end());
    garments[0].position = 2;
    garments[2].order = garments[0].order;
    garments[2].position = 1;
    shop.facts.garments = Roster<Garment>(garments);
    const auto found = shop.facts.garmentsOf(garments[0].order);
    ASSERT_EQ(found.size(), 2u);
    EXPECT_EQ(found[0]->id, garments[2].id);
    EXPECT_EQ(found[1]->id, garments[0].id);
    EXPECT_EQ(shop.facts.labelOf(*found[1]), "418-b");
}

TEST(ShopFacts, StepsAndWaiversAreFoundAmongManyGarments) {
    ShopBuilder builder;
    for (int garment = 0; garment < 9; ++garment)
        builder.with(garment % 3 == 1 ? aGarment().doneThrough("preheat-1").waived(Rule::PressOff)
                                      : aGarment());
    const auto shop = builder.build();
    int number = 0;
    for (const Garment& garment : shop.facts.garments) {
        const bool isThird = number++ % 3 == 1;
        EXPECT_EQ(shop.facts.stepsOf(garment).size(), isThird ? 3u : 0u);
        EXPECT_EQ(shop.facts.waiversOf(garment.id).size(), isThird ? 1u : 0u);
    }
}

TEST(ShopFacts, LoadOfALotIsItsLast) {
    const auto washed = aShop().with(aGarment()).build();
    EXPECT_EQ(washed.facts.lastLoadOf(washed.facts.lots.at(kLot))->id, kLoad);
    const auto unwashed = aShop().with(aGarment().onUnwashedTee()).build();
    EXPECT_EQ(unwashed.facts.lastLoadOf(unwashed.facts.lots.at(kLot)), nullptr);
}

} // namespace
} // namespace holdfast::test
