// SPDX-License-Identifier: GPL-3.0-or-later
// An hour more on some day, so that an order is ready when it is wanted.

#include "core/orders/longer_day.h"
#include "tests/core/promise_builders.h"

#include <gtest/gtest.h>

using namespace holdfast;
using namespace holdfast::fair_days;

namespace {

constexpr Seconds kWork = Hours{13} + Minutes{30};

// Tuesday 11:42, open from 9 to 17; a rest of 24 h.
std::optional<LongerDay> longer(const FairShop& shop, Seconds work, int wantedOn) {
    const std::vector<AskedGarment> asked{aTee(kFog, work)};
    return longerDayFor(asked, shop.facts, shop.promised, atTheTable(), kTuesday + Days{wantedOn});
}

} // namespace

TEST(LongerDay, FewestHoursOnTheFirstDayThatDoesIt) {
    FairShop shop;
    // 13 h 30 min of work: 5 h 18 min today, 8 h tomorrow, so done on Thursday and ready on Friday.
    const auto usual = promiseFor(std::vector{aTee(kFog, kWork)}, shop.facts, shop.promised, atTheTable());
    ASSERT_TRUE(usual.ok());
    EXPECT_EQ(usual->readyAt, at(3, 9, 30));
    // An hour more today: done on Wednesday at 16:12, and rested while the shop is open on Thursday.
    const auto day = longer(shop, kWork, 2);
    ASSERT_TRUE(day);
    EXPECT_EQ(day->day, kTuesday);
    EXPECT_EQ(day->more, Hours{1});
    EXPECT_EQ(day->hours.closes, Minutes{18 * 60});
    EXPECT_EQ(day->readyAt, at(2, 16, 30));
}

TEST(LongerDay, NoneWhereItHasNotRestedInTime) {
    FairShop shop;
    // 6 h: done today at 17:42 at the soonest, and rested tomorrow after closing.
    EXPECT_FALSE(longer(shop, Hours{6}, 1));
}

TEST(LongerDay, ThePromiseIsWhatTheOtherHoursGive) {
    FairShop shop;
    const auto day = longer(shop, kWork, 2);
    ASSERT_TRUE(day);
    shop.facts.settings.otherHours[day->day] = day->hours;
    const auto promise = promiseFor(std::vector{aTee(kFog, kWork)}, shop.facts, shop.promised, atTheTable());
    ASSERT_TRUE(promise.ok());
    EXPECT_EQ(promise->readyAt, day->readyAt);
}

TEST(LongerDay, ClosedDaysStayClosedAndAnEveningIsNotTheNight) {
    FairShop shop;
    shop.facts.settings.closedDays = {kTuesday, kTuesday + Days{1}};
    EXPECT_FALSE(longer(shop, Hours{1}, 1));
    FairShop late;
    for (auto& hours : late.facts.settings.week)
        if (hours)
            hours->closes = Hours{22};
    EXPECT_FALSE(longer(late, Hours{20}, 1));
}

TEST(LongerDay, OtherHoursTakeThePlaceOfTheWeekdaysAndNotOfAClosedDay) {
    ShopSettings settings;
    settings.otherHours[kTuesday] = {Hours{8}, Hours{20}};
    EXPECT_EQ(settings.hoursOn(kTuesday)->closes, Minutes{20 * 60});
    EXPECT_EQ(settings.hoursOn(kTuesday + Days{7}), OpeningHours{});
    const LocalDate sunday = kTuesday + Days{5};
    EXPECT_FALSE(settings.isOpenOn(sunday));
    settings.otherHours[sunday] = {Hours{10}, Hours{12}};
    EXPECT_TRUE(settings.isOpenOn(sunday));
    settings.closedDays = {sunday};
    EXPECT_FALSE(settings.isOpenOn(sunday));
}
