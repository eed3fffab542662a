// SPDX-License-Identifier: GPL-3.0-or-later
// Fairs put into the list, changed, taken off it, and chosen as the place where orders are taken.
#include "tests/app/slips_fixture.h"

#include "app/shell/finder_entries.h"
#include "app/slips/pick_list.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "db/actions/fair_actions.h"
#include "db/actions/shop_actions.h"

#include <algorithm>

namespace holdfast::app::test {
namespace {

class FairSlips : public SlipsFixture {
protected:
    const Roster<Fair>& fairs() { return desk().shop()->facts.fairs; }
    const ShopSettings& settings() { return desk().shop()->facts.settings; }

    Fair added(const std::string& name, int inDays, int days = 1) {
        Fair fair;
        fair.name = name;
        fair.firstDay = now().today() + Days{inDays};
        fair.lastDay = fair.firstDay + Days{days - 1};
        fair.hours = {9h + 30min, 15h};
        fair.stallCost = Money{3500};
        fair.id = valueOf(db::addFair(file(), fair));
        return fair;
    }

    SlipTarget about(FairId fair) {
        SlipTarget matter;
        matter.fair = fair;
        return matter;
    }
};

TEST_F(FairSlips, AFairIsAddedWithTheHoursOfTheLastOne) {
    added("Creek Fair", -7);
    ASSERT_TRUE(open(SlipName::AddFair));
    type(QStringLiteral("name"), QStringLiteral("Saltmarsh Makers’ Market"));
    type(QStringLiteral("firstDay"), QStringLiteral("28/11/2026"));
    type(QStringLiteral("stallCost"), QStringLiteral("45"));
    const auto count = entries();
    submit();
    ASSERT_TRUE(isFinished());
    EXPECT_EQ(entries(), count + 1);
    const Fair fair = *std::next(fairs().begin());
    EXPECT_EQ(fair.name, "Saltmarsh Makers’ Market");
    EXPECT_EQ(fair.firstDay, localDate(2026, 11, 28));
    EXPECT_EQ(fair.lastDay, fair.firstDay);
    EXPECT_EQ(fair.hours, (OpeningHours{9h + 30min, 15h}));
    EXPECT_EQ(fair.stallCost, Money{4500});
    EXPECT_EQ(fair.otherCosts, Money{});
    EXPECT_FALSE(fair.worked);
}

TEST_F(FairSlips, EveryPartOfAFairIsChanged) {
    Fair fair = added("Creek Fair", 3);
    ASSERT_TRUE(open(SlipName::ChangeFair, about(fair.id)));
    type(QStringLiteral("name"), QStringLiteral("Creek Fair, winter"));
    type(QStringLiteral("lastDay"), QStringLiteral("2026-11-29"));
    type(QStringLiteral("opens"), QStringLiteral("11"));
    type(QStringLiteral("closes"), QStringLiteral("16.30"));
    type(QStringLiteral("stallCost"), QStringLiteral("50.00"));
    type(QStringLiteral("otherCosts"), QStringLiteral("12,40"));
    type(QStringLiteral("worked"), QStringLiteral("13.5"));
    type(QStringLiteral("note"), QStringLiteral("by the quay"));
    submit();
    ASSERT_TRUE(isFinished());
    fair.name = "Creek Fair, winter";
    fair.lastDay = localDate(2026, 11, 29);
    fair.hours = {11h, 16h + 30min};
    fair.stallCost = Money{5000};
    fair.otherCosts = Money{1240};
    fair.worked = 13h + 30min;
    fair.note = "by the quay";
    EXPECT_EQ(fairs().at(fair.id), fair);
}

TEST_F(FairSlips, LeftAsItWasWritesNothing) {
    const Fair fair = added("Creek Fair", 3, 2);
    ASSERT_TRUE(open(SlipName::ChangeFair, about(fair.id)));
    const auto count = entries();
    submit();
    EXPECT_TRUE(isFinished());
    EXPECT_EQ(entries(), count);
}

TEST_F(FairSlips, WhatIsWrongIsSaidAtItsPart) {
    added("Creek Fair", 3);
    ASSERT_TRUE(open(SlipName::AddFair));
    submit();
    for (const char* part : {"name", "firstDay", "stallCost"})
        EXPECT_FALSE(errorAt(part).isEmpty()) << part;
    type(QStringLiteral("name"), QStringLiteral("creek fair"));
    type(QStringLiteral("firstDay"), QStringLiteral("2026-11-28"));
    type(QStringLiteral("stallCost"), QStringLiteral("45"));
    submit();
    EXPECT_NE(errorAt("name").indexOf(QStringLiteral("already")), -1) << errorAt("name").toStdString();
    type(QStringLiteral("name"), QStringLiteral("Ropewalk Market"));
    type(QStringLiteral("opens"), QStringLiteral("16"));
    type(QStringLiteral("closes"), QStringLiteral("9"));
    submit();
    EXPECT_FALSE(errorAt("opens").isEmpty()) << "the hours are said at the first of their parts";
    type(QStringLiteral("closes"), QStringLiteral("24:00"));
    type(QStringLiteral("lastDay"), QStringLiteral("2026-11-27"));
    submit();
    EXPECT_FALSE(errorAt("lastDay").isEmpty());
    EXPECT_FALSE(isFinished());
    type(QStringLiteral("lastDay"), {});
    submit();
    EXPECT_TRUE(isFinished());
}

TEST_F(FairSlips, OneWithoutOrdersIsTakenOffTheList) {
    const Fair fair = added("Creek Fair", 3);
    ASSERT_TRUE(open(SlipName::ChangeFair, about(fair.id)));
    find<Button>(QStringLiteral("takeOff"))->click();
    EXPECT_TRUE(isFinished());
    EXPECT_TRUE(fairs().empty());
}

TEST_F(FairSlips, OneWithOrdersStaysAndSaysWhy) {
    const auto usual = stockUsualShop();
    const Fair fair = added("Creek Fair", 0);
    ShopSettings changed = settings();
    changed.fairName = "Creek Fair";
    valueOf(db::changeSettings(file(), changed));
    takeOrder({aGarment(usual)});
    ASSERT_TRUE(open(SlipName::ChangeFair, about(fair.id)));
    find<Button>(QStringLiteral("takeOff"))->click();
    EXPECT_FALSE(isFinished());
    EXPECT_NE(slip().refusal().indexOf(QStringLiteral("1 order was taken")), -1);
    EXPECT_EQ(fairs().size(), 1U);
}

TEST_F(FairSlips, WhereOrdersAreTakenIsChosenFromTheFairsOfToday) {
    added("Ropewalk Market", 0);
    added("Creek Fair", -1, 2);
    added("Later", 5);
    ASSERT_TRUE(open(SlipName::Settings));
    const auto* places = find<PickList>(QStringLiteral("takenAt"));
    ASSERT_TRUE(places);
    QStringList names;
    for (int at = 0; at < places->count(); ++at)
        names.append(places->itemText(at));
    EXPECT_EQ(names, (QStringList{QStringLiteral("The workshop"), QStringLiteral("Creek Fair"),
                                  QStringLiteral("Ropewalk Market"), QStringLiteral("Another place")}));
    EXPECT_FALSE(find<Field>(QStringLiteral("fairName"))->isVisible());
    choose(QStringLiteral("takenAt"), 2);
    submit();
    EXPECT_EQ(settings().fairName, "Ropewalk Market");

    ASSERT_TRUE(open(SlipName::Settings));
    EXPECT_EQ(find<PickList>(QStringLiteral("takenAt"))->currentIndex(), 2);
    choose(QStringLiteral("takenAt"), 3);
    EXPECT_TRUE(find<Field>(QStringLiteral("fairName"))->isVisible());
    type(QStringLiteral("fairName"), QStringLiteral("A friend’s yard"));
    submit();
    EXPECT_EQ(settings().fairName, "A friend’s yard");

    ASSERT_TRUE(open(SlipName::Settings));
    EXPECT_EQ(find<PickList>(QStringLiteral("takenAt"))->currentIndex(), 3);
    choose(QStringLiteral("takenAt"), 0);
    submit();
    EXPECT_EQ(settings().fairName, "");
}

TEST_F(FairSlips, AFairIsFoundByItsName) {
    const Fair fair = added("Creek Fair", 3);
    const auto found = findEntries(desk(), QStringLiteral("creek"), 10);
    // Beside what was done last, which names it too.
    const auto entry = std::ranges::find_if(found, [](const FinderEntry& each) {
        const auto* asks = std::get_if<AskSlip>(&each.target);
        return asks && asks->slip == SlipName::ChangeFair;
    });
    ASSERT_NE(entry, found.end());
    EXPECT_EQ(std::get<AskSlip>(entry->target).matter.fair, fair.id);
    EXPECT_FALSE(findEntries(desk(), QStringLiteral("add a fair"), 10).empty());
}

} // namespace
} // namespace holdfast::app::test
