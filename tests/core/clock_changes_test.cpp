// SPDX-License-Identifier: GPL-3.0-or-later
// Clocks that are put forward and back, and what a shop reckons over those nights. The changes of 2026 are
// those of the tz database (IANA, release 2025b, as `zdump -v` tells them).
#include "core/trade/clock_changes.h"

#include "core/orders/promise_hours.h"
#include "core/shop/care_of_garment.h"
#include "core/shop/walk.h"
#include "tests/core/builders.h"
#include "tests/core/promise_builders.h"

#include <gtest/gtest.h>

#include <array>
#include <vector>

namespace holdfast::test {
namespace {

Instant utc(int month, int day, int hour, int minute = 0) {
    return Instant{(LocalTime{localDate(2026, static_cast<unsigned>(month), static_cast<unsigned>(day))} +
                    Hours{hour} + Minutes{minute})
                       .time_since_epoch()};
}

LocalTime wall(int month, int day, int hour, int minute = 0) {
    return LocalTime{utc(month, day, hour, minute).time_since_epoch()};
}

struct Zone {
    const char* name;
    Minutes before; // the first change, until the first, and after the second
    Instant first;
    Minutes between;
    Instant second;
};

const std::array kZones{
    Zone{"Europe/Berlin", Minutes{60}, utc(3, 29, 1), Minutes{120}, utc(10, 25, 1)},
    Zone{"America/New_York", Minutes{-300}, utc(3, 8, 7), Minutes{-240}, utc(11, 1, 6)},
    Zone{"Australia/Lord_Howe", Minutes{660}, utc(4, 4, 15), Minutes{630}, utc(10, 3, 15, 30)},
    Zone{"Africa/Casablanca", Minutes{60}, utc(2, 15, 2), Minutes{0}, utc(3, 22, 2)},
};

OffsetAt offsetIn(const Zone& zone) {
    return [zone](Instant when) {
        return Seconds{when >= zone.first && when < zone.second ? zone.between : zone.before};
    };
}

Now nowIn(const Zone& zone, LocalTime time) {
    const auto changes = std::make_shared<const ClockChanges>(utc(1, 1, 0), utc(12, 31, 0), offsetIn(zone));
    const Instant instant = changes->toInstant(time);
    return {instant, changes->offsetAt(instant), changes};
}

Now inBerlin(LocalTime time) {
    return nowIn(kZones[0], time);
}

TEST(ClockChanges, AreFoundToTheSecond) {
    for (const Zone& zone : kZones) {
        const OffsetAt offsetAt = offsetIn(zone);
        const ClockChanges changes(utc(1, 1, 0), utc(12, 31, 0), offsetAt);
        for (const Instant change : {zone.first, zone.second})
            for (const Seconds beside : {Seconds{-1}, Seconds{0}, Seconds{1}})
                EXPECT_EQ(changes.offsetAt(change + beside), offsetAt(change + beside)) << zone.name;
        EXPECT_EQ(changes.offsetAt(utc(1, 1, 0) - Days{900}), zone.before) << zone.name << ", before all";
        EXPECT_EQ(changes.offsetAt(utc(12, 31, 0) + Days{900}), zone.before) << zone.name << ", after all";
        ASSERT_EQ(changes.leftOut().size(), 1U) << zone.name;
    }
}

TEST(ClockChanges, TimesGoThereAndBackButForTheHourThatIsTwice) {
    for (const Zone& zone : kZones) {
        const ClockChanges changes(utc(1, 1, 0), utc(12, 31, 0), offsetIn(zone));
        for (Instant when = utc(1, 2, 0); when < utc(12, 30, 0); when += Minutes{15}) {
            const Instant back = changes.toInstant(changes.toLocal(when));
            const Seconds twice =
                zone.before > zone.between ? zone.before - zone.between : zone.between - zone.before;
            const Instant fallsBack = zone.before > zone.between ? zone.first : zone.second;
            const bool isSecondTime = when >= fallsBack && when < fallsBack + twice;
            ASSERT_EQ(back, isSecondTime ? when - twice : when) << zone.name << ' ' << isoInstant(when);
        }
    }
}

TEST(ClockChanges, ATimeThatIsLeftOutIsCountedOn) {
    const Now now = inBerlin(wall(3, 28, 12));
    EXPECT_EQ(now.toInstant(wall(3, 29, 2, 30)), utc(3, 29, 1, 30));
    EXPECT_EQ(now.toLocal(utc(3, 29, 1, 30)), wall(3, 29, 3, 30));
    EXPECT_EQ(now.toInstant(wall(10, 25, 2, 30)), utc(10, 25, 0, 30)) << "the first of the two";
}

TEST(ClockChanges, WithoutThemTheOffsetIsTheSameAtAllTimes) {
    const Now now{utc(3, 28, 11), Hours{1}};
    EXPECT_EQ(now.toLocal(utc(7, 1, 12)), wall(7, 1, 13));
    EXPECT_EQ(now.later(wall(3, 28, 12), Hours{24}), wall(3, 29, 12));
}

// ── what a shop reckons ──

fair_days::FairShop openEveryDay() {
    fair_days::FairShop shop;
    for (auto& day : shop.facts.settings.week)
        day = OpeningHours{Minutes{9 * 60}, Minutes{17 * 60}};
    return shop;
}

Promise promisedIn(const fair_days::FairShop& shop, ColourId colour, const Now& now) {
    const auto promise = promiseFor(std::vector{fair_days::aTee(colour)}, shop.facts, shop.promised, now);
    EXPECT_TRUE(promise.ok());
    return promise.ok() ? *promise : Promise{};
}

LocalTime pressedAt(const Promise& promise) {
    for (const PromiseStep& step : promise.path)
        if (step.stage == PromiseStage::Press)
            return step.at;
    return {};
}

// Pressed at 12:40 on the Saturday, and a day of rest.
TEST(OverAClockChange, RestTakesItsHours) {
    const fair_days::FairShop shop = openEveryDay();
    const auto ready = [&](LocalTime from) {
        return promisedIn(shop, fair_days::kFog, inBerlin(from)).readyAt;
    };
    EXPECT_EQ(ready(wall(3, 21, 12, 30)), wall(3, 22, 13)) << "a week before";
    EXPECT_EQ(ready(wall(3, 28, 12, 30)), wall(3, 29, 14));
    EXPECT_EQ(ready(wall(10, 24, 12, 30)), wall(10, 25, 12));
}

// In the wash at 17:00, which takes an hour, and fifteen and a half to dry.
TEST(OverAClockChange, DryingTakesItsHours) {
    fair_days::FairShop shop = openEveryDay();
    shop.facts.settings.dryingTakes = Hours{15};
    const auto pressed = [&](LocalTime from) {
        return pressedAt(promisedIn(shop, fair_days::kMoss, inBerlin(from)));
    };
    EXPECT_EQ(pressed(wall(3, 21, 12)), wall(3, 22, 9, 10));
    EXPECT_EQ(pressed(wall(3, 28, 12)), wall(3, 29, 10, 10));
    EXPECT_EQ(pressed(wall(10, 24, 12)), wall(10, 25, 9, 10)) << "dry at 8, when nobody is there";
    shop.facts.settings.dryingTakes = Hours{16};
    EXPECT_EQ(pressed(wall(10, 17, 12)), wall(10, 18, 10, 10));
    EXPECT_EQ(pressed(wall(10, 24, 12)), wall(10, 25, 9, 10));
}

TEST(OverAClockChange, ALoadThatRunsAlreadyIsDryAfterItsHours) {
    fair_days::FairShop shop = openEveryDay();
    shop.facts.lots = {};
    shop.facts.settings.dryingTakes = Hours{15};
    const Now now = inBerlin(wall(3, 29, 9));
    WashLoad load;
    load.id = {7};
    load.startedAt = now.toInstant(wall(3, 28, 18));
    shop.facts.loads.add(load);
    shop.addLot(fair_days::kMoss, 1, load.id);
    EXPECT_EQ(pressedAt(promisedIn(shop, fair_days::kMoss, now)), wall(3, 29, 11, 10));
}

TEST(OverAClockChange, AnHourThatIsLeftOutIsNotWorkedIn) {
    ShopSettings settings;
    settings.week[0] = OpeningHours{Minutes{0}, Minutes{12 * 60}};
    const Now now = inBerlin(wall(3, 29, 0));
    const auto hours = openHours(settings, now, Days{0});
    ASSERT_EQ(hours.size(), 2U);
    EXPECT_EQ(doneBy(hours, now.local(), Hours{2}), wall(3, 29, 2));
    EXPECT_EQ(doneBy(hours, now.local(), Hours{3}), wall(3, 29, 4));
    EXPECT_EQ(openHours(settings, inBerlin(wall(3, 22, 0)), Days{0}).size(), 1U);
}

TEST(OverAClockChange, TimeOutsideHoursIsCountedInTrueMinutes) {
    ShopSettings settings;
    settings.week[0] = OpeningHours{Minutes{9 * 60}, Minutes{17 * 60}};
    settings.week[6] = OpeningHours{Minutes{9 * 60}, Minutes{17 * 60}};
    const auto outside = [&](LocalTime from, LocalTime until) {
        const Now now = inBerlin(from);
        return outsideHours(settings, now, now.toInstant(until));
    };
    EXPECT_EQ(outside(wall(3, 21, 17), wall(3, 22, 9)), Hours{16});
    EXPECT_EQ(outside(wall(3, 28, 17), wall(3, 29, 9)), Hours{15});
    EXPECT_EQ(outside(wall(10, 24, 17), wall(10, 25, 9)), Hours{17});
    EXPECT_EQ(outside(wall(10, 24, 16), wall(10, 25, 10)), Hours{17});
}

// A garment that is ready for the press on the Saturday at noon, for Sunday at noon and a rest of a day.
ReckonedShop onTheEveOf(LocalTime noon) {
    const LocalTime promised = noon + Days{1};
    TestShop made = aShop().with(aGarment().order([&](Order& order) { order.promised = promised; })).build();
    ReckonedShop shop;
    shop.facts = made.facts;
    shop.conditions = made.conditions;
    shop.allotment = made.allotment;
    shop.now = inBerlin(noon);
    shop.assessments = assessAll(shop.around());
    return shop;
}

TEST(OverAClockChange, ThePlanOfTheDayKnowsWhenAPromiseIsDue) {
    const auto timeToRest = [](LocalTime noon) {
        const ReckonedShop shop = onTheEveOf(noon);
        const PlanRequest request = planRequest(shop.facts, shop.assessments, shop.now);
        EXPECT_EQ(request.jobs.size(), 1U);
        return request.jobs.at(0).due + shop.facts.settings.restBeforeWash - shop.now.instant;
    };
    EXPECT_EQ(timeToRest(wall(3, 21, 12)), Hours{24});
    EXPECT_EQ(timeToRest(wall(3, 28, 12)), Hours{23});
    EXPECT_EQ(timeToRest(wall(10, 24, 12)), Hours{25});
}

TEST(OverAClockChange, ThePlanShowsWhatTheClockOnTheWallWillShow) {
    const Now eve = inBerlin(wall(3, 29, 1, 50));
    EXPECT_EQ(clockTime(eve.toLocal(eve.instant + Minutes{20})), "03:10");
    EXPECT_EQ(clockTime(inBerlin(wall(10, 25, 2, 50)).toLocal(utc(10, 25, 1, 10))), "02:10");
}

} // namespace
} // namespace holdfast::test
