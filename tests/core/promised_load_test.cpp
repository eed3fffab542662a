#include "core/shop/promised_load.h"

#include "tests/core/builders.h"

#include <gtest/gtest.h>

namespace holdfast::test {

namespace {

std::vector<PressLoad> loadOf(const GarmentBuilder& garment) {
    const TestShop shop = aShop().with(garment).build();
    ReckonedShop reckoned;
    reckoned.now = shop.now;
    reckoned.facts = shop.facts;
    reckoned.assessments = assessAll(shop.around());
    return promisedLoad(reckoned);
}

} // namespace

TEST(PromisedLoad, AGarmentStillToBePressedIsDueTheRestBeforeItsPromise) {
    const TestShop shop = aShop().with(aGarment()).build();
    const auto load = loadOf(aGarment());
    ASSERT_EQ(load.size(), 1u);
    const Order& order = shop.facts.orderOf(shop.garment());
    EXPECT_EQ(load[0].due, order.promised - shop.route().restAfter);
    EXPECT_EQ(load[0].work, pressTime(shop.route()));
    EXPECT_LT(load[0].work, shop.route().total()); // cooling takes neither hands nor platen
}

TEST(PromisedLoad, WhatIsBegunTakesOnlyWhatIsLeftOfItsRoute) {
    const auto whole = loadOf(aGarment());
    const auto rest = loadOf(aGarment().doneThrough("preheat-1"));
    ASSERT_EQ(rest.size(), 1u);
    EXPECT_LT(rest[0].work, whole[0].work);
    EXPECT_GT(rest[0].work, Seconds{0});
}

TEST(PromisedLoad, WhatIsPressedQuotedOrCancelledTakesNothing) {
    EXPECT_TRUE(loadOf(aGarment().pressed(hoursAgo(1))).empty());
    for (const OrderState state : {OrderState::Quoted, OrderState::Cancelled, OrderState::HandedOver})
        EXPECT_TRUE(loadOf(aGarment().order([&](Order& order) { order.state = state; })).empty());
}

} // namespace holdfast::test
