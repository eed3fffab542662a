// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/promised_load.h"

#include "core/shop/promise_again.h"
#include "tests/core/reckoned_builder.h"

#include <gtest/gtest.h>

namespace holdfast::test {

namespace {

Promised loadOf(const GarmentBuilder& garment) {
    return promisedLoad(reckoned(aShop().with(garment)));
}

GarmentBuilder anUncutGarment() {
    GarmentBuilder garment = aGarment();
    garment.uncut().decal([](Decal& decal) {
        decal.width = 200_mm;
        decal.height = 100_mm;
    });
    return garment;
}

// The order that the garment given so many-th belongs to.
OrderId orderAt(const ReckonedShop& shop, std::size_t at) {
    return std::next(shop.facts.garments.begin(), static_cast<std::ptrdiff_t>(at))->order;
}

} // namespace

TEST(PromisedLoad, AGarmentStillToBePressedIsDueTheRestBeforeItsPromise) {
    const TestShop shop = aShop().with(aGarment()).build();
    const auto work = loadOf(aGarment()).work;
    ASSERT_EQ(work.size(), 1u);
    const Order& order = shop.facts.orderOf(shop.garment());
    EXPECT_EQ(work[0].due, order.promised - shop.route().restAfter);
    EXPECT_EQ(work[0].work, pressTime(shop.route()));
    Seconds handsAndPlaten{0};
    for (const RouteStep& step : shop.route().steps)
        handsAndPlaten += step.attended + step.platen;
    EXPECT_EQ(work[0].work, handsAndPlaten);
    EXPECT_LT(work[0].work, shop.route().total()); // cooling takes neither hands nor platen
    EXPECT_EQ(loadOf(aGarment()).longestGarment, pressTime(shop.route()));
}

TEST(PromisedLoad, WhatIsBegunTakesOnlyWhatIsLeftOfItsRoute) {
    const auto whole = loadOf(aGarment()).work;
    const auto rest = loadOf(aGarment().doneThrough("preheat-1")).work;
    ASSERT_EQ(rest.size(), 1u);
    EXPECT_LT(rest[0].work, whole[0].work);
    EXPECT_GT(rest[0].work, Seconds{0});
}

TEST(PromisedLoad, WhatIsPressedQuotedOrCancelledTakesNothing) {
    EXPECT_TRUE(loadOf(aGarment().pressed(hoursAgo(1))).work.empty());
    for (const OrderState state : {OrderState::Quoted, OrderState::Cancelled, OrderState::HandedOver})
        EXPECT_TRUE(loadOf(aGarment().order([&](Order& order) { order.state = state; })).work.empty());
}

TEST(PromisedLoad, WhatWasHandedOverTakesNothingThoughNoPressIsOnRecord) {
    EXPECT_TRUE(loadOf(aGarment().garment([](Garment& garment) {
                    garment.handedOverAt = hoursAgo(1);
                })).work.empty());
}

TEST(PromisedLoad, ADecalHasItsFilmOnARollThatMayBeUsed) {
    const auto hasFilm = [](const GarmentBuilder& garment) {
        const ReckonedShop shop = reckoned(aShop().with(garment));
        return decalsToCut(shop, *shop.facts.garments.begin()).at(0).hasFilm;
    };
    EXPECT_TRUE(hasFilm(anUncutGarment()));
    EXPECT_FALSE(hasFilm(anUncutGarment().condition([](RollCondition& roll) { roll.stripFailed = true; })));
    EXPECT_FALSE(hasFilm(anUncutGarment().roll([](FilmRoll& roll) { roll.left = 50_mm; })));
}

TEST(PromisedLoad, DecalsStillToBeCutTakeTheHandsToo) {
    const Seconds pressing = loadOf(aGarment()).work.front().work;
    // The cut, 4 min; weeding, a minute and 25 s for each of 2 × 100 cm².
    EXPECT_EQ(loadOf(anUncutGarment()).work.front().work, pressing + Seconds{240 + 60 + 50});
}

TEST(PromisedLoad, GarmentsOfAnOrderAreCutTogether) {
    ReckonedShop shop = reckoned(aShop().with(anUncutGarment()).with(anUncutGarment()));
    const Seconds apart = promisedLoad(shop).work[0].work + promisedLoad(shop).work[1].work;
    std::vector<Garment> garments(shop.facts.garments.begin(), shop.facts.garments.end());
    garments[1].order = garments[0].order;
    shop.facts.garments = Roster<Garment>{garments};
    const Seconds together = promisedLoad(shop).work[0].work + promisedLoad(shop).work[1].work;
    EXPECT_EQ(apart - together, Minutes{4});
}

TEST(PromisedLoad, UnwashedBlanksTakeTheirRoomInTheWasher) {
    EXPECT_TRUE(loadOf(aGarment()).washes.empty());
    EXPECT_TRUE(loadOf(aGarment().onDampTee()).washes.empty());
    EXPECT_TRUE(loadOf(aGarment().onUnwashedTee().waived(Rule::BlankUnwashed)).washes.empty());
    for (const auto& garment : {aGarment().onUnwashedTee(), aGarment().onSoftenedTee()}) {
        const auto washes = loadOf(garment).washes;
        ASSERT_EQ(washes.size(), 1u);
        EXPECT_EQ(washes[0].there, theMoment().local());
        EXPECT_EQ(washes[0].weight, aTee().weight);
    }
}

TEST(PromisedLoad, ABlankStillToBeBoughtIsWashedWhenItComes) {
    GarmentBuilder garment = aGarment().onNoBlank();
    garment.order([](Order& order) { order.takenAt = daysAgo(2); });
    const auto washes = loadOf(garment).washes;
    ASSERT_EQ(washes.size(), 1u);
    EXPECT_EQ(washes[0].there, LocalTime{theMoment().today() + Days{3}}); // five days from the order
}

TEST(PromisedLoad, FilmOnRollsThatMayBeUsedIsFreeBesideWhatIsAllotted) {
    const auto film = loadOf(anUncutGarment()).film;
    ASSERT_EQ(film.size(), 1u);
    EXPECT_EQ(film[0].film, kFilm);
    EXPECT_LT(film[0].left, 5000_mm);
    EXPECT_GE(film[0].left, 5000_mm - 208_mm);
    EXPECT_EQ(loadOf(aGarment()).film[0].left, 5000_mm);
    EXPECT_TRUE(loadOf(aGarment().condition([](RollCondition& condition) {
                    condition.useBy = theMoment().today() - Days{1};
                })).film.empty());
}

// What holds the roll holds the garment, whether the order is confirmed or only quoted.
TEST(Quotations, ShowTheHoldsOfTheRollThatTheyWouldBeCutFrom) {
    for (const OrderState state : {OrderState::Quoted, OrderState::Confirmed}) {
        GarmentBuilder garment = anUncutGarment();
        garment.order([state](Order& order) { order.state = state; });
        garment.condition([](RollCondition& condition) {
            condition.humidityHoursOutside = 160;
            condition.stripFailed = true;
        });
        const ReckonedShop shop = reckoned(aShop().with(garment));
        const auto& findings = shop.assessments.begin()->second.findings;
        EXPECT_TRUE(std::ranges::any_of(findings, [](const Finding& finding) {
            return finding.rule == Rule::RollBadlyKept && finding.holds();
        }));
    }
}

TEST(PromiseAgain, AnOrderIsNotInItsOwnWay) {
    const ReckonedShop shop = reckoned(aShop().with(anUncutGarment()).with(anUncutGarment()));
    EXPECT_EQ(promisedLoad(shop).work.size(), 2u);
    EXPECT_EQ(promisedLoad(shop, orderAt(shop, 0)).work.size(), 1u);
}

TEST(PromiseAgain, IsReckonedFromWhatIsStillToDo) {
    const auto readyAt = [](const GarmentBuilder& garment) {
        const ReckonedShop shop = reckoned(aShop().with(garment));
        const auto promise = promiseAgain(shop, orderAt(shop, 0));
        EXPECT_TRUE(promise.ok());
        return promise.ok() ? promise->readyAt : LocalTime{};
    };
    const LocalDate today = theMoment().today();
    EXPECT_EQ(dateOf(readyAt(aGarment())), today + Days{1}); // pressed today, rested tomorrow
    EXPECT_EQ(dateOf(readyAt(aGarment().onUnwashedTee())), today + Days{2});
    EXPECT_GE(dateOf(readyAt(aGarment().onNoBlank())), today + Days{6});
    EXPECT_GE(
        dateOf(readyAt(anUncutGarment().lacking("no roll").roll([](FilmRoll& roll) { roll.left = {}; }))),
        today + Days{5});
}

TEST(PromiseAgain, ARollThatMayNotBeUsedIsNoFilm) {
    const auto soonest = [](const std::function<void(RollCondition&)>& change) {
        const ReckonedShop shop = reckoned(aShop().with(anUncutGarment().condition(change)));
        const auto promise = promiseAgain(shop, orderAt(shop, 0));
        EXPECT_TRUE(promise.ok());
        return dateOf(promise.ok() ? promise->readyAt : LocalTime{});
    };
    const LocalDate today = theMoment().today();
    EXPECT_EQ(soonest([](RollCondition&) {}), today + Days{1});
    EXPECT_GE(soonest([&](RollCondition& roll) { roll.useBy = today - Days{1}; }), today + Days{5});
    EXPECT_GE(soonest([](RollCondition& roll) { roll.stripFailed = true; }), today + Days{5});
}

TEST(PromiseAgain, WhatIsPressedOnlyRests) {
    const ReckonedShop shop = reckoned(aShop().with(aGarment().pressed(hoursAgo(23))));
    const auto promise = promiseAgain(shop, orderAt(shop, 0));
    ASSERT_TRUE(promise.ok());
    EXPECT_EQ(promise->readyAt, theMoment().local() + Hours{1});
    EXPECT_EQ(promise->why, "Everything of it is pressed.");
    EXPECT_TRUE(promise->path.empty());
}

TEST(PromiseAgain, OtherPromisesKeepTheirHours) {
    const ReckonedShop alone = reckoned(aShop().with(aGarment()));
    ShopBuilder full = aShop().with(aGarment());
    for (int other = 0; other < 20; ++other)
        full.with(aGarment().order([](Order& order) { order.promised = theMoment().local() + Hours{24}; }));
    const ReckonedShop busy = reckoned(full);
    EXPECT_GT(promiseAgain(busy, orderAt(busy, 0))->readyAt, promiseAgain(alone, orderAt(alone, 0))->readyAt);
}

} // namespace holdfast::test
