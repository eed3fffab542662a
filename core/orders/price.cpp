// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/price.h"

#include "core/orders/cutting_time.h"

#include <algorithm>

namespace holdfast {

namespace {

// Products of lengths, money and shares pass 64 bits before they are divided again.
__extension__ using Wide = __int128;

constexpr std::int64_t kLongestSide = 1'000'000'000; // mm
constexpr std::int64_t kMostWastePriced = 1'000;     // percent
constexpr std::int64_t kMostPercent = 95;            // of margin
constexpr std::int64_t kMostMarkUp = 1'000;          // percent of the cost
constexpr Millimetres kUsualRollWidth{500};

constexpr std::int64_t kWashingForWeight = 15; // s
constexpr std::int64_t kWashingWeight = 100;   // g

// REQUIRES: neither below zero, a denominator above it.
Wide roundedUp(Wide numerator, Wide denominator) {
    return (numerator + denominator - 1) / denominator;
}

Money asCost(Wide minor) {
    return {static_cast<std::int64_t>(std::clamp<Wide>(minor, 0, kMostCost.minor))};
}

Money asCost(Money money) {
    return asCost(static_cast<Wide>(money.minor));
}

std::int64_t side(Millimetres length) {
    return std::clamp<std::int64_t>(length.value, 0, kLongestSide);
}

Wide areaOf(const DecalOnFilm& decal) {
    return static_cast<Wide>(side(decal.width)) * side(decal.height);
}

// To the shop's price point; a point that is none counts as one minor unit.
Wide toPricePoint(Wide minor, const ShopSettings& settings) {
    const Wide point = std::clamp<Wide>(settings.pricePoint.minor, 1, kMostCost.minor);
    return roundedUp(minor, point) * point;
}

std::int64_t taxRate(const TaxRule& tax) {
    return std::clamp<std::int64_t>(tax.rate.hundredths, 0, kWholePercentage.hundredths);
}

Money filmCost(const DecalOnFilm& decal, const ShopSettings& settings) {
    if (!decal.film)
        return {};
    const Millimetres rollWidth =
        decal.film->rollWidth > Millimetres{} ? decal.film->rollWidth : kUsualRollWidth;
    const std::int64_t withWaste =
        100 + std::clamp<std::int64_t>(settings.filmWastePercent, 0, kMostWastePriced);
    const Wide numerator = areaOf(decal) * withWaste * asCost(decal.film->costPerMetre).minor;
    const Wide denominator = static_cast<Wide>(rollWidth.value) * 1'000 * 100;
    return asCost(roundedUp(numerator, denominator));
}

std::int64_t counted(Seconds duration) {
    return std::clamp<std::int64_t>(duration.count(), 0, kLongestWork.count());
}

Seconds together(Seconds sum, std::int64_t more) {
    return std::min<Seconds>(sum + Seconds{more}, kLongestWork);
}

} // namespace

Cost costOf(const BlankStyle& style, std::span<const DecalOnFilm> decals, Seconds hands,
            const ShopSettings& settings) {
    Cost cost;
    cost.blank = asCost(style.cost);
    for (const DecalOnFilm& decal : decals)
        cost.film = asCost(cost.film + filmCost(decal, settings));
    cost.work = asCost(roundedUp(static_cast<Wide>(counted(hands)) * asCost(settings.minuteRate).minor, 60));
    cost.overhead = asCost(settings.overheadPerGarment);
    return cost;
}

Seconds handsAlong(const Route& route) {
    Seconds sum{0};
    for (const RouteStep& step : route.steps)
        sum = together(sum, counted(step.attended) + counted(step.platen));
    return sum;
}

Seconds handsFor(Seconds alongRoute, std::span<const DecalOnFilm> decals, const BlankStyle& style,
                 const ShopSettings& settings) {
    Seconds hands = alongRoute;
    for (const DecalOnFilm& decal : decals)
        hands = together(hands,
                         weedingTime({{}, decal.width, decal.height, decal.isLettering}, settings).count());
    if (style.washedFirst() && style.weight > Grams{})
        hands = together(
            hands, static_cast<std::int64_t>(std::min<Wide>(
                       roundedUp(static_cast<Wide>(style.weight.value) * kWashingForWeight, kWashingWeight),
                       kLongestWork.count())));
    return hands;
}

Seconds handsFor(const Route& route, std::span<const DecalOnFilm> decals, const BlankStyle& style,
                 const ShopSettings& settings) {
    return handsFor(handsAlong(route), decals, style, settings);
}

Money priceOf(const Cost& cost, const ShopSettings& settings) {
    const Wide total = static_cast<Wide>(asCost(cost.blank).minor) + asCost(cost.film).minor +
                       asCost(cost.work).minor + asCost(cost.overhead).minor;
    const PriceRules& prices = settings.prices;
    Wide price = 0;
    if (prices.by == PricedBy::MarkUp) {
        const Wide markUp = std::clamp<std::int64_t>(prices.markUpPercent, 0, kMostMarkUp);
        price = roundedUp(total * (100 + markUp), 100);
    } else {
        price =
            roundedUp(total * 100, 100 - std::clamp<std::int64_t>(settings.marginPercent, 0, kMostPercent));
    }
    if (prices.tax.kind == TaxKind::Included)
        price = roundedUp(price * (kWholePercentage.hundredths + taxRate(prices.tax)),
                          kWholePercentage.hundredths);
    return {static_cast<std::int64_t>(toPricePoint(price, settings))};
}

std::optional<Money> listPrice(const BlankStyle& style, std::span<const DecalOnFilm> decals,
                               const PriceRules& prices) {
    const auto listed = prices.stylePrices.find(style.id);
    if (listed == prices.stylePrices.end() || (prices.decalPrices.empty() && !decals.empty()))
        return std::nullopt;
    Money price = asCost(listed->second);
    for (const DecalOnFilm& decal : decals) {
        const Millimetres longer = std::max(decal.width, decal.height);
        const auto enough = std::ranges::find_if(prices.decalPrices,
                                                 [&](const DecalPrice& each) { return each.upTo >= longer; });
        const DecalPrice& asked = enough == prices.decalPrices.end() ? prices.decalPrices.back() : *enough;
        price = asCost(price + asCost(asked.price));
    }
    return price;
}

Money askedPrice(const Cost& cost, const BlankStyle& style, std::span<const DecalOnFilm> decals,
                 const ShopSettings& settings) {
    if (settings.prices.by == PricedBy::List)
        if (const auto listed = listPrice(style, decals, settings.prices))
            return *listed;
    return priceOf(cost, settings);
}

Money depositDue(Money total, const ShopSettings& settings) {
    if (total <= Money{})
        return {};
    const std::int64_t percent = std::clamp(settings.depositPercent, 0, 100);
    const Wide share = roundedUp(static_cast<Wide>(total.minor) * percent, 100);
    return {static_cast<std::int64_t>(std::min<Wide>(total.minor, toPricePoint(share, settings)))};
}

} // namespace holdfast
