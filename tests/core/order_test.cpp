// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/order.h"

#include "tests/core/builders.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

std::string letterAt(int position) {
    Garment garment;
    garment.position = position;
    return garment.letter();
}

TEST(Order, GarmentsAreLettered) {
    EXPECT_EQ(letterAt(1), "a");
    EXPECT_EQ(letterAt(2), "b");
    EXPECT_EQ(letterAt(26), "z");
    EXPECT_EQ(letterAt(27), "aa");
    EXPECT_EQ(letterAt(52), "az");
    EXPECT_EQ(letterAt(53), "ba");
    EXPECT_EQ(letterAt(702), "zz");
    EXPECT_EQ(letterAt(703), "aaa");
}

TEST(Order, LabelIsNumberAndLetter) {
    Order order;
    order.number = 418;
    Garment garment;
    garment.position = 2;
    EXPECT_EQ(garmentLabel(order, garment), "418-b");
}

TEST(Order, DecalIsSaidByDrawingOrByItsWords) {
    Decal decal;
    decal.content = Artwork{"heron"};
    EXPECT_EQ(decal.describe(), "Heron");
    decal.content = Artwork{"two-boats"};
    EXPECT_EQ(decal.describe(), "Two boats");
    decal.content = Artwork{"été"};
    EXPECT_EQ(decal.describe(), "été");
    decal.content = Wording{"Juno", Face::Plain};
    EXPECT_EQ(decal.describe(), "Name “Juno”");
}

TEST(Order, OpenUntilHandedOverOrCancelled) {
    Order order;
    EXPECT_TRUE(order.isOpen());
    order.state = OrderState::Quoted;
    EXPECT_TRUE(order.isOpen());
    order.state = OrderState::HandedOver;
    EXPECT_FALSE(order.isOpen());
    order.state = OrderState::Cancelled;
    EXPECT_FALSE(order.isOpen());
}

TEST(Order, OwedIsWhatIsNotPaidYet) {
    Order order;
    order.total = {9000};
    order.paid = {3000};
    EXPECT_EQ(order.owed(), Money{6000});
}

} // namespace
} // namespace holdfast::test
