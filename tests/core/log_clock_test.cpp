// SPDX-License-Identifier: GPL-3.0-or-later
// Local times of a logger over the changes of the clocks, as they are in the United Kingdom in 2026: an hour
// ahead of UTC from 29 March, 01:00 UTC, until 25 October, 01:00 UTC (The Summer Time Order 2002, from
// memory).
#include "core/film/climate_log.h"
#include "core/film/log_clock.h"

#include <gtest/gtest.h>

#include <string>

namespace holdfast::test {
namespace {

Instant utc(int month, int day, int hour, int minute) {
    return Instant{(LocalTime{localDate(2026, static_cast<unsigned>(month), static_cast<unsigned>(day))} +
                    Hours{hour} + Minutes{minute})
                       .time_since_epoch()};
}

Seconds londonOffset(Instant when) {
    return when >= utc(3, 29, 1, 0) && when < utc(10, 25, 1, 0) ? Seconds{Hours{1}} : Seconds{0};
}

std::vector<LocalTime> everyTenMinutes(Instant from, Instant until, const OffsetAt& shownAs) {
    std::vector<LocalTime> times;
    for (Instant at = from; at < until; at += Minutes{10})
        times.emplace_back(at.time_since_epoch() + shownAs(at));
    return times;
}

void expectEveryTenMinutes(const std::vector<LocalTime>& times, Instant from) {
    const auto instants = instantsOfLog(times, londonOffset);
    ASSERT_EQ(instants.size(), times.size());
    for (std::size_t at = 0; at < instants.size(); ++at)
        ASSERT_EQ(instants[at], from + Minutes{10} * at) << isoInstant(instants[at]);
}

TEST(LogClock, ALoggerThatFollowsTheClocksHasTheDoubledHourTwice) {
    expectEveryTenMinutes(everyTenMinutes(utc(10, 24, 20, 0), utc(10, 25, 6, 0), londonOffset),
                          utc(10, 24, 20, 0));
    expectEveryTenMinutes(everyTenMinutes(utc(3, 28, 20, 0), utc(3, 29, 6, 0), londonOffset),
                          utc(3, 28, 20, 0));
    expectEveryTenMinutes(everyTenMinutes(utc(1, 5, 0, 0), utc(12, 20, 0, 0), londonOffset), utc(1, 5, 0, 0));
}

TEST(LogClock, ALoggerThatKeepsItsTimeIsReadWithTheOneItWasStartedWith) {
    expectEveryTenMinutes(
        everyTenMinutes(utc(10, 24, 20, 0), utc(10, 25, 6, 0), alwaysAhead(Seconds{Hours{1}})),
        utc(10, 24, 20, 0));
    expectEveryTenMinutes(everyTenMinutes(utc(3, 28, 20, 0), utc(3, 29, 6, 0), alwaysAhead(Seconds{0})),
                          utc(3, 28, 20, 0));
}

TEST(LogClock, ALogThatRunsBackwardsIsReadAlike) {
    auto times = everyTenMinutes(utc(10, 24, 20, 0), utc(10, 25, 6, 0), londonOffset);
    std::ranges::reverse(times);
    const auto instants = instantsOfLog(times, londonOffset);
    for (std::size_t at = 0; at < instants.size(); ++at)
        ASSERT_EQ(instants[at], utc(10, 25, 5, 50) - Minutes{10} * at);
}

TEST(LogClock, EachDayIsReadWithTheOffsetOfThatDay) {
    const std::vector<LocalTime> noons{LocalTime{localDate(2026, 1, 10)} + Hours{12},
                                       LocalTime{localDate(2026, 7, 10)} + Hours{12}};
    EXPECT_EQ(instantsOfLog(noons, londonOffset), (std::vector{utc(1, 10, 12, 0), utc(7, 10, 11, 0)}));
    EXPECT_TRUE(instantsOfLog({}, londonOffset).empty());
}

TEST(LogClock, ATimeInTheDoubledHourFollowsTheOneBefore) {
    const LocalTime half = LocalTime{localDate(2026, 10, 25)} + Hours{1} + Minutes{30};
    EXPECT_EQ(instantFollowing(half, {}, londonOffset), utc(10, 25, 0, 30));
    EXPECT_EQ(instantFollowing(half, utc(10, 25, 0, 20), londonOffset), utc(10, 25, 0, 30));
    EXPECT_EQ(instantFollowing(half, utc(10, 25, 0, 30), londonOffset), utc(10, 25, 1, 30));
    EXPECT_EQ(instantFollowing(LocalTime{localDate(2026, 3, 29)} + Hours{1} + Minutes{30}, {}, londonOffset),
              utc(3, 29, 1, 30))
        << "left out: as if the clock had not been put forward yet";
}

TEST(LogClock, BothReadingsOfTheDoubledHourAreInTheLog) {
    const auto log = readClimateLog("2026-10-25 01:30,20,45\n2026-10-25 01:30,21,46\n"
                                    "2026-10-25T00:10Z,19,44\n",
                                    londonOffset);
    ASSERT_TRUE(log.ok());
    ASSERT_EQ(log->readings.size(), 3U);
    EXPECT_EQ(log->duplicates, 0U);
    EXPECT_EQ(log->readings[0].at, utc(10, 25, 0, 10)) << "it names its zone";
    EXPECT_EQ(log->readings[1].at, utc(10, 25, 0, 30));
    EXPECT_EQ(log->readings[2].at, utc(10, 25, 1, 30));
    EXPECT_EQ(log->readings[2].temperature, Celsius{21});
}

} // namespace
} // namespace holdfast::test
