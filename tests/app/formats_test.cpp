// SPDX-License-Identifier: GPL-3.0-or-later
// How spans of time and days are said, and how days are read.

#include "app/desk/formats.h"

#include <gtest/gtest.h>

namespace holdfast::app {
namespace {

using namespace std::chrono_literals;

std::string spoken(Seconds span) {
    return timeSpan(span).toStdString();
}

TEST(Formats, ASpanOfTimeIsSaidAsPeopleSayIt) {
    EXPECT_EQ(spoken(0s), "0 s");
    EXPECT_EQ(spoken(59s), "59 s");
    EXPECT_EQ(spoken(4min), "4 min");
    EXPECT_EQ(spoken(2h + 5min), "2 h 5 min");
    EXPECT_EQ(spoken(72h), "72 h");
    EXPECT_EQ(spoken(95h + 59min), "95 h 59 min");
    // Nobody counts 441 hours.
    EXPECT_EQ(spoken(96h), "4 days");
    EXPECT_EQ(spoken(441h + 24min), "18 days");
    EXPECT_EQ(spoken(18 * 24h + 12h), "19 days");
}

TEST(Formats, AnAgeIsMonthsAndDays) {
    EXPECT_EQ(age(Days{1}).toStdString(), "1 day");
    EXPECT_EQ(age(Days{32}).toStdString(), "1 month 2 days");
    EXPECT_EQ(age(Days{388}).toStdString(), "12 months 23 days");
}

TEST(Formats, ADayIsReadAsItIsShown) {
    using std::chrono::November, std::chrono::December;
    const LocalDate today{std::chrono::year{2026} / November / 25};
    const auto read = [&](const char* typed) {
        const auto day = readDate(QString::fromUtf8(typed), QStringLiteral("Day"), today);
        return day.ok() ? isoDate(*day) : day.error().message.english();
    };
    EXPECT_EQ(read("30 Nov"), "2026-11-30");
    EXPECT_EQ(read("Mon 30 Nov"), "2026-11-30");
    EXPECT_EQ(read("Mon, 30 november"), "2026-11-30");
    EXPECT_EQ(read("2 Jan"), "2027-01-02");
    EXPECT_EQ(read("1 Sep 2025"), "2025-09-01");
    EXPECT_EQ(read("30/11"), "2026-11-30");
    EXPECT_EQ(read("2026-11-30"), "2026-11-30");
    for (const LocalDate day : {today, LocalDate{std::chrono::year{2024} / December / 31}})
        EXPECT_EQ(read(date(day).toUtf8().constData()), isoDate(day));
    EXPECT_EQ(read("31 Feb 2026"), "Day: a day such as 25 Nov 2026 or 25/11.");
    EXPECT_EQ(read("3 Brumaire"), "Day: a day such as 25 Nov 2026 or 25/11.");
}

} // namespace
} // namespace holdfast::app
