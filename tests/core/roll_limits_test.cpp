// SPDX-License-Identifier: GPL-3.0-or-later
// A roll at its limits: the day on which it grew too old, and hours outside two limits at once.
#include "core/film/both_outside.h"
#include "core/film/roll_condition.h"
#include "tests/core/shelf_builders.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace holdfast::test {
namespace {

// ── the use-by that is past ───────────────────────────────────────────────────────────────────────────

// Forty days at 32 °C, two a day: 61 of them are over on the thirtieth at noon; then a cool winter.
Shelf warmThenCool() {
    Shelf shelf;
    shelf.film.shelfLife = Days{61};
    ClimateSeries series = steady(at(nov(1)), at(nov(1) + Days{40}), 32, 45);
    const ClimateSeries cool = steady(at(nov(1) + Days{41}), at(nov(1) + Days{400}), 12, 45);
    series.insert(series.end(), cool.begin(), cool.end());
    shelf.climate[kUpperShelf] = shared(series);
    return shelf;
}

TEST(PastUseBy, IsTheDayThatTheReadingsHaveAndStaysThere) {
    Shelf shelf = warmThenCool();
    const LocalDate reached = nov(1) + Days{30};
    for (int day = 30; day <= 400; day += 5) {
        shelf.now = noonOf(nov(1) + Days{day});
        EXPECT_EQ(shelf.reckon().useBy, reached) << day;
    }
    shelf.now = noonOf(nov(1) + Days{29});
    // Not there yet: a day to come, whose range has the true one.
    EXPECT_GE(*shelf.reckon().useBy, reached);
    EXPECT_LE(*shelf.reckon().useBy, reached + Days{1});
}

TEST(PastUseBy, IsNotMovedByAMoveAfterwards) {
    Shelf shelf = warmThenCool();
    shelf.climate[kCellar] = shared(steady(at(nov(1)), at(nov(1) + Days{400}), 2, 45));
    shelf.roll.stays.push_back({kCellar, at(nov(1) + Days{45})});
    shelf.now = noonOf(nov(1) + Days{200});
    EXPECT_EQ(shelf.reckon().useBy, nov(1) + Days{30});
}

TEST(PastUseBy, CountsUnrecordedTimeOneForOneBackwardsToo) {
    Shelf shelf;
    shelf.film.shelfLife = Days{60};
    shelf.now = noonOf(nov(1) + Days{200});
    EXPECT_EQ(shelf.reckon().useBy, nov(1) + Days{60}) << "nothing recorded at all";
    // Recorded at 32 °C from day 10 to day 20 only: 10 + 20, and 30 more by day 50.
    shelf.climate[kUpperShelf] = shared(steady(at(nov(11)), at(nov(21)), 32, 45));
    EXPECT_EQ(shelf.reckon().useBy, nov(1) + Days{50});
}

TEST(PastUseBy, ReachedBeforeTheRollWasHereIsCountedFromItsMadeDay) {
    Shelf shelf = warmThenCool();
    shelf.roll.madeOn = nov(1) - Days{100};
    EXPECT_EQ(shelf.reckon().useBy, nov(1) - Days{39});
}

// Whatever the readings are: at the day's end the age is beyond the shelf life, at its beginning it is not.
TEST(PastUseBy, HasTheAgeAtTheShelfLife) {
    std::mt19937 random{5};
    for (int round = 0; round < 60; ++round) {
        Shelf shelf;
        ClimateSeries series;
        for (Instant when = at(nov(1)) + Hours{random() % 200}; when < at(nov(1) + Days{300});
             when += Hours{1 + static_cast<int>(random() % (round % 2 == 0 ? 20 : 150))})
            series.push_back({when, {5.0 + static_cast<double>(random() % 300) / 10}, {40}});
        shelf.climate[kUpperShelf] = shared(series);
        shelf.film.shelfLife = Days{20 + static_cast<int>(random() % 150)};
        shelf.now = noonOf(nov(1) + Days{300});
        const RollCondition late = shelf.reckon();
        if (late.effectiveDays < static_cast<double>(shelf.film.shelfLife->count()))
            continue;
        const auto ageAt = [&](LocalDate day) {
            shelf.now.instant = at(day);
            return shelf.reckon().effectiveDays;
        };
        const auto life = static_cast<double>(shelf.film.shelfLife->count());
        EXPECT_LE(ageAt(*late.useBy), life + 1e-4) << round;
        EXPECT_GE(ageAt(*late.useBy + Days{1}), life - 1e-4) << round;
    }
}

TEST(TestStrips, TheLongestOfThosePassedCounts) {
    Shelf shelf;
    shelf.roll.printedUseBy = nov(2);
    shelf.roll.testStrips = {{at(nov(6), 9), true, Days{60}, ""}, {at(nov(9), 9), true, Days{5}, ""}};
    EXPECT_EQ(shelf.reckon().useBy, nov(6) + Days{60});
    EXPECT_TRUE(shelf.reckon().extendedByStrip);
}

// ── outside two limits at once ────────────────────────────────────────────────────────────────────────

TEST(BothOutside, AnHourOutsideBothIsOneHour) {
    Shelf shelf;
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)), at(nov(3)), 31.5, 55));
    const RollCondition condition = shelf.reckon();
    EXPECT_NEAR(condition.humidityHoursOutside, 48, 1e-9);
    EXPECT_NEAR(condition.temperatureHoursOutside, 48, 1e-9);
    EXPECT_NEAR(condition.bothHoursOutside, 48, 1e-9);
    EXPECT_NEAR(condition.hoursOutside(), 48, 1e-9) << "not 96 of the 72 allowed";
    shelf.roll.testStrips = {{at(nov(2)), true, Days{30}, ""}};
    EXPECT_NEAR(shelf.reckon().hoursOutside(), 24, 1e-9) << "since the strip";
}

TEST(BothOutside, HoursOutsideOneOnlyAreAllCounted) {
    Shelf shelf;
    ClimateSeries series = steady(at(nov(1)), at(nov(2)), 35, 40);
    const ClimateSeries damp = steady(at(nov(2), 1), at(nov(4)), 20, 60);
    series.insert(series.end(), damp.begin(), damp.end());
    shelf.climate[kUpperShelf] = shared(series);
    const RollCondition condition = shelf.reckon();
    EXPECT_NEAR(condition.hoursOutside(),
                condition.humidityHoursOutside + condition.temperatureHoursOutside -
                    condition.bothHoursOutside,
                1e-9);
    // From 35 to 20 °C and from 40 to 60 % in one hour: both are out for none of it.
    EXPECT_NEAR(condition.bothHoursOutside, 0, 1e-9);
    EXPECT_NEAR(condition.hoursOutside(), 24 + 20.0 / 60 + 47 + 30.0 / 60, 0.2);
}

// Against a count in steps of ten seconds along the lines between the readings.
TEST(BothOutside, AgreesWithACountInSmallSteps) {
    std::mt19937 random{11};
    for (int round = 0; round < 20; ++round) {
        ClimateSeries series;
        for (Instant when = at(nov(1)); when < at(nov(4)); when += Minutes{10 + random() % 400})
            series.push_back({when,
                              {20.0 + static_cast<double>(random() % 200) / 10},
                              {30.0 + static_cast<double>(random() % 400) / 10}});
        const ExposureCurve damp{series, Measure::Humidity, 30, 50};
        const ExposureCurve warm{series, Measure::Temperature, 10, 30};
        BothOutside both;
        both.add(damp, warm, series.front().at, series.back().at);
        const Instant from = series.front().at + Hours{5};
        const Instant to = series.back().at - Hours{3};
        double counted = 0;
        std::size_t at = 0;
        for (Instant when = from; when < to; when += Seconds{10}) {
            while (series[at + 1].at <= when)
                ++at;
            const double share = static_cast<double>((when - series[at].at).count()) /
                                 static_cast<double>((series[at + 1].at - series[at].at).count());
            const double heat =
                std::lerp(series[at].temperature.value, series[at + 1].temperature.value, share);
            const double water =
                std::lerp(series[at].humidity.percent, series[at + 1].humidity.percent, share);
            counted += (heat < 10 || heat > 30) && (water < 30 || water > 50) ? 10.0 / 3600 : 0;
        }
        EXPECT_NEAR(both.hoursBetween(from, to), counted, 0.06) << round;
        EXPECT_LE(both.hoursBetween(from, to), damp.hoursBetween(from, to) + 0.01);
    }
}

} // namespace
} // namespace holdfast::test
