// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/fair_actions.h"

#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

using namespace std::chrono_literals;

class FairActions : public SmallShop {
protected:
    // Two days from today on, 10:00 to 16:30.
    Fair aFair(const std::string& name = "Saltmarsh Makers’ Market") const {
        Fair fair;
        fair.name = name;
        fair.firstDay = now().today();
        fair.lastDay = now().today() + Days{1};
        fair.hours = {10h, 16h + 30min};
        fair.stallCost = {4500};
        fair.otherCosts = {1250};
        return fair;
    }

    Fair added(const Fair& fair) {
        const auto id = addFair(shop(), fair);
        EXPECT_TRUE(id.ok()) << id.error().message.english();
        return loadFactsOf(connection(), {}).fairs.at(*id);
    }

    void takeOrdersAt(const std::string& place) {
        ShopSettings settings = loadSettings(connection());
        settings.fairName = place;
        ASSERT_TRUE(changeSettings(shop(), settings).ok());
    }
};

using Added = Result<FairId>;
using Doing = Result<Done>;

TEST_F(FairActions, AFairIsKeptAsItWasTyped) {
    Fair typed = aFair("  Saltmarsh Makers’ Market ");
    typed.worked = 15h;
    typed.note = "by the gate";
    const Fair kept = added(typed);
    typed.id = kept.id;
    typed.name = "Saltmarsh Makers’ Market";
    EXPECT_EQ(kept, typed);
    EXPECT_EQ(titlesOf(kept.id),
              std::vector<std::string>{"Fair added: Saltmarsh Makers’ Market, 11 Nov 2026"});
    const Fair byTheStall = added(aFair("Creek Fair"));
    EXPECT_FALSE(byTheStall.worked);
    EXPECT_EQ(byTheStall.hoursWorked(), 13h);
}

TEST_F(FairActions, EachIsOneEntryThatCanBeTakenBack) {
    expectUndoable<Added>([&] { return addFair(shop(), aFair()); },
                          "Fair added: Saltmarsh Makers’ Market, 11 Nov 2026");
    Fair fair = added(aFair("Creek Fair"));
    fair.note = "two tables";
    fair.stallCost = {6000};
    expectUndoable<Doing>(
        [&] { return changeFair(shop(), fair, now()); },
        "Fair Creek Fair, 11 Nov 2026 changed: cost of the stall: £60.00 (was £45.00), note: two tables "
        "(was none)");
    expectUndoable<Doing>([&] { return takeFairOffList(shop(), fair.id, now()); },
                          "Fair removed: Creek Fair, 11 Nov 2026");
}

TEST_F(FairActions, BadInputNamesItsField) {
    const auto refused = [&](const std::string& field, auto spoil) {
        Fair fair = aFair();
        spoil(fair);
        expectRefused<Added>([&] { return addFair(shop(), fair); }, field);
    };
    refused("name", [](Fair& fair) { fair.name = " "; });
    refused("name", [](Fair& fair) { fair.name = std::string(61, 'x'); });
    refused("name", [](Fair& fair) { fair.name = "workshop"; });
    refused("firstDay", [](Fair& fair) { fair.firstDay = localDate(1999, 12, 31); });
    refused("lastDay", [](Fair& fair) { fair.lastDay = fair.firstDay - Days{1}; });
    refused("lastDay", [](Fair& fair) { fair.lastDay = fair.firstDay + Days{31}; });
    refused("hours", [](Fair& fair) { fair.hours = {16h, 10h}; });
    refused("hours", [](Fair& fair) { fair.hours = {10h, 25h}; });
    refused("worked", [](Fair& fair) { fair.worked = 0min; });
    refused("worked", [](Fair& fair) { fair.worked = 145h; });
    refused("stallCost", [](Fair& fair) { fair.stallCost = {-1}; });
    refused("otherCosts", [](Fair& fair) { fair.otherCosts = {100'000'001}; });
    refused("note", [](Fair& fair) { fair.note = std::string(301, 'x'); });
}

TEST_F(FairActions, TwoOfOneNameMayNotShareADay) {
    Fair fair = added(aFair());
    Fair other = aFair("saltmarsh makers’ market");
    other.firstDay = other.lastDay = fair.lastDay;
    expectRefused<Added>([&] { return addFair(shop(), other); }, "name", "already");
    other.firstDay = other.lastDay = fair.lastDay + Days{1};
    other = added(other);
    other.firstDay = fair.lastDay;
    expectRefused<Doing>([&] { return changeFair(shop(), other, now()); }, "name", "already");
    EXPECT_TRUE(changeFair(shop(), fair, now()).ok()) << "it is not in its own way";
}

TEST_F(FairActions, AFairWithOrdersStaysAndKeepsTheirDays) {
    Fair fair = added(aFair());
    takeOrdersAt(fair.name);
    receiveCleanTees(2);
    takeTees();
    expectRefused<Doing>([&] { return takeFairOffList(shop(), fair.id, now()); }, "fair",
                         "1 order was taken at Saltmarsh Makers’ Market");
    fair.firstDay += Days{1};
    expectRefused<Doing>([&] { return changeFair(shop(), fair, now()); }, "firstDay", "Wed 11 Nov");
    fair.firstDay -= Days{3};
    fair.lastDay -= Days{2};
    expectRefused<Doing>([&] { return changeFair(shop(), fair, now()); }, "lastDay", "Wed 11 Nov");
    wait(Days{2});
    takeTees();
    EXPECT_TRUE(loadFactsOf(connection(), {}).fairs.at(fair.id).isOver(now().today()));
    const auto refusal = takeFairOffList(shop(), fair.id, now());
    ASSERT_FALSE(refusal.ok());
    EXPECT_NE(refusal.error().message.english().find("1 order was"), std::string::npos)
        << "the second was taken when the fair was over";
}

TEST_F(FairActions, ANewNameGoesToItsOrdersAndToTheNextOnes) {
    Fair fair = added(aFair("Creek Fiar"));
    takeOrdersAt(fair.name);
    receiveCleanTees(3);
    wait(-48h);
    takeTees(); // before the fair: another one of that name, it may be
    wait(48h);
    takeTees();
    fair.name = "Creek Fair";
    expectUndoable<Doing>([&] { return changeFair(shop(), fair, now()); },
                          "Fair Creek Fair, 11 Nov 2026 changed: name: Creek Fair (was Creek Fiar)");
    EXPECT_EQ(number("SELECT COUNT(*) FROM shop_order WHERE taken_at_place = 'Creek Fair'"), 1);
    EXPECT_EQ(number("SELECT COUNT(*) FROM shop_order WHERE taken_at_place = 'Creek Fiar'"), 1);
    EXPECT_EQ(loadSettings(connection()).fairName, "Creek Fair");
    EXPECT_EQ(number("SELECT COUNT(*) FROM order_text WHERE order_text MATCH 'fair'"), 1)
        << "it is found by it";
}

TEST_F(FairActions, WhatIsNotInTheListIsSaid) {
    Fair fair = aFair();
    fair.id = FairId{99};
    expectRefused<Doing>([&] { return changeFair(shop(), fair, now()); }, "fair", "no such fair");
    expectRefused<Doing>([&] { return takeFairOffList(shop(), FairId{99}, now()); }, "fair", "no such fair");
}

} // namespace
} // namespace holdfast::db
