// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/id_maker.h"

#include <gtest/gtest.h>

#include <set>

namespace holdfast {
namespace {

using namespace std::chrono_literals;

constexpr Instant kNoon = std::chrono::sys_days{std::chrono::year{2026} / 11 / 25} + 12h;

TEST(IdMaker, PutsTimeSeatAndCounterIntoAPositiveNumber) {
    IdMaker maker{5};
    const auto id = maker.next(kNoon);
    EXPECT_GT(id, 0);
    EXPECT_EQ(IdMaker::seatOf(id), 5);
    EXPECT_EQ(IdMaker::timeOf(id), kNoon);
    // 2026-11-25 12:00 is 1,059.5 days after 2024-01-01: milliseconds, then ten bits, then twelve.
    EXPECT_EQ(id, (std::int64_t{91540800} * 1000 << 22) | (5 << 12));
    EXPECT_EQ(maker.next(kNoon), id + 1);
}

TEST(IdMaker, RisesWhileTheClockStandsStill) {
    IdMaker maker{1};
    std::int64_t last = 0;
    for (int made = 0; made < 20'000; ++made) { // nearly five milliseconds' worth
        const auto id = maker.next(kNoon);
        ASSERT_GT(id, last);
        ASSERT_EQ(IdMaker::seatOf(id), 1);
        last = id;
    }
    EXPECT_EQ(IdMaker::timeOf(last), kNoon);
}

TEST(IdMaker, RisesWhenTheClockIsSetBack) {
    IdMaker maker{1};
    const auto before = maker.next(kNoon);
    EXPECT_GT(maker.next(kNoon - 48h), before);
    EXPECT_GT(maker.next(kNoon - 24h), before + 1);
}

TEST(IdMaker, GoesOnFromTheLastIdOfAnEarlierRun) {
    IdMaker earlier{7};
    const auto last = earlier.next(kNoon);
    IdMaker later{7, last};
    EXPECT_GT(later.next(kNoon - 1h), last);
    EXPECT_GT(IdMaker(7, last).next(kNoon), last);
}

TEST(IdMaker, TwoSeatsNeverMakeTheSame) {
    IdMaker stall{1};
    IdMaker workshop{2};
    std::set<std::int64_t> made;
    for (int each = 0; each < 10'000; ++each) {
        EXPECT_TRUE(made.insert(stall.next(kNoon)).second);
        EXPECT_TRUE(made.insert(workshop.next(kNoon)).second);
    }
}

TEST(IdMaker, TakesATimeBefore2024ForItsBeginning) {
    IdMaker maker{1};
    const auto id = maker.next(Instant{});
    EXPECT_GT(id, 0);
    EXPECT_GT(maker.next(Instant{}), id);
}

TEST(IdMaker, HoldsToItsBitsAtTheEdges) {
    IdMaker highest{IdMaker::kHighestSeat};
    const Instant late = std::chrono::sys_days{std::chrono::year{2093} / 1 / 1};
    const auto id = highest.next(late);
    EXPECT_GT(id, 0);
    EXPECT_EQ(IdMaker::seatOf(id), 1023);
    EXPECT_EQ(IdMaker::timeOf(id), late);
}

TEST(IdMaker, MovesAnIdOnByAsManyAsItWouldHaveMade) {
    IdMaker one{7};
    const Instant now = std::chrono::sys_days{std::chrono::year{2026} / 11 / 30};
    const auto first = one.next(now);
    std::int64_t later = first;
    for (int count = 0; count < 5000; ++count) // more than fall into one millisecond
        later = one.next(now);
    EXPECT_EQ(IdMaker::movedOn(first, 5000), later);
    EXPECT_EQ(IdMaker::movedOn(first, 0), first);
    EXPECT_EQ(IdMaker::seatOf(later), 7);
}

} // namespace
} // namespace holdfast
