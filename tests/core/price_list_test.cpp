// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/price_list.h"

#include "tests/core/builders.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace holdfast::test {
namespace {

std::vector<ListedStyle> listOf(const GarmentBuilder& garment,
                                const std::function<void(ShopSettings&)>& change = {}) {
    ShopBuilder shop = aShop().with(garment);
    if (change)
        shop.settings(change);
    return priceList(shop.build().facts);
}

// By hand: a tee of 12.00 with decals of 4.00 up to 100 mm and of 8.00 beyond, at its usual places: chest 280
// mm, left chest 90, back 300, sleeve 75 (placement_presets.h).
TEST(PriceListOfStall, SaysWhatTheShopsPriceListSays) {
    const auto list = listOf(aGarment(), [](ShopSettings& settings) {
        settings.prices.by = PricedBy::List;
        settings.prices.stylePrices[kTee] = Money{12'00};
        settings.prices.decalPrices = {{Millimetres{100}, Money{4'00}}, {Millimetres{300}, Money{8'00}}};
    });
    ASSERT_EQ(list.size(), 1U);
    EXPECT_EQ(list[0].name, "Tee");
    std::vector<Money> prices;
    for (const ListedPrice& price : list[0].prices) {
        EXPECT_EQ(price.least, price.most);
        prices.push_back(price.least);
    }
    EXPECT_EQ(prices, (std::vector<Money>{{20'00}, {16'00}, {20'00}, {16'00}}));
    EXPECT_EQ(list[0].prices[0].placement, Placement::Chest);
    EXPECT_EQ(list[0].prices[0].width, Millimetres{280});
}

TEST(PriceListOfStall, AFilmThatCostsMoreMakesARange) {
    GarmentBuilder garment = aGarment();
    garment.film([](Film& film) { film.costPerMetre = Money{5'00}; });
    garment.withOtherFilm([](Film& film) { film.costPerMetre = Money{60'00}; });
    const auto list = listOf(garment);
    ASSERT_EQ(list.size(), 1U);
    const ListedPrice& chest = list[0].prices[0];
    EXPECT_LT(chest.least, chest.most);
    EXPECT_GT(chest.least, Money{4'50}) << "more than its blank costs";
}

TEST(PriceListOfStall, WithTaxWherePricesHaveIt) {
    const auto tax = [](TaxKind kind) {
        return listOf(aGarment(), [=](ShopSettings& settings) {
            settings.prices.tax = {kind, {20'00}, TaxedBy::Total, Rounding::HalfUp};
        });
    };
    EXPECT_GT(tax(TaxKind::Included)[0].prices[0].least, tax(TaxKind::None)[0].prices[0].least);
    EXPECT_EQ(tax(TaxKind::Added)[0].prices[0].least, tax(TaxKind::None)[0].prices[0].least);
}

TEST(PriceListOfStall, LeavesOutWhatIsNotOffered) {
    EXPECT_TRUE(priceList(ShopFacts{}).empty());
    EXPECT_TRUE(listOf(aGarment().style([](BlankStyle& style) { style.isRetired = true; })).empty());
    EXPECT_TRUE(listOf(aGarment().film([](Film& film) { film.isRetired = true; })).empty());
    EXPECT_TRUE(listOf(aGarment().film([](Film& film) { film.recipe.reset(); })).empty());
    EXPECT_TRUE(listOf(aGarment().style([](BlankStyle& style) { style.outline = "kite"; })).empty())
        << "not drawn";
    EXPECT_FALSE(listOf(aGarment().onUnreadLabel()).empty()) << "any film until its label is read";
}

} // namespace
} // namespace holdfast::test
