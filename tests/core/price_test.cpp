// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/price.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <limits>
#include <random>

using namespace holdfast;
using namespace holdfast::literals;

namespace {

constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();

Film aFilm(Money costPerMetre) {
    Film film;
    film.rollWidth = 500_mm;
    film.costPerMetre = costPerMetre;
    return film;
}

BlankStyle aStyle(Money cost, Grams weight = {}) {
    BlankStyle style;
    style.cost = cost;
    style.weight = weight;
    return style;
}

Route aRoute(Seconds attended, Seconds platen, Seconds waiting) {
    Route route;
    route.steps.resize(2);
    route.steps[0].attended = attended;
    route.steps[1].platen = platen;
    route.steps[1].waiting = waiting;
    return route;
}

} // namespace

TEST(Price, FilmCostsItsAreaWithItsShareOfWaste) {
    const Film film = aFilm({1000});
    const DecalOnFilm decal{&film, 250_mm, 200_mm, false};
    ShopSettings settings;
    settings.filmWastePercent = 20;
    // 250 × 200 mm of a roll of 500 mm is a tenth of a metre; a fifth more for waste.
    EXPECT_EQ(costOf(aStyle({}), std::array{decal}, Seconds{0}, settings).film, Money{120});
    settings.filmWastePercent = 0;
    EXPECT_EQ(costOf(aStyle({}), std::array{decal}, Seconds{0}, settings).film, Money{100});
}

TEST(Price, EveryPartOfACostIsRoundedUpToAWholeUnit) {
    const Film film = aFilm({1});
    const DecalOnFilm speck{&film, 1_mm, 1_mm, false};
    ShopSettings settings;
    settings.minuteRate = {40};
    const Cost cost = costOf(aStyle({}), std::array{speck}, Seconds{1}, settings);
    EXPECT_EQ(cost.film, Money{1});
    EXPECT_EQ(cost.work, Money{1});
    EXPECT_EQ(costOf(aStyle({}), {}, Seconds{90}, settings).work, Money{60});
    EXPECT_EQ(costOf(aStyle({}), {}, Seconds{91}, settings).work, Money{61});
}

TEST(Price, CostAddsBlankFilmWorkAndOverhead) {
    const Film film = aFilm({1000});
    const DecalOnFilm decal{&film, 250_mm, 200_mm, false};
    ShopSettings settings;
    settings.overheadPerGarment = {60};
    settings.minuteRate = {40};
    const Cost cost = costOf(aStyle({420}), std::array{decal, decal}, Seconds{600}, settings);
    EXPECT_EQ(cost.blank, Money{420});
    EXPECT_EQ(cost.film, Money{240});
    EXPECT_EQ(cost.work, Money{400});
    EXPECT_EQ(cost.overhead, Money{60});
    EXPECT_EQ(cost.total(), Money{1120});
}

TEST(Price, MarginIsAShareOfThePriceAndThePriceIsRoundedUpToThePoint) {
    ShopSettings settings;
    settings.marginPercent = 45;
    settings.pricePoint = {50};
    EXPECT_EQ(priceOf(Cost{{1100}, {}, {}, {}}, settings), Money{2000}); // 1100 / 0.55, to the unit
    EXPECT_EQ(priceOf(Cost{{1101}, {}, {}, {}}, settings), Money{2050});
    settings.pricePoint = {1};
    EXPECT_EQ(priceOf(Cost{{1101}, {}, {}, {}}, settings), Money{2002}); // 2001.8…
    settings.marginPercent = 0;
    EXPECT_EQ(priceOf(Cost{{1101}, {}, {}, {}}, settings), Money{1101});
}

TEST(Price, MarkUpIsAShareOfTheCost) {
    ShopSettings settings;
    settings.pricePoint = {1};
    settings.prices.by = PricedBy::MarkUp;
    settings.prices.markUpPercent = 80;
    EXPECT_EQ(priceOf(Cost{{1100}, {}, {}, {}}, settings), Money{1980});
    settings.prices.markUpPercent = -5;
    EXPECT_EQ(priceOf(Cost{{1100}, {}, {}, {}}, settings), Money{1100});
}

TEST(Price, WithTaxInItThePriceIsRoundedUpAfterTheTax) {
    ShopSettings settings;
    settings.pricePoint = {50};
    settings.marginPercent = 45;
    settings.prices.tax = {TaxKind::Included, {20'00}, TaxedBy::Total, Rounding::HalfUp};
    EXPECT_EQ(priceOf(Cost{{1100}, {}, {}, {}}, settings), Money{2400}); // 2000 and a fifth
    EXPECT_EQ(priceOf(Cost{{1101}, {}, {}, {}}, settings), Money{2450}); // 2402.2, to the point
    settings.prices.tax.kind = TaxKind::Added;
    EXPECT_EQ(priceOf(Cost{{1100}, {}, {}, {}}, settings), Money{2000});
}

TEST(Price, ListPriceIsTheStyleAndEachDecalByItsLongerSide) {
    const Film film = aFilm({1000});
    BlankStyle style = aStyle({420});
    style.id = {7};
    ShopSettings settings;
    settings.prices.by = PricedBy::List;
    settings.prices.stylePrices[style.id] = {1500};
    settings.prices.decalPrices = {{100_mm, {200}}, {300_mm, {450}}};
    const DecalOnFilm small{&film, 100_mm, 40_mm, false};
    const DecalOnFilm tall{&film, 80_mm, 101_mm, false};
    const DecalOnFilm huge{&film, 500_mm, 90_mm, false};
    const Cost cost{{420}, {100}, {100}, {}};
    const auto asked = [&](std::vector<DecalOnFilm> decals) {
        return askedPrice(cost, style, decals, settings);
    };
    EXPECT_EQ(asked({}), Money{1500});
    EXPECT_EQ(asked({small}), Money{1700});
    EXPECT_EQ(asked({small, tall}), Money{2150});
    EXPECT_EQ(asked({huge}), Money{1950}); // as the longest on the list
    settings.prices.stylePrices.clear();
    EXPECT_EQ(asked({small}), priceOf(cost, settings)); // not on the list
    settings.prices.stylePrices[style.id] = {1500};
    settings.prices.decalPrices.clear();
    EXPECT_EQ(asked({small}), priceOf(cost, settings));
    EXPECT_EQ(asked({}), Money{1500});
    settings.prices.by = PricedBy::Margin;
    EXPECT_EQ(asked({}), priceOf(cost, settings));
}

TEST(Price, MarginsBeyondTheirLimitsCountAsTheLimits) {
    ShopSettings settings;
    settings.pricePoint = {1};
    const Cost cost{{100}, {}, {}, {}};
    settings.marginPercent = 95;
    EXPECT_EQ(priceOf(cost, settings), Money{2000});
    for (const int percent : {96, 100, 5000}) {
        settings.marginPercent = percent;
        EXPECT_EQ(priceOf(cost, settings), Money{2000});
    }
    settings.marginPercent = -30;
    EXPECT_EQ(priceOf(cost, settings), Money{100});
}

TEST(Price, PricePointThatIsNoneCountsAsOneUnit) {
    ShopSettings settings;
    settings.marginPercent = 0;
    for (const std::int64_t point : {std::int64_t{0}, std::int64_t{-50}, -kMost}) {
        settings.pricePoint = {point};
        EXPECT_EQ(priceOf(Cost{{101}, {}, {}, {}}, settings), Money{101});
    }
}

TEST(Price, NothingIsAskedOnlyForWhatCostsNothing) {
    EXPECT_EQ(priceOf(Cost{}, ShopSettings{}), Money{0});
    EXPECT_GT(priceOf(Cost{{}, {1}, {}, {}}, ShopSettings{}), Money{0});
}

TEST(Price, PriceIsNeverBelowItsCostAndRisesWithIt) {
    std::mt19937 random{5};
    std::uniform_int_distribution<std::int64_t> money{0, 100'000};
    std::uniform_int_distribution<int> percent{0, 95};
    for (int trial = 0; trial < 5000; ++trial) {
        ShopSettings settings;
        settings.marginPercent = percent(random);
        settings.pricePoint = {money(random) % 500};
        const Cost cost{{money(random)}, {money(random)}, {money(random)}, {money(random)}};
        const Money price = priceOf(cost, settings);
        ASSERT_GE(price, cost.total());
        // What is left of the price after the cost is at least the margin.
        ASSERT_GE((price - cost.total()).minor * 100, price.minor * settings.marginPercent);
        ASSERT_EQ(price.minor % std::max<std::int64_t>(1, settings.pricePoint.minor), 0);
        ASSERT_GE(priceOf(Cost{cost.blank + Money{1}, cost.film, cost.work, cost.overhead}, settings), price);
    }
}

TEST(Price, WhatIsBelowZeroCostsNothing) {
    const Film film = aFilm({-1000});
    const Film cheap = aFilm({1000});
    const std::array decals{DecalOnFilm{&film, 100_mm, 100_mm, false},
                            DecalOnFilm{&cheap, -100_mm, 100_mm, false},
                            DecalOnFilm{nullptr, 100_mm, 100_mm, false}};
    ShopSettings settings;
    settings.minuteRate = {-40};
    settings.overheadPerGarment = {-1};
    EXPECT_EQ(costOf(aStyle({-500}), decals, Seconds{-60}, settings).total(), Money{0});
}

TEST(Price, AbsurdNumbersSaturate) {
    Film film = aFilm({kMost});
    film.rollWidth = {1};
    const DecalOnFilm decal{&film, {kMost}, {kMost}, true};
    ShopSettings settings;
    settings.minuteRate = {kMost};
    settings.overheadPerGarment = {kMost};
    settings.filmWastePercent = std::numeric_limits<int>::max();
    settings.marginPercent = 95;
    settings.pricePoint = {kMost};
    const std::array decals{decal, decal};
    const BlankStyle style = aStyle({kMost}, {kMost});
    const Seconds hands = handsFor(aRoute(Seconds{kMost}, Seconds{kMost}, Seconds{kMost}), decals, style, {});
    EXPECT_EQ(hands, Days{366});
    const Cost cost = costOf(style, decals, hands, settings);
    EXPECT_EQ(cost.blank, kMostCost);
    EXPECT_EQ(cost.film, kMostCost);
    EXPECT_EQ(cost.work, kMostCost);
    EXPECT_EQ(cost.overhead, kMostCost);
    EXPECT_EQ(priceOf(cost, settings), kMostCost * 80);
    EXPECT_EQ(priceOf(Cost{{kMost}, {kMost}, {kMost}, {kMost}}, settings), kMostCost * 80);
    settings.depositPercent = 100;
    EXPECT_EQ(depositDue({kMost}, settings), Money{kMost});
}

TEST(Price, RollWithoutAWidthIsReckonedAtTheUsualOne) {
    Film film = aFilm({1000});
    film.rollWidth = 0_mm;
    ShopSettings settings;
    settings.filmWastePercent = 0;
    EXPECT_EQ(
        costOf(aStyle({}), std::array{DecalOnFilm{&film, 250_mm, 200_mm, false}}, Seconds{0}, settings).film,
        Money{100});
}

TEST(Price, MakersTimeIsAttendedAndPlatenTimeNotWaiting) {
    EXPECT_EQ(handsFor(aRoute(Seconds{40}, Seconds{12}, Seconds{600}), {}, aStyle({}), {}), Seconds{52});
}

TEST(Price, WeedingGrowsWithTheDecalAndLettersTakeHalfAsMuchAgain) {
    const std::array plain{DecalOnFilm{nullptr, 200_mm, 100_mm, false}};
    const std::array letters{DecalOnFilm{nullptr, 200_mm, 100_mm, true}};
    EXPECT_EQ(handsFor(Route{}, plain, aStyle({}), {}), Seconds{60 + 2 * 25});
    EXPECT_EQ(handsFor(Route{}, letters, aStyle({}), {}), Seconds{165});
}

TEST(Price, WeedingTakesAsLongAsTheShopSays) {
    const std::vector<DecalOnFilm> plain{{nullptr, Millimetres{100}, Millimetres{200}, false}};
    ShopSettings settings;
    settings.weedingTakes = Seconds{90};
    EXPECT_EQ(handsFor(Route{}, plain, aStyle({}), settings), Seconds{90 + 2 * 25});
}

TEST(Price, BlankThatIsNotPrewashedTakesNoShareOfALoad) {
    BlankStyle style = aStyle({}, 160_g);
    EXPECT_EQ(handsFor(Route{}, {}, style, {}), Seconds{24});
    style.notPrewashedBecause = "waxed cloth";
    EXPECT_EQ(handsFor(Route{}, {}, style, {}), Seconds{0});
}

TEST(Price, DepositIsAShareRoundedUpToThePointAndNeverMoreThanTheTotal) {
    ShopSettings settings;
    settings.pricePoint = {50};
    settings.depositPercent = 50;
    EXPECT_EQ(depositDue({2650}, settings), Money{1350});
    EXPECT_EQ(depositDue({2600}, settings), Money{1300});
    EXPECT_EQ(depositDue({30}, settings), Money{30});
    settings.depositPercent = 0;
    EXPECT_EQ(depositDue({2650}, settings), Money{0});
    settings.depositPercent = 250;
    EXPECT_EQ(depositDue({2650}, settings), Money{2650});
    settings.depositPercent = -5;
    EXPECT_EQ(depositDue({2650}, settings), Money{0});
    settings.depositPercent = 50;
    EXPECT_EQ(depositDue({-100}, settings), Money{0});
}
