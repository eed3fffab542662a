// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/figures.h"

#include "core/quality/figures.h"
#include "db/actions/claim_actions.h"
#include "db/actions/fair_actions.h"
#include "tests/db/small_shop.h"

#include <algorithm>

namespace holdfast::db {
namespace {

class FiguresRead : public SmallShop {
protected:
    OrderTaken pressed(int garments = 1) {
        const OrderTaken order = readyToPress(garments);
        for (const GarmentId garment : garmentsOf(order.id))
            pressAll(garment);
        return order;
    }
    OrderTaken handedOver(int garments = 1) {
        const OrderTaken order = pressed(garments);
        EXPECT_TRUE(handOver(shop(), order.id, now()).ok());
        return order;
    }
    void comesBack(GarmentId garment, Fault fault) {
        ASSERT_TRUE(recordClaim(shop(), {garment, {}, now().today(), fault, {}, ""}, now()).ok());
    }
    ShopFigures figures(LocalDate from = localDate(2026, 1, 1)) {
        return loadFigures(connection(), from, now());
    }
};

TEST_F(FiguresRead, OfANewShopThereAreNone) {
    const ShopFigures none = figures();
    EXPECT_EQ(none.handedOver.garments, 0);
    EXPECT_TRUE(none.promises.empty());
    EXPECT_TRUE(none.places.empty());
    wait(Days{3});
    EXPECT_EQ(firstDay(connection(), now()), now().today() - Days{3}) << "its roll came then";
}

TEST_F(FiguresRead, WhatWasHandedOverIsKnownWithAllThatWasUsedForIt) {
    const OrderTaken order = handedOver(2);
    pressed(); // not handed over: no figure of it
    wait(Days{30});
    comesBack(garmentOf(order, 1), Fault::NotAsOrdered);
    comesBack(garmentOf(order, 1), Fault::Cracked);
    wait(Days{3});
    comesBack(garmentOf(order, 1), Fault::EdgeLifts);

    const ShopFigures all = figures();
    EXPECT_EQ(all.handedOver.garments, 2);
    EXPECT_EQ(all.handedOver.faults, 1);
    const auto expectAlike = [&](FaultsBy by, const std::string& name) {
        const auto& shares = all.compared.at(by);
        ASSERT_EQ(shares.size(), 1U) << name;
        EXPECT_EQ(shares[0].name, name);
        EXPECT_EQ(shares[0].garments, 2);
        EXPECT_EQ(shares[0].faults, 1);
    };
    expectAlike(FaultsBy::Style, "Tee");
    expectAlike(FaultsBy::Washing, "washed");
    expectAlike(FaultsBy::Roll, "R-01");
    expectAlike(FaultsBy::Film, text("SELECT finish || ', ' || shade FROM film"));
    expectAlike(FaultsBy::Press, text("SELECT name FROM press"));
    ASSERT_EQ(all.withoutFault.steps.size(), 1U) << "the first of pressing counts";
    EXPECT_EQ(all.withoutFault.steps[0].at, 30);
    EXPECT_EQ(all.watchedFor(Days{30}), 2);
    EXPECT_EQ(all.watchedFor(Days{31}), 1);
    EXPECT_EQ(all.faults.size(), 3U);
    EXPECT_EQ(all.unanswered, 3);
    EXPECT_EQ(figures(now().today()).handedOver.garments, 0) << "before the span";
}

TEST_F(FiguresRead, APromiseIsKeptWhenItsLastGarmentIsPressedInTime) {
    const OrderTaken kept = pressed(2);
    const OrderTaken late = readyToPress();
    takeTees(); // promised, never pressed
    EXPECT_TRUE(figures().promises.empty()) << "not one was to be kept by now";
    wait(Days{60});
    pressAll(garmentOf(late));
    const auto promises = figures().promises;
    ASSERT_EQ(promises.size(), 3U);
    EXPECT_EQ(promisesKept(promises).kept, 1);
    EXPECT_EQ(std::ranges::count_if(promises, [](const PromiseGiven& given) { return !given.pressedAt; }), 1);
    ASSERT_TRUE(cancelOrder(shop(), kept.id, "changed their mind").ok());
    EXPECT_EQ(promisesKept(figures().promises).kept, 0) << "a cancelled order was promised nothing";
}

TEST_F(FiguresRead, FilmIsCountedByWhatBecameOfIt) {
    readyToPress(2);
    ASSERT_TRUE(recordTestStrip(shop(), m_roll, true, Millimetres{80}, "held").ok());
    const auto used = figures().films;
    ASSERT_EQ(used.size(), 1U);
    EXPECT_GT(used[0].cut.value, 0);
    EXPECT_GT(used[0].testStrips.value, 0);
    EXPECT_EQ(used[0].wasted.value, 0);
    const std::int64_t left = lengthOf(m_roll);
    ASSERT_TRUE(useUpRoll(shop(), m_roll, "too old").ok());
    const FilmUse whole = figures().films[0];
    EXPECT_EQ(whole.wasted.value, left);
    EXPECT_EQ((whole.cut + whole.testStrips + whole.wasted).value, whole.received.value);
    EXPECT_NEAR(*whole.shareWasted(),
                1 - static_cast<double>(whole.cut.value) / static_cast<double>(whole.received.value), 1e-12);
}

TEST_F(FiguresRead, TakingsStandByTheFairTheyWereTakenAt) {
    takeTees(2);
    auto settings = loadSettings(connection());
    settings.fairName = "Saltmarsh Makers’ Market";
    ASSERT_TRUE(changeSettings(shop(), settings).ok());
    auto draft = aDraft(3);
    draft.deposit = {3000};
    take(draft);
    wait(Days{1});
    take(draft);
    const auto places = figures().places;
    ASSERT_EQ(places.size(), 2U);
    EXPECT_EQ(places[0].place, "Saltmarsh Makers’ Market");
    EXPECT_EQ(places[0].orders, 2);
    EXPECT_EQ(places[0].days, 2);
    EXPECT_EQ(places[0].garments, 6);
    EXPECT_EQ(places[0].taken.minor, 6000);
    EXPECT_EQ(places[1].place, "workshop");
    EXPECT_EQ(places[1].ordered.minor, 5300);
}

// Garments of confirmed orders in the week they were ordered in, made again or not.
TEST_F(FiguresRead, BlanksAreUsedInTheWeekTheyAreOrderedIn) {
    takeTees(2);
    auto quotation = aDraft(3);
    quotation.isQuotation = true;
    take(quotation);
    wait(Days{15});
    takeTees(1);
    const BlankUse use = figures().blankUse;
    EXPECT_EQ(use.weeks, 3);
    ASSERT_EQ(use.sold.size(), 1U);
    EXPECT_EQ(use.sold.begin()->first.style, m_tee);
    EXPECT_EQ(use.sold.begin()->second, 3);
    EXPECT_EQ(use.soldAWeek.at(m_tee), (std::vector<std::int64_t>{1, 0, 2}));
    wait(Days{7} * 20);
    const BlankUse later = figures().blankUse;
    EXPECT_EQ(later.weeks, kUseWeeks);
    EXPECT_TRUE(later.sold.empty()) << "too long ago";
}

TEST_F(FiguresRead, FairsEarnWhatWasOrderedThereLessItsCost) {
    receiveCleanTees(9);
    Fair fair;
    fair.name = "Creek Fair";
    fair.firstDay = now().today();
    fair.lastDay = now().today() + Days{1};
    fair.hours = {Hours{10}, Hours{16}};
    fair.stallCost = {2000};
    ASSERT_TRUE(addFair(shop(), fair).ok());
    auto settings = loadSettings(connection());
    settings.fairName = "Creek Fair";
    ASSERT_TRUE(changeSettings(shop(), settings).ok());
    takeTees(2);
    wait(Days{1});
    const OrderTaken second = takeTees(1);
    EXPECT_EQ(cancelOrder(shop(), takeTees(1).id, "changed their mind").ok(), true);
    wait(Days{3});
    const OrderTaken late = takeTees(1); // the fair is over
    const ShopFigures all = figures();
    ASSERT_EQ(all.earned.size(), 2U);
    EXPECT_EQ(all.earned[0].garments, 3);
    EXPECT_EQ(all.earned[0].ordered, Money{3 * 2650});
    EXPECT_EQ(all.earned[0].cost.blank, Money{3 * 450});
    EXPECT_EQ(all.earned[0].left(), all.earned[0].ordered - all.earned[0].cost.total() - Money{2000});
    EXPECT_FALSE(all.earned[1].fair);
    EXPECT_EQ(all.earned[1].orders, 1);
    EXPECT_FALSE(all.nextFair);
    ASSERT_EQ(all.bring.kinds.size(), 1U);
    EXPECT_EQ(all.bring.days, 2) << "today is not over";
    EXPECT_NEAR(all.bring.kinds[0].asked.mean, 1.5, 1e-12);
    EXPECT_EQ(all.bring.kinds[0].ready, 5) << "nine came, four are kept for open orders";
    EXPECT_EQ(second.number, 2);
    EXPECT_TRUE(figures(now().today() - Days{3}).earned.size() == 1U) << "it began before the span";
    EXPECT_EQ(late.number, 4);
}

TEST_F(FiguresRead, WhatToBringIsForTheDaysOfTheNextFair) {
    Fair fair;
    fair.name = "Creek Fair";
    fair.firstDay = now().today() + Days{10};
    fair.lastDay = now().today() + Days{12};
    fair.hours = {Hours{10}, Hours{16}};
    ASSERT_TRUE(addFair(shop(), fair).ok());
    EXPECT_EQ(figures().nextFair->name, "Creek Fair");
    EXPECT_EQ(figures().bring.comingDays, 3);
    wait(Days{11});
    EXPECT_EQ(figures().bring.comingDays, 2) << "today and tomorrow";
    EXPECT_EQ(figures().bring.days, 1) << "yesterday, on which nothing was sold";
}

} // namespace
} // namespace holdfast::db
