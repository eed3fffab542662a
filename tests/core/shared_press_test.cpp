// SPDX-License-Identifier: GPL-3.0-or-later
// Two garments under one platen, which two laptops can bring about between them.
#include "core/shop/shared_press.h"

#include "tests/core/builders.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

std::vector<SharedPress> sharedBy(const std::string& one, const std::string& other) {
    const auto shop = aShop()
                          .with(aGarment().doneThrough("place-1").underway(one))
                          .with(aGarment().doneThrough("place-1").underway(other))
                          .build();
    return sharedPresses(shop.facts, shop.garment().order);
}

TEST(SharedPress, IsOfTwoThatLieUnderThePlaten) {
    const auto shared = sharedBy("press-1", "press-1");
    ASSERT_EQ(shared.size(), 1U);
    EXPECT_EQ(shared[0].garment, "418-a");
    EXPECT_EQ(shared[0].other, "418-a") << "all orders of these shops bear that number";
}

TEST(SharedPress, IsNotOfOneThatCoolsOrIsInHand) {
    EXPECT_TRUE(sharedBy("press-1", "cool-1").empty());
    EXPECT_TRUE(sharedBy("cool-1", "press-1").empty());
    EXPECT_TRUE(sharedBy("press-1", "place-1").empty());
    const auto alone = aShop().with(aGarment().doneThrough("place-1").underway("press-1")).build();
    EXPECT_TRUE(sharedPresses(alone.facts, alone.garment().order).empty());
}

} // namespace
} // namespace holdfast::test
