// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/price_rules_check.h"

#include <gtest/gtest.h>

#include <functional>

namespace holdfast {
namespace {

using namespace literals;

// The field that is named after one thing was changed in rules that are sound; empty: none.
std::string wrongAfter(const std::function<void(PriceRules&)>& change) {
    PriceRules rules;
    rules.forMany = {{12, {5'00}}, {24, {10'00}}};
    rules.extras = {{"Gift wrap", {2'50}}};
    rules.rushWithin = Days{3};
    rules.rushMore = {25'00};
    rules.tax = {TaxKind::Included, {20'00}, TaxedBy::Line, Rounding::HalfEven};
    rules.stylePrices = {{BlankStyleId{1}, {15'00}}};
    rules.decalPrices = {{100_mm, {2'00}}, {300_mm, {4'50}}};
    change(rules);
    const auto checked = checkPriceRules(rules, Currency{});
    return checked.ok() ? std::string{} : checked.error().field;
}

TEST(PriceRulesCheck, SoundRulesPass) {
    EXPECT_EQ(wrongAfter([](PriceRules&) {}), "");
    EXPECT_TRUE(checkPriceRules(PriceRules{}, Currency{}).ok());
}

TEST(PriceRulesCheck, NamesTheFieldOfWhatIsWrong) {
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.markUpPercent = 1'001; }), "markUpPercent");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.rushWithin = Days{-1}; }), "rushWithin");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.rushMore = {100'01}; }), "rushMore");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.tax.rate = {-1}; }), "taxRate");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.tax.rate = {}; }), "taxRate");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.forMany[0].garments = 1; }), "forMany");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.forMany[1].garments = 12; }), "forMany");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.forMany[1].less = {5'00}; }), "forMany");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.forMany[1].less = {100'00}; }), "forMany");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.forMany.assign(11, {12, {5'00}}); }), "forMany");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.extras[0].words = " "; }), "extras");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.extras[0].amount = {-1}; }), "extras");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.extras.assign(21, {"Wrap", {1}}); }), "extras");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.stylePrices[BlankStyleId{1}] = {-1}; }),
              "stylePrices");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.decalPrices[1].upTo = 100_mm; }), "decalPrices");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.decalPrices[0].upTo = 0_mm; }), "decalPrices");
    EXPECT_EQ(wrongAfter([](PriceRules& rules) { rules.decalPrices[0].price = {1'000'000'00}; }),
              "decalPrices");
}

} // namespace
} // namespace holdfast
