// SPDX-License-Identifier: GPL-3.0-or-later
// How fast film will age in the months to come: closed forms, and made-up places whose future is known.
#include "core/film/ageing_outlook.h"

#include "core/trade/unit_normal.h"
#include "tests/core/shelf_builders.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numbers>
#include <random>

namespace holdfast::test {
namespace {

const AgeingModel kDoubling{2.0, {22}};
const LocalDate kDecember = localDate(2026, 12, 1);

Now midnightOf(LocalDate date) {
    return {.instant = at(date), .offset = std::chrono::seconds{0}};
}

double doublingAt(double temperature) {
    return std::pow(2.0, (temperature - 22) / 10);
}

// A reading a day, up to that day.
ClimateSeries daily(LocalDate last, int days, const std::function<double(LocalDate)>& temperatureOn) {
    ClimateSeries series;
    for (LocalDate day = last - Days{days}; day <= last; day += Days{1})
        series.push_back({at(day), {temperatureOn(day)}, {45}});
    return series;
}

AgeingOutlook outlookFrom(const ClimateSeries& series, const Now& now, const AgeingModel& model = kDoubling) {
    return {AgeingCurve{series, model}, series.front().at, model, now};
}

// Warmest on 20 July.
double northernYear(LocalDate day, double mean, double swing) {
    const double since = static_cast<double>((day - localDate(2020, 7, 20)).count());
    return mean + swing * std::cos(2 * std::numbers::pi * since / 365.25);
}

TEST(AgeingOutlook, ASteadyYearLeavesNoRangeAndTheClosedForm) {
    for (const double temperature : {12.0, 18.0, 22.0, 27.0}) {
        const ClimateSeries series = daily(kDecember, 366, [&](LocalDate) { return temperature; });
        const AgeingOutlook outlook = outlookFrom(series, midnightOf(kDecember));
        for (const double aged : {3.0, 100.0, 365.0, 900.0, 20'000.0}) {
            const DaysAhead ahead = outlook.daysUntil(aged);
            const double known = aged / doublingAt(temperature);
            EXPECT_NEAR(ahead.usual, known, 1e-5 * known) << temperature;
            EXPECT_NEAR(ahead.fast, known, 1e-3 * known) << temperature;
            EXPECT_NEAR(ahead.slow, known, 1e-3 * known) << temperature;
        }
    }
}

TEST(AgeingOutlook, OfAPlaceNeverReadIsTheReferenceGiveOrTakeWhatPlacesDiffer) {
    const AgeingOutlook outlook{kDoubling, midnightOf(kDecember)};
    EXPECT_NEAR(outlook.daysUntil(400).usual, 400, 1e-9);
    // All of December and no more: 4 °C of the place, 3.5 °C of the season, 1 °C of the weather in 28 of its
    // 31 days, and 1 °C of the year.
    const double spread = std::log(2.0) / 10 * std::sqrt(16 + 12.25 + 28.0 / 31 + 1);
    EXPECT_NEAR(outlook.daysUntil(31 * std::exp(kEightOfTen * spread)).fast, 31, 1e-9);
    EXPECT_NEAR(outlook.daysUntil(31 * std::exp(-kEightOfTen * spread)).slow, 31, 1e-9);
}

// Ten weeks and more are there, always the same, so that only the season is open. With three months at one
// temperature the expected June is a weighted mean of what was read and the reference: by Gaussian
// elimination.
TEST(AgeingOutlook, TheUnseenSeasonIsThatOfTheConditionedNormal) {
    const double read = 17;
    const ClimateSeries series = daily(kDecember, 91, [&](LocalDate) { return read; });
    const AgeingOutlook outlook = outlookFrom(series, midnightOf(kDecember));
    const auto covariance = [](int apart) {
        return 16 + 12.25 * std::exp(-2 * std::pow(std::sin(std::numbers::pi * apart / 12), 2));
    };
    // September, October and November weigh x, y, x; June is three, four and five months away.
    const auto expectedIn = [&](std::array<int, 3> apart) {
        const double own = covariance(0);
        const double next = covariance(1);
        const double second = covariance(2);
        const double ends = (covariance(apart[0]) + covariance(apart[2])) / 2;
        const double middle = covariance(apart[1]);
        // (own + second)·x + next·y = ends; 2·next·x + own·y = middle.
        const double divisor = (own + second) * own - 2 * next * next;
        const double x = (ends * own - next * middle) / divisor;
        const double y = ((own + second) * middle - 2 * next * ends) / divisor;
        return 22 + (2 * x + y) * (read - 22);
    };
    const double december = 31 * doublingAt(expectedIn({3, 2, 1}));
    const double january = 31 * doublingAt(expectedIn({4, 3, 2}));
    EXPECT_NEAR(outlook.daysUntil(december).usual, 31, 1e-3);
    EXPECT_NEAR(outlook.daysUntil(december + january).usual, 62, 1e-3);
}

// One November has three pairs of weeks, all alike; of the five missing each counts as 1 °C².
TEST(AgeingOutlook, OfOneMonthReadTheNextIsThatOfTheConditionedNormal) {
    const ClimateSeries series = daily(kDecember, 30, [](LocalDate) { return 17.0; });
    const AgeingOutlook outlook = outlookFrom(series, midnightOf(kDecember));
    const double weeks = 5.0 / 8;
    const double own = 16 + 12.25;
    const double next = 16 + 12.25 * std::exp(-2 * std::pow(std::sin(std::numbers::pi / 12), 2));
    const double read = own + weeks * 28 / 30;
    const double december = 31 * doublingAt(22 + next / read * (17 - 22));
    EXPECT_NEAR(outlook.daysUntil(december).usual, 31, 1e-4);
    const double variance = own - next * next / read + weeks * 28 / 31 + weeks;
    const double factor = std::exp(kEightOfTen * std::log(2.0) / 10 * std::sqrt(variance));
    EXPECT_NEAR(outlook.daysUntil(december * factor).fast, 31, 1e-4);
    EXPECT_NEAR(outlook.daysUntil(december / factor).slow, 31, 1e-4);
}

// Weeks that differ by 2 °C in turn have a σ² of half the square of that; a steady rise in a year does not
// matter, nor does a week with hardly any reading.
TEST(AgeingOutlook, WeatherIsThatOfThePlacesOwnWeeks) {
    const auto inTurn = [](LocalDate day) {
        const auto week = (kDecember - day).count() / 7;
        return week % 2 == 0 ? 19.0 : 21.0;
    };
    const auto width = [](const ClimateSeries& series) {
        const DaysAhead ahead = outlookFrom(series, midnightOf(kDecember)).daysUntil(30);
        return std::log(ahead.slow / ahead.fast);
    };
    const double restless = width(daily(kDecember, 3 * 365, inTurn));
    EXPECT_LT(width(daily(kDecember, 3 * 365, [](LocalDate) { return 20.0; })), 0.01);
    // About ±1.2816 · ln 2 / 10 · √(σ² · 28/31 + σ² + what is left open of December), σ² = 2 less the ramps.
    EXPECT_NEAR(restless, 2 * kEightOfTen * std::log(2.0) / 10 * std::sqrt(2.0 * (28.0 / 31 + 1)), 0.06);
}

TEST(AgeingOutlook, WinterIsNotCarriedIntoSummer) {
    // Three years of 19 °C give or take 5 °C; asked on 1 December, for a day in the summer.
    const auto year = [](LocalDate day) { return northernYear(day, 19, 5); };
    const ClimateSeries record = daily(kDecember, 3 * 365, year);
    const ClimateSeries future = daily(kDecember + Days{400}, 400, year);
    const AgeingCurve truth{future, kDoubling};
    const AgeingCurve lately{record, kDoubling};
    const AgeingOutlook outlook = outlookFrom(record, midnightOf(kDecember));
    for (const int day : {60, 150, 240, 330}) {
        const double aged = truth.between(at(kDecember), at(kDecember + Days{day})).effectiveDays;
        EXPECT_NEAR(outlook.daysUntil(aged).usual, day, 1.5) << day;
        EXPECT_LT(outlook.daysUntil(aged).fast, day);
        EXPECT_GT(outlook.daysUntil(aged).slow, day);
    }
    const double rate = lately.between(at(kDecember - Days{30}), at(kDecember)).effectiveDays / 30;
    const double untilSummer = truth.between(at(kDecember), at(kDecember + Days{240})).effectiveDays;
    EXPECT_GT(untilSummer / rate, 240 + 25) << "what the last month alone would have said";
}

TEST(AgeingOutlook, MoreOfTheYearReadNarrowsTheRange) {
    const auto year = [](LocalDate day) { return northernYear(day, 19, 3); };
    double before = 1e9;
    for (const int days : {0, 20, 60, 120, 200, 365}) {
        const ClimateSeries series = daily(kDecember, days, year);
        const DaysAhead ahead = outlookFrom(series, midnightOf(kDecember)).daysUntil(300);
        EXPECT_LT(ahead.slow - ahead.fast, before) << days;
        EXPECT_LT(ahead.fast, ahead.usual);
        EXPECT_LT(ahead.usual, ahead.slow);
        before = ahead.slow - ahead.fast;
    }
}

TEST(AgeingOutlook, AFewHotDaysInALongRecordWeighLittle) {
    const auto steadily = [](LocalDate) { return 20.0; };
    const auto hotAtLast = [](LocalDate day) { return day > kDecember - Days{3} ? 34.0 : 20.0; };
    const auto usual = [](const ClimateSeries& series) {
        return outlookFrom(series, midnightOf(kDecember)).daysUntil(300).usual;
    };
    const double plain = usual(daily(kDecember, 90, steadily));
    EXPECT_NEAR(usual(daily(kDecember, 90, hotAtLast)), plain, 0.08 * plain);
    EXPECT_LT(usual(daily(kDecember, 2, hotAtLast)), 0.75 * plain) << "where nothing else is known";
}

TEST(AgeingOutlook, NeedsNoWarmthWhereWarmthAgesNothing) {
    const ClimateSeries series = daily(kDecember, 40, [](LocalDate) { return 30.0; });
    const DaysAhead ahead = outlookFrom(series, midnightOf(kDecember), {1.0, {22}}).daysUntil(100);
    EXPECT_DOUBLE_EQ(ahead.fast, 100);
    EXPECT_DOUBLE_EQ(ahead.usual, 100);
    EXPECT_DOUBLE_EQ(ahead.slow, 100);
}

TEST(AgeingOutlook, GoesOnBeyondItsTenYearsAsInTheLast) {
    const AgeingOutlook outlook{kDoubling, midnightOf(kDecember)};
    const DaysAhead decade = outlook.daysUntil(3'650);
    const DaysAhead century = outlook.daysUntil(36'500);
    EXPECT_NEAR(century.usual, 36'500, 1e-6);
    EXPECT_NEAR(century.fast / decade.fast, 10, 0.1);
    EXPECT_NEAR(century.slow / decade.slow, 10, 0.1);
    EXPECT_DOUBLE_EQ(outlook.daysUntil(0).slow, 0);
}

// ── made-up places whose future is known ──────────────────────────────────────────────────────────────
// None of them is what the outlook takes for granted: a wave of 0 to 6 °C about 16 to 24 °C, every other one
// heated to a floor; years half a degree apart; days that follow one another (correlation 0.85) by 0.3 to
// 1.5 °C. docs/reckoning.md says what comes of it.

class MadeUpPlace {
public:
    MadeUpPlace(std::mt19937& random, int days) {
        const auto between = [&](double low, double high) {
            return std::uniform_real_distribution<double>{low, high}(random);
        };
        std::normal_distribution<double> normal;
        const double mean = between(16, 24);
        const double swing = between(0, 6);
        const double warmest = between(0, 365);
        const double floor = random() % 2 == 0 ? mean + between(-2, 2) : -100;
        const double spread = between(0.3, 1.5);
        double year = 0;
        double weather = spread * normal(random);
        for (int day = 0; day < days; ++day) {
            if (day % 365 == 0)
                year = 0.5 * normal(random);
            weather = 0.85 * weather + spread * std::sqrt(1 - 0.85 * 0.85) * normal(random);
            const double wave = mean + swing * std::cos(2 * std::numbers::pi * (day - warmest) / 365);
            m_series.push_back({at(kFirst + Days{day}), {std::max(wave, floor) + year + weather}, {45}});
        }
    }

    static constexpr int kDayOfAsking = 3 * 365;
    static Now asked() { return midnightOf(kFirst + Days{kDayOfAsking}); }

    ClimateSeries record(int days) const {
        const auto now = m_series.begin() + kDayOfAsking;
        return {now - days, now + 1};
    }
    double trueAge(int daysAhead) const {
        return AgeingCurve{m_series, kDoubling}
            .between(asked().instant, asked().instant + Days{daysAhead})
            .effectiveDays;
    }

private:
    static constexpr LocalDate kFirst{Days{19'000}};
    ClimateSeries m_series;
};

// The share of places whose day lies within the range, by the length of the record and the true day.
struct KeptDays {
    std::array<int, 6> lengths{10, 30, 90, 180, 365, 1000};
    std::array<int, 4> days{30, 90, 180, 365};
    std::array<std::array<double, 4>, 6> share{};

    double least() const {
        double least = 1;
        for (const auto& row : share)
            least = std::min(least, *std::ranges::min_element(row));
        return least;
    }
    double meanOf(std::size_t from, std::size_t to) const {
        double sum = 0;
        for (std::size_t length = from; length < to; ++length)
            for (const double each : share[length])
                sum += each;
        return sum / static_cast<double>((to - from) * days.size());
    }
};

KeptDays keptByMadeUpPlaces(int places) {
    std::mt19937 random{17};
    KeptDays kept;
    for (int place = 0; place < places; ++place) {
        const MadeUpPlace made{random, MadeUpPlace::kDayOfAsking + 400};
        for (std::size_t length = 0; length < kept.lengths.size(); ++length) {
            const ClimateSeries record = made.record(kept.lengths[length]);
            const AgeingOutlook outlook = outlookFrom(record, MadeUpPlace::asked());
            for (std::size_t ahead = 0; ahead < kept.days.size(); ++ahead) {
                const double truth = kept.days[ahead];
                const DaysAhead range = outlook.daysUntil(made.trueAge(kept.days[ahead]));
                // As it is said: in whole days.
                if (std::floor(range.fast) <= truth && truth <= std::ceil(range.slow))
                    kept.share[length][ahead] += 1.0 / places;
            }
        }
    }
    return kept;
}

TEST(AgeingOutlook, TheDayLiesInTheRangeInEightOfTenCases) {
    const KeptDays kept = keptByMadeUpPlaces(150);
    EXPECT_GE(kept.least(), 0.68);
    EXPECT_NEAR(kept.meanOf(0, 4), 0.88, 0.05) << "part of a year: what is not known is rather said too wide";
    EXPECT_NEAR(kept.meanOf(4, 6), 0.82, 0.05) << "a year and more";
}

} // namespace
} // namespace holdfast::test
