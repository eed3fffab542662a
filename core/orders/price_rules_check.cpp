// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/price_rules_check.h"

#include "core/trade/limits.h"

#include <algorithm>

namespace holdfast {

namespace {

constexpr std::int64_t kMostUnitsAsked = 1'000'000; // of the currency
constexpr std::int64_t kLongestDecal = 2'000;       // mm

// What is from 0 to below a million units of the currency.
Result<Done> checkAsked(Money price, std::string_view field, const Phrase& what, const Currency& currency) {
    Money limit{kMostUnitsAsked};
    for (int place = 0; place < currency.exponent; ++place)
        limit = limit * 10;
    if (price >= Money{} && price < limit)
        return Done{};
    return fieldError(std::string{field}, said("{what} must be 0 or more and below {limit}.",
                                               {{"what", what}, {"limit", Amount{limit, currency}}}));
}

Result<Done> checkForMany(const std::vector<PriceForMany>& rules) {
    if (auto count = within(
            std::ssize(rules),
            {.field = "forMany", .what = phrase("The number of prices for many"), .least = 0, .most = 10});
        !count.ok())
        return count;
    const PriceForMany* before = nullptr;
    for (const PriceForMany& rule : rules) {
        if (auto garments =
                within(rule.garments,
                       {.field = "forMany", .what = phrase("Many garments"), .least = 2, .most = 200});
            !garments.ok())
            return garments;
        if (rule.less <= Percentage{} || rule.less >= kWholePercentage)
            return fieldError("forMany", said("What many cost less must be more than 0 and below 100 %."));
        if (before && (rule.garments <= before->garments || rule.less <= before->less))
            return fieldError("forMany",
                              said("Each price for many needs more garments, and more off, than the one "
                                   "before."));
        before = &rule;
    }
    return Done{};
}

Result<Done> checkExtras(const std::vector<UsualExtra>& extras, const Currency& currency) {
    if (auto count =
            within(std::ssize(extras),
                   {.field = "extras", .what = phrase("The number of extras"), .least = 0, .most = 20});
        !count.ok())
        return count;
    for (const UsualExtra& extra : extras) {
        const auto words =
            typedText(extra.words, {.field = "extras", .what = phrase("What an extra is for"), .most = 60});
        if (!words.ok())
            return words.error();
        if (auto asked = checkAsked(extra.amount, "extras", phrase("An extra"), currency); !asked.ok())
            return asked;
    }
    return Done{};
}

Result<Done> checkRates(const PriceRules& rules) {
    if (rules.rushMore < Percentage{} || rules.rushMore > kWholePercentage)
        return fieldError("rushMore", said("The rush price must be from 0 to 100 % more."));
    if (rules.tax.rate < Percentage{} || rules.tax.rate > kWholePercentage)
        return fieldError("taxRate", said("The rate of tax must be from 0 to 100 %."));
    if (rules.tax.kind != TaxKind::None && rules.tax.rate == Percentage{})
        return fieldError("taxRate", said("Name the rate of tax, or choose no tax."));
    return Done{};
}

Result<Done> checkList(const PriceRules& rules, const Currency& currency) {
    for (const auto& [style, price] : rules.stylePrices)
        if (auto asked = checkAsked(price, "stylePrices", phrase("The price of a style"), currency);
            !asked.ok())
            return asked;
    const DecalPrice* before = nullptr;
    for (const DecalPrice& decal : rules.decalPrices) {
        if (auto length = within(decal.upTo.value, {.field = "decalPrices",
                                                    .what = phrase("A decal’s longer side"),
                                                    .least = 1,
                                                    .most = kLongestDecal,
                                                    .unit = " mm"});
            !length.ok())
            return length;
        if (auto asked = checkAsked(decal.price, "decalPrices", phrase("The price of a decal"), currency);
            !asked.ok())
            return asked;
        if (before && decal.upTo <= before->upTo)
            return fieldError("decalPrices", said("Each size of decal must be longer than the one before."));
        before = &decal;
    }
    return Done{};
}

} // namespace

Result<Done> checkPriceRules(const PriceRules& rules, const Currency& currency) {
    const auto wrong = firstError({
        within(rules.markUpPercent, {.field = "markUpPercent",
                                     .what = phrase("The mark-up"),
                                     .least = 0,
                                     .most = 1'000,
                                     .unit = " %"}),
        within(rules.rushWithin.count(), {.field = "rushWithin",
                                          .what = phrase("The days of a rush"),
                                          .least = 0,
                                          .most = 365,
                                          .unit = " days"}),
        within(rules.quotationFor.count(), {.field = "quotationFor",
                                            .what = phrase("How long a quotation is valid"),
                                            .least = 1,
                                            .most = 365,
                                            .unit = " days"}),
        checkForMany(rules.forMany),
        checkExtras(rules.extras, currency),
        checkRates(rules),
        checkList(rules, currency),
    });
    return wrong ? Result<Done>{*wrong} : Result<Done>{Done{}};
}

} // namespace holdfast
