// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fairs/fair_sales.h"
#include "core/orders/film_waste.h"

#include "core/shop/garment_cost.h"
#include "tests/core/builders.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

using namespace std::chrono_literals;

const LocalDate kFairsDay = test::theMoment().today();

Fair aFair(std::int64_t id, const std::string& name, int day, int days = 1) {
    Fair fair;
    fair.id = FairId{id};
    fair.name = name;
    fair.firstDay = kFairsDay + Days{day};
    fair.lastDay = fair.firstDay + Days{days - 1};
    fair.hours = {10h, 16h};
    fair.stallCost = Money{4000};
    fair.otherCosts = Money{500};
    return fair;
}

FairOrder anOrder(const std::string& place, int day, int garments = 1) {
    FairOrder order{place, kFairsDay + Days{day}, Money{1000 * garments}, {}};
    for (int count = 0; count < garments; ++count)
        order.garments.push_back(
            {test::kTee, "M", test::kMoss, Money{2500}, Cost{{450}, {150}, {500}, {60}}});
    return order;
}

TEST(FairEarned, WhatIsLeftIsOrderedLessMakingStallAndTheWay) {
    const std::vector orders{anOrder("Creek Fair", -7, 4), anOrder("Creek Fair", -6, 2)};
    const auto earned =
        earnedAtFairs(orders, std::vector{aFair(1, "Creek Fair", -7, 2)}, kFairsDay - Days{90}, kFairsDay);
    ASSERT_EQ(earned.size(), 1U);
    EXPECT_EQ(earned[0].orders, 2);
    EXPECT_EQ(earned[0].garments, 6);
    EXPECT_EQ(earned[0].ordered, Money{15000});
    EXPECT_EQ(earned[0].paid, Money{6000});
    EXPECT_EQ(earned[0].cost.film, Money{900});
    EXPECT_EQ(earned[0].cost.total(), Money{6960});
    EXPECT_EQ(earned[0].left(), Money{15000 - 6960 - 4500});
    EXPECT_EQ(earned[0].leftAnHour(), Money{295}) << "3,540 over the stall’s twelve hours";
    Fair worked = aFair(1, "Creek Fair", -7, 2);
    worked.worked = 20h;
    EXPECT_EQ(earnedAtFairs(orders, std::vector{worked}, kFairsDay - Days{90}, kFairsDay)[0].leftAnHour(),
              Money{177});
}

TEST(FairEarned, HalfAPennyAnHourGoesToTheEvenOne) {
    Earned earned;
    earned.fair = aFair(1, "Creek Fair", -7, 1);
    earned.fair->worked = 2h;
    for (const auto& [left, anHour] : {std::pair{5, 2}, std::pair{7, 4}, std::pair{-5, -2}}) {
        earned.ordered = Money{4500 + left};
        EXPECT_EQ(earned.leftAnHour(), Money{anHour}) << left;
    }
}

TEST(FairEarned, AFairWithoutOrdersCostItsStall) {
    const auto earned =
        earnedAtFairs({}, std::vector{aFair(1, "Creek Fair", -7)}, kFairsDay - Days{90}, kFairsDay);
    ASSERT_EQ(earned.size(), 1U);
    EXPECT_EQ(earned[0].left(), Money{-4500});
    EXPECT_EQ(earned[0].leftAnHour(), Money{-750});
}

TEST(FairEarned, PlacesThatAreNoFairInTheListStandApart) {
    const std::vector orders{anOrder("Creek Fair", -7), anOrder("Creek Fair", -3), anOrder("A yard", -2, 3),
                             anOrder("A yard", -2)};
    const auto earned =
        earnedAtFairs(orders, std::vector{aFair(1, "Creek Fair", -7)}, kFairsDay - Days{90}, kFairsDay);
    ASSERT_EQ(earned.size(), 3U);
    EXPECT_TRUE(earned[0].fair);
    EXPECT_FALSE(earned[1].fair);
    EXPECT_EQ(earned[1].place, "A yard");
    EXPECT_EQ(earned[1].garments, 4);
    EXPECT_EQ(earned[1].days, 1);
    EXPECT_FALSE(earned[1].leftAnHour());
    EXPECT_EQ(earned[2].place, "Creek Fair") << "three days after the fair of that name was over";
    EXPECT_EQ(earned[2].orders, 1);
}

TEST(FairEarned, FairsToComeAndThoseBegunBeforeTheSpanAreLeftOut) {
    const std::vector fairs{aFair(1, "Cut in two", -91, 3), aFair(2, "To come", 1), aFair(3, "First", -60),
                            aFair(4, "Last", 0)};
    const std::vector orders{anOrder("Cut in two", -90)};
    const auto earned = earnedAtFairs(orders, fairs, kFairsDay - Days{90}, kFairsDay);
    ASSERT_EQ(earned.size(), 2U);
    EXPECT_EQ(earned[0].place, "Last");
    EXPECT_EQ(earned[1].place, "First");
}

struct Taken {
    ShopFacts facts;

    Taken() {
        facts.styles = Roster{std::vector{test::aTee()}};
        facts.films = Roster{std::vector{test::aFilm()}};
        facts.presses = Roster{std::vector{test::aPress()}};
        take(1, "Creek Fair", OrderState::HandedOver);
    }

    void take(std::int64_t id, const std::string& place, OrderState state) {
        Order order;
        order.id = OrderId{id};
        order.state = state;
        order.takenAt = test::daysAgo(3);
        order.takenAtPlace = place;
        order.paid = Money{2000};
        facts.orders.add(order);
        Garment garment;
        garment.id = GarmentId{id};
        garment.order = order.id;
        garment.style = test::kTee;
        garment.size = "M";
        garment.colour = test::kMoss;
        garment.price = Money{2650};
        Decal decal;
        decal.id = DecalId{id};
        decal.film = test::kFilm;
        decal.content = Artwork{"heron"};
        decal.width = {200};
        decal.height = {250};
        garment.decals = {decal};
        facts.garments.add(garment);
    }

    std::vector<FairOrder> orders() {
        std::vector<FairOrder> found;
        for (auto& [id, order] : fairOrders(facts, kFairsDay - Days{30}, test::theMoment()))
            found.push_back(order);
        return found;
    }
};

TEST(FairOrders, CostWhatTheFairTableReckons) {
    Taken taken;
    const auto orders = taken.orders();
    ASSERT_EQ(orders.size(), 1U);
    EXPECT_EQ(orders[0].place, "Creek Fair");
    EXPECT_EQ(orders[0].on, kFairsDay - Days{3});
    EXPECT_EQ(orders[0].paid, Money{2000});
    ASSERT_EQ(orders[0].garments.size(), 1U);
    const Garment& garment = *taken.facts.garments.begin();
    const Film& film = *taken.facts.films.begin();
    const DecalOnFilm decal{&film, {200}, {250}, false};
    const Route route = routeOf(taken.facts, garment);
    const BlankStyle& tee = *taken.facts.styles.begin();
    const ShopSettings& settings = taken.facts.settings;
    const Cost byHand =
        costOf(tee, std::span{&decal, 1}, handsFor(route, std::span{&decal, 1}, tee, settings), settings);
    EXPECT_GT(byHand.work, Money{});
    EXPECT_EQ(orders[0].garments[0].cost.total(), byHand.total());
}

TEST(FairOrders, FilmIsCostedWithTheWasteOfTheShopsOwnCuts) {
    Taken taken;
    const Money before = taken.orders()[0].garments[0].cost.film;
    taken.facts.cutting = {kFewestCuts, 3'000'000, 1'000'000}; // two thirds wasted: 200 % on a decal, not 20
    const Money after = taken.orders()[0].garments[0].cost.film;
    EXPECT_NEAR(static_cast<double>(after.minor), static_cast<double>(before.minor) * 300 / 120, 2);
}

TEST(FairOrders, TheWorkshopQuotationsAndCancelledOrdersCountNowhere) {
    Taken taken;
    taken.take(2, "workshop", OrderState::Confirmed);
    taken.take(3, "Creek Fair", OrderState::Quoted);
    taken.take(4, "Creek Fair", OrderState::Cancelled);
    taken.take(5, "Creek Fair", OrderState::Confirmed);
    EXPECT_EQ(taken.orders().size(), 2U);
    EXPECT_TRUE(fairOrders(taken.facts, kFairsDay - Days{2}, test::theMoment()).empty());
}

} // namespace
} // namespace holdfast
