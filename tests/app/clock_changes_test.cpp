// SPDX-License-Identifier: GPL-3.0-or-later
// The changes of the clocks that the window finds, against those that the tz database (IANA) installed on
// this machine has, as Qt reads it.
#include "app/desk/clock.h"

#include <gtest/gtest.h>

#include <QDateTime>
#include <QTimeZone>

namespace holdfast::app {
namespace {

OffsetAt offsetIn(const QTimeZone& zone) {
    return [zone](Instant when) {
        const auto at = QDateTime::fromSecsSinceEpoch(when.time_since_epoch().count(), QTimeZone::utc());
        return std::chrono::seconds{zone.offsetFromUtc(at)};
    };
}

constexpr Instant kNow = std::chrono::sys_days{std::chrono::year{2026} / 11 / 30} + std::chrono::hours{9};

Clock clockIn(const QTimeZone& zone, Instant now = kNow) {
    Clock clock = systemClock();
    clock.now = [now] { return now; };
    clock.offsetAt = offsetIn(zone);
    return clock;
}

TEST(ClockChangesFound, AreThoseOfTheTimeZoneDatabase) {
    const QDateTime from(QDate(2025, 11, 1), QTime(0, 0), QTimeZone::utc());
    int seen = 0;
    for (const char* id : {"Europe/London", "Europe/Berlin", "America/New_York", "Australia/Lord_Howe",
                           "Africa/Casablanca", "America/Santiago", "Asia/Tokyo"}) {
        const QTimeZone zone{QByteArray(id)};
        ASSERT_TRUE(zone.isValid()) << id;
        const Now now = clockIn(zone).moment();
        for (const auto& change : zone.transitions(from, from.addYears(6))) {
            const Instant at{std::chrono::seconds{change.atUtc.toSecsSinceEpoch()}};
            for (const auto beside : {std::chrono::seconds{-1}, std::chrono::seconds{0}})
                EXPECT_EQ(now.toLocal(at + beside).time_since_epoch() - (at + beside).time_since_epoch(),
                          offsetIn(zone)(at + beside))
                    << id << ' ' << isoInstant(at);
            ++seen;
        }
    }
    EXPECT_GT(seen, 60);
}

TEST(ClockChangesFound, AreLookedForAgainInAnotherPlaceAndInLaterYears) {
    const auto localNoon = [](const Clock& clock, int year) {
        const Instant noon = std::chrono::sys_days{std::chrono::year{year} / 7 / 1} + std::chrono::hours{12};
        return clockTime(clock.moment().toLocal(noon));
    };
    Clock clock = clockIn(QTimeZone{"Europe/Berlin"});
    EXPECT_EQ(localNoon(clock, 2027), "14:00");
    clock.offsetAt = offsetIn(QTimeZone{"Africa/Algiers"}); // the same hour in winter, and in summer too
    EXPECT_EQ(localNoon(clock, 2027), "13:00");
    clock.offsetAt = offsetIn(QTimeZone{"America/New_York"});
    EXPECT_EQ(localNoon(clock, 2027), "08:00");
    clock.now = [] { return kNow + Days{20 * 365}; };
    EXPECT_EQ(localNoon(clock, 2047), "08:00");
    EXPECT_EQ(clock.moment().changes, clock.moment().changes) << "not each time";
}

} // namespace
} // namespace holdfast::app
