// SPDX-License-Identifier: GPL-3.0-or-later
// Which backups stay. Weeks begin on Monday, as ISO 8601 has it; the calendar is that of std::chrono.
#include "db/disk/staying.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace holdfast::db {
namespace {

using namespace std::chrono_literals;

LocalTime at(int year, unsigned month, unsigned day, Hours hour = Hours{9}) {
    return LocalTime{localDate(year, month, day)} + hour;
}

LocalDate mondayOf(LocalDate day) {
    const std::chrono::weekday weekday{day};
    return day - (weekday - std::chrono::Monday);
}

std::chrono::year_month monthOf(LocalDate day) {
    const std::chrono::year_month_day date{day};
    return date.year() / date.month();
}

// The definition as the documents give it, time by time.
bool staysPlainly(const std::vector<LocalTime>& times, std::size_t which, LocalTime now) {
    const LocalTime time = times[which];
    if (time > now)
        return true;
    const LocalDate day = dateOf(time);
    const LocalDate today = dateOf(now);
    if (day > today - Days{14})
        return true;
    int newer = 0;
    bool isNewestOfWeek = mondayOf(day) > mondayOf(today) - Days{8 * 7};
    bool isNewestOfMonth = monthOf(day) + std::chrono::months{12} > monthOf(today);
    for (std::size_t other = 0; other < times.size(); ++other) {
        const bool isNewer =
            times[other] <= now && (times[other] > time || (times[other] == time && other < which));
        if (!isNewer)
            continue;
        ++newer;
        isNewestOfWeek = isNewestOfWeek && mondayOf(dateOf(times[other])) != mondayOf(day);
        isNewestOfMonth = isNewestOfMonth && monthOf(dateOf(times[other])) != monthOf(day);
    }
    return newer < 2 || isNewestOfWeek || isNewestOfMonth;
}

std::vector<LocalTime> thoseThatStay(const std::vector<LocalTime>& times, LocalTime now) {
    const auto stays = whichStay(times, now);
    std::vector<LocalTime> left;
    for (std::size_t each = 0; each < times.size(); ++each)
        if (stays[each])
            left.push_back(times[each]);
    return left;
}

TEST(Staying, OneADayForTwoYearsComesTo14DaysEightWeeksAndTwelveMonths) {
    std::vector<LocalTime> kept;
    std::vector<LocalTime> all;
    std::size_t most = 0;
    for (LocalTime day = at(2026, 1, 1); day < at(2028, 3, 1); day += Days{1}) {
        kept.push_back(day);
        all.push_back(day);
        kept = thoseThatStay(kept, day);
        EXPECT_EQ(kept, thoseThatStay(all, day)) << isoDate(dateOf(day)) << ": day by day and all at once";
        most = std::max(most, kept.size());
    }
    EXPECT_LE(most, 14U + 8U + 12U);
    // Counted by hand in a calendar: Tuesday, 29 February 2028.
    std::vector<LocalTime> expected;
    for (unsigned month = 3; month <= 12; ++month)
        expected.push_back(LocalTime{LocalDate{std::chrono::year{2027} / month / std::chrono::last}} + 9h);
    expected.insert(expected.end(), {at(2028, 1, 16), at(2028, 1, 23), at(2028, 1, 30), at(2028, 1, 31),
                                     at(2028, 2, 6), at(2028, 2, 13)});
    for (unsigned day = 16; day <= 29; ++day)
        expected.push_back(at(2028, 2, day));
    EXPECT_EQ(kept, expected);
}

// Years in which days are left out, the clock goes back, and one is made several times a day.
TEST(Staying, IsAsTheDefinitionSaysForDaysGapsAndClocksGoneBack) {
    std::mt19937 engine{20261130};
    const auto chance = [&engine] { return static_cast<unsigned>(engine()); };
    for (int round = 0; round < 60; ++round) {
        std::vector<LocalTime> times;
        LocalTime now = at(2025, 1 + chance() % 12, 1 + chance() % 28);
        const unsigned days = 20 + chance() % 900;
        for (unsigned day = 0; day < days; ++day) {
            now += Hours{24};
            if (chance() % 60 == 0)
                now += Days{chance() % 80}; // closed
            if (chance() % 90 == 0)
                now -= Days{chance() % 40}; // the clock is set back
            for (unsigned each = chance() % 3; each > 0; --each)
                times.push_back(now + Minutes{chance() % 600});
            if (chance() % 50 == 0)
                times.push_back(now); // two at one moment
        }
        std::ranges::shuffle(times, engine);
        const auto stays = whichStay(times, now);
        for (std::size_t which = 0; which < times.size(); ++which)
            ASSERT_EQ(stays[which], staysPlainly(times, which, now))
                << "round " << round << ", " << isoLocalMinute(times[which]) << " on " << isoLocalMinute(now);
    }
}

TEST(Staying, AfterALongPauseTheTwoNewestStay) {
    const std::vector<LocalTime> times{at(2023, 1, 1), at(2023, 5, 1), at(2023, 6, 1)};
    EXPECT_EQ(whichStay(times, at(2026, 1, 1)), (std::vector<bool>{false, true, true}));
    EXPECT_TRUE(whichStay({}, at(2026, 1, 1)).empty());
}

TEST(Staying, WhatIsLaterThanNowStaysAndStandsForNoDay) {
    const std::vector<LocalTime> times{at(2036, 1, 1), at(2026, 1, 2), at(2026, 1, 3)};
    EXPECT_EQ(whichStay(times, at(2026, 1, 3, Hours{12})), (std::vector<bool>{true, true, true}));
}

TEST(Staying, TheLastDayIsTheOneBeforeItIsRemoved) {
    // A Wednesday: 14 days with it. The Sunday after it is the newest of its week, and the 31st of its month.
    const std::vector<LocalTime> times{at(2026, 7, 1)};
    EXPECT_EQ(lastDayOf(times, 0, at(2026, 7, 1)), localDate(2026, 7, 14));
    EXPECT_EQ(lastDayOf(std::vector{at(2026, 7, 5)}, 0, at(2026, 7, 5)), localDate(2026, 8, 23))
        << "the last day of the week that is the eighth from 29 June on";
    EXPECT_EQ(lastDayOf(std::vector{at(2026, 7, 31)}, 0, at(2026, 7, 31)), localDate(2027, 6, 30));
    // A month later the same Wednesday is gone when the next backup is made.
    const std::vector<LocalTime> later{at(2026, 7, 1), at(2026, 8, 20), at(2026, 8, 21)};
    EXPECT_FALSE(whichStay(std::vector{at(2026, 7, 1), at(2026, 7, 2), at(2026, 7, 5), at(2026, 7, 31)},
                           at(2026, 8, 1))[0]);
    EXPECT_EQ(lastDayOf(later, 1, at(2026, 8, 21)), localDate(2026, 9, 2));
}

} // namespace
} // namespace holdfast::db
