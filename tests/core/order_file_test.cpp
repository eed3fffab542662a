// SPDX-License-Identifier: GPL-3.0-or-later
// What the columns of a web shop's file may be, and what is wrong with a naming.
#include "core/orders/order_file.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

using Columns = std::map<OrderColumn, std::string>;

Columns likely(const std::vector<std::string>& headings) {
    return likelyColumns(headings);
}

TEST(LikelyColumns, AreFoundWhateverTheirCapitals) {
    EXPECT_EQ(likely({"ORDER", "Buyer", "Product", "Qty"}), (Columns{{OrderColumn::Reference, "ORDER"},
                                                                     {OrderColumn::Customer, "Buyer"},
                                                                     {OrderColumn::Item, "Product"},
                                                                     {OrderColumn::Copies, "Qty"}}));
}

TEST(LikelyColumns, WhatIsNamedInFullComesBeforeWhatHasItInIt) {
    EXPECT_EQ(likely({"Order total", "Order", "Item size", "Size"})[OrderColumn::Reference], "Order");
    EXPECT_EQ(likely({"Order total", "Order", "Item size", "Size"})[OrderColumn::Size], "Size");
}

TEST(LikelyColumns, EachHeadingIsOneColumnOnly) {
    const Columns columns = likely({"Customer name", "Product name"});
    EXPECT_EQ(columns,
              (Columns{{OrderColumn::Customer, "Customer name"}, {OrderColumn::Item, "Product name"}}));
}

TEST(LikelyColumns, NothingIsGuessedOfOtherHeadings) {
    EXPECT_TRUE(likely({"Weight", "Postcode", ""}).empty());
    EXPECT_TRUE(likely({}).empty());
}

TEST(OrderFileNamings, WhatIsMissingOrTwiceIsNamedAtItsField) {
    OrderFileNaming naming{"Web shop", {"Order", "Name", "Item"}, {}, {}};
    naming.columns = {{OrderColumn::Reference, "Order"}, {OrderColumn::Customer, "Name"}};
    const auto missing = checkNaming(naming);
    ASSERT_FALSE(missing.ok());
    EXPECT_EQ(missing.error().field, "columns");
    naming.columns[OrderColumn::Item] = "Name";
    EXPECT_FALSE(checkNaming(naming).ok()) << "one heading for two columns";
    naming.columns[OrderColumn::Item] = "Goods";
    EXPECT_FALSE(checkNaming(naming).ok()) << "it is not in the file";
    naming.columns[OrderColumn::Item] = "Item";
    EXPECT_TRUE(checkNaming(naming).ok());
    naming.shop = std::string(41, 'W');
    const auto longName = checkNaming(naming);
    ASSERT_FALSE(longName.ok());
    EXPECT_EQ(longName.error().field, "shop");
}

} // namespace
} // namespace holdfast
