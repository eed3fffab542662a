// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/row_words.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {

class RowWords : public SmallShop {
protected:
    std::string wordsOf(const std::string& table, std::int64_t key) {
        return rowWords(connection(), table, std::to_string(key)).english();
    }
};

TEST_F(RowWords, RollsAndGarmentsAreCalledByTheirNumbersOnPaper) {
    const OrderTaken order = readyToPress(27);
    pressAll(garmentOf(order, 26));
    const std::string number = std::to_string(order.number);
    EXPECT_EQ(wordsOf("shop_order", order.id.value), "order " + number);
    EXPECT_EQ(wordsOf("garment", garmentOf(order).value), "garment " + number + "-a");
    EXPECT_EQ(wordsOf("garment", garmentOf(order, 26).value), "garment " + number + "-aa");
    EXPECT_EQ(wordsOf("press_step", SmallShop::number("SELECT MIN(id) FROM press_step")),
              "a step of garment " + number + "-aa");
    EXPECT_EQ(wordsOf("film_roll", SmallShop::number("SELECT MIN(id) FROM film_roll")), "roll R-01");
}

TEST_F(RowWords, WhatCannotBeNamedIsCalledByItsKind) {
    EXPECT_EQ(wordsOf("garment", 1), "a garment");
    EXPECT_EQ(wordsOf("film_roll", 1), "a roll");
    EXPECT_EQ(wordsOf("wash_load", 1), "a wash load");
    EXPECT_EQ(wordsOf("some_table", 1), "a row of some table");
}

} // namespace holdfast::db
