// SPDX-License-Identifier: GPL-3.0-or-later
// Where two laptops did what does not go together: what stands, what gives way, and in which words it is
// said.
#include "db/journal/backup.h"
#include "tests/db/exchange_fixture.h"

#include <gtest/gtest.h>

namespace holdfast::db {
namespace {

class TwoDifferentThings : public Laptops {
protected:
    // Both have it all afterwards, and are whole.
    void expectTogether(Laptop& fair) {
        exchange(fair);
        expectSame(shop(), *fair.shop);
        expectWhole(shop());
        expectWhole(*fair.shop);
        EXPECT_EQ(textOf(shop(), "SELECT group_concat(message) FROM ledger_fault"), "");
    }

    static bool says(const NewsTakenIn& taken, const std::string& words) {
        for (const Difference& difference : taken.differences)
            if (difference.words.english().find(words) != std::string::npos)
                return true;
        return false;
    }
    static std::string allWords(const NewsTakenIn& taken) {
        std::string all;
        for (const Difference& difference : taken.differences)
            all += difference.title.english() + " | " + difference.seat + " | " + difference.words.english() +
                   "\n";
        return all;
    }
};

TEST_F(TwoDifferentThings, TheSameColumnStandsAsTheLineHasItAndTheOtherIsTold) {
    const auto order = takeTees();
    Laptop& fair = aLaptop();
    ASSERT_TRUE(changeNote(shop(), order.id, "gift box").ok());
    ASSERT_TRUE(cancelOrder(shop(), order.id, "changed their mind").ok()); // touches another column, later
    ASSERT_TRUE(movePromise(*fair.shop, order.id, inDays(5), now()).ok());
    ASSERT_TRUE(changeNote(*fair.shop, order.id, "leave at the door").ok());

    const auto brought = bring(fair);
    ASSERT_EQ(brought.differences.size(), 1U) << allWords(brought);
    EXPECT_EQ(brought.differences[0].seat, "Fair laptop");
    EXPECT_TRUE(brought.differences[0].isSetAside) << "nothing is left of it";
    EXPECT_TRUE(says(brought, "Order 1: its note stays as “Note written on 1” (This workshop) left it."))
        << allWords(brought);
    EXPECT_TRUE(says(brought, "(This workshop) left it.")) << allWords(brought);
    EXPECT_EQ(textOf(shop(), "SELECT note FROM shop_order"), "gift box");
    EXPECT_EQ(textOf(shop(), "SELECT promised FROM shop_order").substr(0, 10), "2026-11-16")
        << "another column";

    const auto fetched = fetch(fair);
    EXPECT_TRUE(says(fetched, "(This workshop) left it.")) << "told on the other, too: " << allWords(fetched);
    ASSERT_EQ(setAside(fair.shop->connection()).size(), 1U);
    EXPECT_EQ(setAside(fair.shop->connection())[0].title, setAside(connection())[0].title);
    expectTogether(fair);
}

TEST_F(TwoDifferentThings, OfAnEntryThatGivesWayInPartTheRestIsDone) {
    const auto order = takeTees();
    const CustomerId customer{number("SELECT customer_id FROM shop_order")};
    Laptop& fair = aLaptop();
    ASSERT_TRUE(changeCustomer(shop(), customer, "Odile Farrant-Ray", "07700 902281").ok());
    ASSERT_TRUE(changeCustomer(*fair.shop, customer, "Odile F.", "07700 900111").ok());
    const auto brought = bring(fair);
    ASSERT_EQ(brought.differences.size(), 1U);
    EXPECT_FALSE(brought.differences[0].isSetAside);
    EXPECT_EQ(text("SELECT name || ', ' || phone FROM customer"), "Odile Farrant-Ray, 07700 900111");
    EXPECT_EQ(*remark(connection(), brought.differences[0].entry), brought.differences[0].words.english());
    expectTogether(fair);
    EXPECT_EQ(*remark(fair.shop->connection(), brought.differences[0].entry),
              brought.differences[0].words.english());
    // What it really changed is what the journal keeps: taking it back does not touch the name.
    ASSERT_TRUE(shop().undo(brought.differences[0].entry).ok());
    EXPECT_EQ(text("SELECT name || ', ' || phone FROM customer"), "Odile Farrant-Ray, 07700 902281");
    expectTogether(fair);
    EXPECT_EQ(order.number, 1);
}

TEST_F(TwoDifferentThings, TheSameDoneOnBothIsNoQuarrel) {
    const auto order = takeTees();
    Laptop& fair = aLaptop();
    ASSERT_TRUE(changeNote(shop(), order.id, "gift box").ok());
    ASSERT_TRUE(changeNote(*fair.shop, order.id, "gift box").ok());
    const auto brought = bring(fair);
    EXPECT_TRUE(says(brought, "The same had been done on another laptop.")) << allWords(brought);
    expectTogether(fair);
}

TEST_F(TwoDifferentThings, MoneyForAnOrderThatWasTakenBackIsKeptAsideAndDoneOnceTheOrderIsBack) {
    const auto order = takeTees();
    const EntryId taking = shop().recent(1).at(0).id;
    Laptop& fair = aLaptop();
    const auto back = shop().undo(taking);
    ASSERT_TRUE(back.ok());
    ASSERT_TRUE(moveMoney(*fair.shop, order.id, MoneyKind::Deposit, {2000}, PaidHow::Cash).ok());

    const auto brought = bring(fair);
    ASSERT_EQ(brought.differences.size(), 1U);
    EXPECT_TRUE(brought.differences[0].isSetAside);
    EXPECT_TRUE(says(brought, "It needs an order, which was deleted: “Undone: ")) << allWords(brought);
    EXPECT_EQ(number("SELECT COUNT(*) FROM money_move"), 0);
    expectTogether(fair);

    const auto aside = setAside(connection());
    ASSERT_EQ(aside.size(), 1U);
    EXPECT_EQ(aside[0].seat, "Fair laptop");
    const auto refused = tryAgain(shop(), aside[0].entry);
    ASSERT_FALSE(refused.ok());
    EXPECT_NE(refused.error().message.english().find("still cannot be done"), std::string::npos)
        << refused.error().message.english();
    ASSERT_TRUE(shop().undo(*back).ok());
    const auto again = tryAgain(shop(), aside[0].entry);
    ASSERT_TRUE(again.ok()) << again.error().message.english();
    EXPECT_EQ(number("SELECT SUM(minor) FROM money_move"), 2000);
    EXPECT_EQ(shop().history(order.id, 1).at(0).id, *again);
    EXPECT_TRUE(setAside(connection()).empty());
    expectTogether(fair);
    EXPECT_EQ(numberOf(*fair.shop, "SELECT SUM(minor) FROM money_move"), 2000);
}

TEST_F(TwoDifferentThings, TakingBackAnOrderThatTheOtherTookMoneyForIsSetAside) {
    const auto order = takeTees();
    const EntryId taking = shop().recent(1).at(0).id;
    Laptop& fair = aLaptop();
    ASSERT_TRUE(moveMoney(shop(), order.id, MoneyKind::Deposit, {2000}, PaidHow::Cash).ok());
    ASSERT_TRUE(fair.shop->undo(taking).ok());
    const auto brought = bring(fair);
    EXPECT_EQ(brought.differences.size(), 1U);
    EXPECT_EQ(number("SELECT COUNT(*) FROM shop_order"), 1);
    EXPECT_EQ(number("SELECT COUNT(*) FROM garment"), 1);
    expectTogether(fair);
    EXPECT_EQ(numberOf(*fair.shop, "SELECT SUM(minor) FROM money_move"), 2000)
        << "neither money nor order is lost";
}

TEST_F(TwoDifferentThings, TheSameTakenBackOnBothIsTakenBackOnce) {
    takeTees();
    const EntryId taking = shop().recent(1).at(0).id;
    Laptop& fair = aLaptop();
    ASSERT_TRUE(shop().undo(taking).ok());
    ASSERT_TRUE(fair.shop->undo(taking).ok());
    const auto brought = bring(fair);
    EXPECT_TRUE(says(brought, "had been undone already")) << allWords(brought);
    expectTogether(fair);
    EXPECT_EQ(number("SELECT COUNT(*) FROM shop_order"), 0);
}

TEST_F(TwoDifferentThings, OfTwoRollsOfOneNumberTheLaterGetsTheNext) {
    Laptop& fair = aLaptop();
    const auto home = receiveRoll(shop(), aRoll(), now());
    const auto away = receiveRoll(*fair.shop, aRoll(), now());
    ASSERT_EQ(home->number, away->number);
    const auto brought = bring(fair);
    EXPECT_TRUE(says(brought, "Roll R-03 had the number 2 on the laptop where it was entered"))
        << allWords(brought);
    EXPECT_EQ(number("SELECT COUNT(*) FROM film_roll"), 3);
    EXPECT_EQ(connection().number("SELECT number FROM film_roll WHERE id = ?1", home->id), 2);
    EXPECT_EQ(connection().number("SELECT number FROM film_roll WHERE id = ?1", away->id), 3);
    expectTogether(fair);
}

// A copy that was put back from an older one, and brings what it did before it was told anything.
TEST_F(TwoDifferentThings, OfTwoOrdersOfOneNumberNeitherIsLost) {
    Laptop& fair = aLaptop();
    const auto older = m_folder / "older.holdfast";
    ASSERT_TRUE(backup(*fair.shop, older).ok());
    EXPECT_EQ(taken(*fair.shop, aDraft()).number, 99'000);
    bring(fair);
    wait(Minutes{1});
    auto back = opened(older);
    const auto again = taken(*back, aDraft(2));
    EXPECT_EQ(again.number, 99'000);
    const auto brought = takenIn(shop(), newsFrom(*back));
    EXPECT_TRUE(says(brought, "Order 1 had the number 99000 on the laptop where it was entered"))
        << allWords(brought);
    EXPECT_EQ(garmentsOf(again.id).size(), 2U);
    EXPECT_EQ(taken(shop(), aDraft()).number, 2) << "the number is given out";
    takenIn(*back, newsFrom(shop(), fair.number));
    takenIn(shop(), newsFrom(*back));
    takenIn(*back, newsFrom(shop(), fair.number));
    expectSame(shop(), *back);
    expectWhole(*back);
}

// Not even on one laptop: the last roll is taken back, its number is given again, and the first is to be done
// again.
TEST_F(TwoDifferentThings, ARollIsNotDoneAgainOnceItsNumberWasGivenAgain) {
    ASSERT_EQ(receiveRoll(shop(), aRoll(), now())->number, 2);
    const auto back = shop().undo(shop().recent(1).front().id);
    ASSERT_TRUE(back.ok());
    ASSERT_EQ(receiveRoll(shop(), aRoll(), now())->number, 2);
    const auto again = shop().undo(*back);
    ASSERT_FALSE(again.ok());
    EXPECT_NE(again.error().message.english().find("came later and is in the way"), std::string::npos)
        << again.error().message.english();
    EXPECT_EQ(number("SELECT COUNT(*) FROM film_roll"), 2);
}

TEST_F(TwoDifferentThings, TwoWhoKeptTheLastBlankKeepTheOrdersAndOneWaits) {
    const BlankLotId lot = receiveCleanTees(1);
    Laptop& fair = aLaptop();
    const auto home = takeTees();
    const auto away = taken(*fair.shop, aDraft());
    const auto brought = bring(fair);
    EXPECT_TRUE(says(brought, "The blank of garment 99000-a was reserved twice: it now waits"))
        << allWords(brought);
    EXPECT_EQ(lotOf(garmentOf(home)), lot);
    EXPECT_EQ(lotOf(garmentOf(away)), std::nullopt);
    EXPECT_EQ(number("SELECT COUNT(*) FROM shop_order"), 2);
    expectTogether(fair);
}

TEST_F(TwoDifferentThings, WhoGivesWayGetsAnotherBlankWhereOneIsFree) {
    receiveCleanTees(1);
    Laptop& fair = aLaptop();
    takeTees();
    const BlankLotId other = receiveCleanTees(1);
    const auto away = taken(*fair.shop, aDraft());
    bring(fair);
    EXPECT_EQ(lotOf(garmentOf(away)), other);
    expectTogether(fair);
}

TEST_F(TwoDifferentThings, FilmCutOnBothIsChargedForBothAndTheRollStandsAtNothing) {
    const auto one = takeTees();
    const auto two = takeTees();
    ASSERT_TRUE(correctLength(shop(), m_roll, {300}, "measured").ok());
    Laptop& fair = aLaptop();
    const DecalId first = decalOf(one);
    const DecalId second = decalOf(two);
    ASSERT_TRUE(cutDecals(shop(), m_roll, std::span{&first, 1}, {240}, now()).ok());
    ASSERT_TRUE(cutDecals(*fair.shop, m_roll, std::span{&second, 1}, {240}, now()).ok());
    const auto brought = bring(fair);
    EXPECT_TRUE(says(brought, "From roll R-01, 180 mm more were used than there were")) << allWords(brought);
    EXPECT_EQ(lengthOf(m_roll), 0);
    EXPECT_EQ(number("SELECT COUNT(*) FROM decal WHERE cut_roll_id IS NOT NULL"), 2);
    EXPECT_EQ(number("SELECT SUM(mm) FROM roll_move WHERE kind = 'cut'"), -480);
    expectTogether(fair);
}

TEST_F(TwoDifferentThings, AGarmentIsAtThePressOnOneLaptopOnly) {
    const auto order = readyToPress();
    const GarmentId garment = garmentOf(order);
    const Route route = routeFor(garment);
    Laptop& fair = aLaptop();
    ASSERT_TRUE(takeUp(shop(), garment, route, now()).ok());
    wait(Seconds{20});
    ASSERT_TRUE(takeUp(*fair.shop, garment, route, now()).ok());
    ASSERT_TRUE(finishStep(*fair.shop, garment, route).ok());
    const auto brought = bring(fair);
    ASSERT_EQ(brought.differences.size(), 2U) << allWords(brought);
    EXPECT_TRUE(says(brought, "Garment 1-a was at the press on another laptop meanwhile."))
        << allWords(brought);
    EXPECT_EQ(number("SELECT COUNT(*) FROM press_step"), 1);
    EXPECT_EQ(number("SELECT COUNT(*) FROM lot_move WHERE garment_id IS NOT NULL"), 1)
        << "one blank was used";
    expectTogether(fair);
}

TEST_F(TwoDifferentThings, AGarmentIsSpoiledOnce) {
    const auto order = readyToPress();
    const GarmentId garment = garmentOf(order);
    ASSERT_TRUE(takeUp(shop(), garment, routeFor(garment), now()).ok());
    Laptop& fair = aLaptop();
    ASSERT_TRUE(markSpoiled(shop(), garment, "scorched").ok());
    ASSERT_TRUE(markSpoiled(*fair.shop, garment, "slipped").ok());
    const auto brought = bring(fair);
    EXPECT_TRUE(says(brought, "Garment 1-a was marked spoiled on another laptop already."))
        << allWords(brought);
    EXPECT_EQ(number("SELECT COUNT(*) FROM spoil"), 1);
    EXPECT_EQ(number("SELECT attempt FROM garment"), 2);
    expectTogether(fair);
}

TEST_F(TwoDifferentThings, RefundsBeyondWhatWasPaidAreSetAsideAndNamed) {
    auto draft = aDraft();
    draft.deposit = {1000};
    const auto order = take(draft);
    Laptop& fair = aLaptop();
    ASSERT_TRUE(moveMoney(shop(), order.id, MoneyKind::Refund, {1000}, PaidHow::Cash).ok());
    ASSERT_TRUE(moveMoney(*fair.shop, order.id, MoneyKind::Refund, {1000}, PaidHow::Cash).ok());
    const auto brought = bring(fair);
    EXPECT_TRUE(says(brought, "Order 1 would have been paid less than nothing.")) << allWords(brought);
    EXPECT_EQ(setAside(connection()).size(), 1U);
    expectTogether(fair);
}

// Each by itself is allowed; together no laptop allows them. Both stand, and both are told.
TEST_F(TwoDifferentThings, AnOrderCancelledHereAndHandedOverThereIsSaidToBeSo) {
    for (const bool isCancelledAtTheFair : {true, false}) {
        const auto order = readyToPress(2);
        const std::string number = std::to_string(order.number);
        pressAll(garmentOf(order, 0));
        Laptop& fair = aLaptop("Laptop " + number);
        Shop& cancels = isCancelledAtTheFair ? *fair.shop : shop();
        Shop& hands = isCancelledAtTheFair ? shop() : *fair.shop;
        ASSERT_TRUE(cancelOrder(cancels, order.id, "changed their mind").ok());
        ASSERT_TRUE(handOver(hands, order.id, now()).ok());
        const std::string words = "Order " + number +
                                  " is cancelled, yet a garment of it was handed over. Put "
                                  "the order back to ask for what is owed.";
        const auto brought = bring(fair);
        EXPECT_TRUE(says(brought, words)) << allWords(brought);
        expectTogether(fair);
        for (Shop* each : {&shop(), fair.shop})
            EXPECT_EQ(numberOf(*each, "SELECT COUNT(*) FROM journal_remark WHERE words LIKE '%Order " +
                                          number + " is cancelled, yet%'"),
                      1);
    }
}

TEST_F(TwoDifferentThings, AnOrderPaidTwiceOverIsSaidToBeSo) {
    auto draft = aDraft(1);
    draft.deposit = {1000};
    const auto order = take(draft);
    const Money total{number("SELECT SUM(price_minor) FROM garment")};
    ASSERT_TRUE(moveMoney(shop(), order.id, MoneyKind::Refund, {1000}, PaidHow::Cash).ok());
    const EntryId refund = shop().recent(1).at(0).id;
    Laptop& fair = aLaptop();
    ASSERT_TRUE(shop().undo(refund).ok());
    ASSERT_TRUE(moveMoney(*fair.shop, order.id, MoneyKind::Payment, total, PaidHow::Card).ok());
    const auto brought = bring(fair);
    EXPECT_TRUE(says(brought, "was paid for order 1, which costs")) << allWords(brought);
    EXPECT_TRUE(says(brought, "Give £10.00 back.")) << allWords(brought);
    expectTogether(fair);
    ASSERT_TRUE(moveMoney(shop(), order.id, MoneyKind::Refund, {1000}, PaidHow::Cash).ok());
}

TEST_F(TwoDifferentThings, WhatTheWorkshopsNewsLeavesNoRoomForAtTheFairIsNamedThereAndInTheWorkshop) {
    const auto order = takeTees();
    const EntryId taking = shop().recent(1).at(0).id;
    Laptop& fair = aLaptop();
    ASSERT_TRUE(shop().undo(taking).ok());
    ASSERT_TRUE(changeNote(*fair.shop, order.id, "gift box").ok());
    const auto fetched = fetch(fair); // the workshop’s comes first this time
    ASSERT_EQ(fetched.differences.size(), 1U) << allWords(fetched);
    EXPECT_TRUE(fetched.differences[0].isSetAside);
    EXPECT_EQ(setAside(fair.shop->connection()).size(), 1U);
    bring(fair);
    ASSERT_EQ(setAside(connection()).size(), 1U);
    EXPECT_EQ(setAside(connection())[0].seat, "Fair laptop");
    expectTogether(fair);
    ASSERT_TRUE(dropSetAside(shop(), setAside(connection())[0].entry).ok());
    EXPECT_TRUE(setAside(connection()).empty());
    EXPECT_EQ(number("SELECT COUNT(*) FROM journal_aside"), 1) << "it is kept all the same";
}

} // namespace
} // namespace holdfast::db
