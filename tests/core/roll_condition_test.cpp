// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/roll_condition.h"

#include "core/film/ageing.h"
#include "tests/core/shelf_builders.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace holdfast::test {
namespace {

TEST(RollCondition, WithoutReadingsARollAgesByTheCalendar) {
    Shelf shelf;
    const RollCondition condition = shelf.reckon();
    EXPECT_EQ(condition.calendarAge, Days{10});
    EXPECT_NEAR(condition.effectiveDays, 10.5, 1e-9);
    EXPECT_NEAR(condition.unrecordedDays, 10.5, 1e-9);
    EXPECT_EQ(condition.useBy, nov(1) + Days{365});
    EXPECT_TRUE(condition.useByIsEstimate);
    // Nobody knows how warm it will be there.
    EXPECT_LT(condition.useByRange->first, nov(1) + Days{300});
    EXPECT_GT(condition.useByRange->last, nov(1) + Days{430});
    EXPECT_TRUE(condition.readingIsStale);
    EXPECT_FALSE(condition.latest);
}

TEST(RollCondition, TheUseByDoesNotWanderWithTheHour) {
    Shelf shelf;
    for (int minute = 0; minute < 24 * 60; minute += 7) {
        shelf.now.instant = at(nov(11), 0, minute);
        EXPECT_EQ(shelf.reckon().useBy, nov(1) + Days{365}) << minute;
    }
}

TEST(RollCondition, AWarmShelfBringsTheUseByForward) {
    Shelf shelf;
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)), at(nov(11), 12), 32, 45));
    const RollCondition condition = shelf.reckon();
    EXPECT_NEAR(condition.effectiveDays, 21, 1e-9);
    EXPECT_NEAR(condition.unrecordedDays, 0, 1e-9);
    // 344 days are left: 172 from noon of the 11th if it stays as warm as in these ten days, which nobody
    // knows.
    EXPECT_LT(*condition.useBy, nov(1) + Days{365});
    EXPECT_GT(*condition.useBy, nov(11) + Days{172});
    EXPECT_LT(condition.useByRange->first, nov(11) + Days{172});
    EXPECT_GT(condition.useByRange->last, *condition.useBy);
    EXPECT_FALSE(condition.readingIsStale);
}

TEST(RollCondition, ACoolShelfNeverOutlastsThePrintedDate) {
    Shelf shelf;
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)), at(nov(11), 12), 12, 45));
    EXPECT_GT(*shelf.reckon().useBy, nov(1) + Days{365});
    shelf.roll.printedUseBy = localDate(2027, 10, 1);
    EXPECT_EQ(shelf.reckon().useBy, localDate(2027, 10, 1));
}

TEST(RollCondition, AFilmWithoutALimitHasNoUseByUnlessOneIsPrinted) {
    Shelf shelf;
    shelf.film.shelfLife.reset();
    EXPECT_FALSE(shelf.reckon().useBy);
    EXPECT_FALSE(shelf.reckon().isPastAge(nov(11)));
    EXPECT_FALSE(shelf.reckon().daysLeft(nov(11)));
    shelf.roll.printedUseBy = nov(5);
    EXPECT_TRUE(shelf.reckon().isPastAge(nov(11)));
    EXPECT_EQ(shelf.reckon().daysLeft(nov(11)), Days{-6});
}

TEST(RollCondition, AgeRunsFromTheMadeDayWhereItIsKnown) {
    Shelf shelf;
    shelf.roll.madeOn = nov(1) - Days{100};
    EXPECT_EQ(shelf.reckon().calendarAge, Days{110});
    EXPECT_NEAR(shelf.reckon().effectiveDays, 110.5, 1e-9);
    EXPECT_EQ(shelf.reckon().useBy, nov(1) + Days{265});
}

TEST(RollCondition, BeforeItsFirstStayNothingIsRecorded) {
    Shelf shelf;
    shelf.roll.madeOn = nov(1) - Days{100};
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)) - Hours{24 * 200}, at(nov(11), 12), 32, 80));
    const RollCondition condition = shelf.reckon();
    EXPECT_NEAR(condition.unrecordedDays, 100, 1e-9);
    EXPECT_NEAR(condition.effectiveDays, 100 + 21, 1e-9);
    EXPECT_NEAR(condition.humidityHoursOutside, 10.5 * 24, 1e-9);
}

TEST(RollCondition, ARollTakesItsPlacesWithIt) {
    Shelf shelf;
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)), at(nov(11), 12), 32, 45));
    shelf.climate[kCellar] = shared(steady(at(nov(1)), at(nov(11), 12), 12, 80));
    shelf.roll.stays = {{kUpperShelf, at(nov(1))}, {kCellar, at(nov(5))}, {kUpperShelf, at(nov(9))}};
    const RollCondition condition = shelf.reckon();
    EXPECT_NEAR(condition.effectiveDays, 2 * (4 + 2.5) + 0.5 * 4, 1e-9);
    EXPECT_NEAR(condition.humidityHoursOutside, 4 * 24, 1e-9);
    EXPECT_EQ(condition.latest->humidity, 45_rh);
    EXPECT_FALSE(condition.humidityOutsideNow);
}

TEST(RollCondition, StaysThatAClockSetBackMadeOverlapCountOnce) {
    Shelf shelf;
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)), at(nov(11), 12), 32, 45));
    shelf.climate[kCellar] = shared(steady(at(nov(1)), at(nov(11), 12), 22, 45));
    // Moved on the 8th by a clock that ran ahead, and back on what was then the 4th.
    shelf.roll.stays = {{kUpperShelf, at(nov(1))}, {kCellar, at(nov(8))}, {kUpperShelf, at(nov(4))}};
    EXPECT_NEAR(shelf.reckon().effectiveDays, 2 * 10.5, 1e-9);
    // A move that lies in the future waits for its time.
    shelf.roll.stays = {{kUpperShelf, at(nov(1))}, {kCellar, at(nov(20))}};
    EXPECT_NEAR(shelf.reckon().effectiveDays, 2 * 10.5, 1e-9);
}

// A whole year of the place, and always the same: what comes is known.
Shelf onASteadyShelf(double temperature) {
    Shelf shelf;
    shelf.climate[kUpperShelf] =
        shared(steady(at(nov(11)) - Hours{24 * 400}, at(nov(11), 12), temperature, 45));
    return shelf;
}

TEST(RollCondition, AYearOfSteadyReadingsLeavesNoRange) {
    const RollCondition condition = onASteadyShelf(32).reckon();
    EXPECT_EQ(condition.useBy, nov(11) + Days{172});
    EXPECT_TRUE(condition.useByIsEstimate);
    const auto width =
        condition.useByRange ? condition.useByRange->last - condition.useByRange->first : Days{0};
    EXPECT_LE(width, Days{1});
}

TEST(RollCondition, AllReadingsOfThePlaceCountNotOnlyThoseSinceTheRollCame) {
    Shelf shelf;
    shelf.roll.receivedOn = nov(8);
    shelf.roll.stays = {{kUpperShelf, at(nov(8))}};
    ClimateSeries series = steady(at(nov(11), 12) - Hours{24 * 90}, at(nov(9)), 20, 45);
    const ClimateSeries hot = steady(at(nov(9), 1), at(nov(11), 12), 33, 45);
    series.insert(series.end(), hot.begin(), hot.end());
    shelf.climate[kUpperShelf] = shared(series);
    const RollCondition condition = shelf.reckon();
    // 360 days and more at 20 °C are 414 by the calendar; at 33 °C they would be 168.
    EXPECT_GT(*condition.useBy, nov(8) + Days{365});
    EXPECT_LT(*condition.useBy, nov(8) + Days{425});
}

TEST(RollCondition, WhatIsToComeIsThatOfThePlaceItIsInNow) {
    Shelf shelf = onASteadyShelf(32);
    shelf.climate[kCellar] = shared(steady(at(nov(11)) - Hours{24 * 400}, at(nov(11), 12), 12, 45));
    shelf.roll.stays.push_back({kCellar, at(nov(11), 12)});
    EXPECT_EQ(shelf.reckon().useBy, nov(11) + Days{688}) << "344 days at half a day a day, from noon";
    shelf.roll.stays.back().place = {77}; // nobody read anything there
    EXPECT_EQ(shelf.reckon().useBy, nov(11) + Days{344});
    EXPECT_GT(shelf.reckon().useByRange->last - shelf.reckon().useByRange->first, Days{150});
}

TEST(RollCondition, APrintedDayIsAFactUnlessWarmthMayComeBeforeIt) {
    Shelf shelf = onASteadyShelf(20);
    shelf.roll.printedUseBy = nov(30);
    EXPECT_EQ(shelf.reckon().useBy, nov(30));
    EXPECT_FALSE(shelf.reckon().useByIsEstimate);
    EXPECT_FALSE(shelf.reckon().useByRange);
    // Nothing recorded: 365 days are expected, and a warm year would be over before the printed day.
    shelf.climate.clear();
    shelf.roll.printedUseBy = nov(1) + Days{340};
    const RollCondition open = shelf.reckon();
    EXPECT_EQ(open.useBy, nov(1) + Days{340});
    EXPECT_TRUE(open.useByIsEstimate);
    EXPECT_EQ(open.useByRange->last, nov(1) + Days{340});
    EXPECT_LT(open.useByRange->first, nov(1) + Days{300});
}

TEST(RollCondition, TheDayOfATestStripIsAFact) {
    Shelf shelf;
    shelf.film.shelfLife = Days{5};
    EXPECT_TRUE(shelf.reckon().useByIsEstimate) << "past, by warmth";
    EXPECT_FALSE(shelf.reckon().useByRange) << "and by the readings";
    shelf.roll.testStrips = {{at(nov(11), 9), true, Days{30}, ""}};
    EXPECT_TRUE(shelf.reckon().extendedByStrip);
    EXPECT_FALSE(shelf.reckon().useByIsEstimate);
    EXPECT_FALSE(shelf.reckon().useByRange);
}

TEST(RollCondition, APrintedDayOfAFilmWithoutAShelfLifeIsAFact) {
    Shelf shelf;
    shelf.film.shelfLife.reset();
    shelf.roll.printedUseBy = nov(30);
    EXPECT_EQ(shelf.reckon().useBy, nov(30));
    EXPECT_FALSE(shelf.reckon().useByIsEstimate);
    EXPECT_FALSE(shelf.reckon().useByRange);
}

TEST(RollCondition, APassedStripMovesTheUseByOnEvenPastThePrintedDate) {
    Shelf shelf;
    shelf.roll.printedUseBy = nov(5);
    ASSERT_TRUE(shelf.reckon().isPastAge(nov(11)));
    shelf.roll.testStrips = {{at(nov(11), 9), true, Days{30}, ""}};
    const RollCondition condition = shelf.reckon();
    EXPECT_EQ(condition.useBy, nov(11) + Days{30});
    EXPECT_TRUE(condition.extendedByStrip);
    EXPECT_FALSE(condition.isPastAge(nov(11)));
}

TEST(RollCondition, AStripThatAddsNothingChangesNothing) {
    Shelf shelf;
    shelf.roll.testStrips = {{at(nov(11), 9), true, Days{30}, ""}};
    EXPECT_EQ(shelf.reckon().useBy, nov(1) + Days{365});
    EXPECT_FALSE(shelf.reckon().extendedByStrip);
}

TEST(RollCondition, AFailedStripExtendsNothingAndEndsAnEarlierExtension) {
    Shelf shelf;
    shelf.roll.printedUseBy = nov(5);
    shelf.roll.testStrips = {{at(nov(11), 9), false, Days{30}, "edges lift"}};
    EXPECT_EQ(shelf.reckon().useBy, nov(5));
    shelf.roll.testStrips = {{at(nov(6), 9), true, Days{30}, ""},
                             {at(nov(11), 9), false, Days{30}, "edges lift"}};
    EXPECT_TRUE(shelf.reckon().isPastAge(nov(11)));
}

TEST(RollCondition, TheLastStripDecidesWhetherTheRollFailed) {
    Shelf shelf;
    EXPECT_FALSE(shelf.reckon().stripFailed);
    shelf.roll.testStrips = {{at(nov(6), 9), true, Days{30}, ""}, {at(nov(9), 9), false, Days{0}, ""}};
    EXPECT_TRUE(shelf.reckon().stripFailed);
    EXPECT_FALSE(shelf.reckon().mayBeUsed(shelf.film, nov(11)));
    shelf.roll.testStrips.push_back({at(nov(10), 9), true, Days{30}, ""});
    EXPECT_FALSE(shelf.reckon().stripFailed);
    EXPECT_TRUE(shelf.reckon().mayBeUsed(shelf.film, nov(11)));
}

TEST(RollCondition, ExposureCountsSinceTheLastPassedStrip) {
    Shelf shelf;
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)), at(nov(11), 12), 35, 60));
    EXPECT_NEAR(shelf.reckon().humidityHoursOutside, 10.5 * 24, 1e-9);
    EXPECT_NEAR(shelf.reckon().temperatureHoursOutside, 10.5 * 24, 1e-9);
    shelf.roll.testStrips = {{at(nov(10), 12), true, Days{30}, ""}, {at(nov(11)), false, Days{30}, ""}};
    EXPECT_NEAR(shelf.reckon().humidityHoursOutside, 24, 1e-9);
}

TEST(RollCondition, ExposureBeforeItWasReceivedIsSomebodyElses) {
    Shelf shelf;
    shelf.roll.madeOn = nov(1) - Days{30};
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)) - Hours{500}, at(nov(11), 12), 20, 60));
    shelf.roll.stays = {{kUpperShelf, at(nov(1)) - Hours{400}}};
    EXPECT_NEAR(shelf.reckon().humidityHoursOutside, 10.5 * 24, 1e-9);
}

TEST(RollCondition, BadlyKeptIsOutsideNowOrTooLongOutside) {
    Shelf shelf;
    ClimateSeries series = steady(at(nov(1)), at(nov(4)), 20, 60);
    const ClimateSeries dry = steady(at(nov(4), 1), at(nov(11), 12), 20, 45);
    series.insert(series.end(), dry.begin(), dry.end());
    shelf.climate[kUpperShelf] = shared(series);
    // 72 hours and the 40 minutes in which it fell from 60 to 50 %.
    const RollCondition condition = shelf.reckon();
    EXPECT_NEAR(condition.hoursOutside(), 72 + 40.0 / 60, 1e-9);
    EXPECT_FALSE(condition.isOutsideNow());
    EXPECT_TRUE(condition.isBadlyKept(shelf.film));
    shelf.film.storage.allowedOutside = Hours{73};
    EXPECT_FALSE(shelf.reckon().isBadlyKept(shelf.film));

    series.push_back({at(nov(11), 12), 20_C, 51_rh});
    series.erase(series.end() - 2);
    shelf.climate[kUpperShelf] = shared(series);
    EXPECT_TRUE(shelf.reckon().humidityOutsideNow);
    EXPECT_TRUE(shelf.reckon().isBadlyKept(shelf.film));
}

TEST(RollCondition, ReadingsGoStale) {
    Shelf shelf;
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)), at(nov(10), 12), 20, 45));
    EXPECT_FALSE(shelf.reckon().readingIsStale);
    shelf.now.instant += Seconds{1};
    EXPECT_TRUE(shelf.reckon().readingIsStale);
}

TEST(RollCondition, ReadingsOfTheFutureDoNotCountYet) {
    Shelf shelf;
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)), at(nov(30)), 32, 45));
    const RollCondition condition = shelf.reckon();
    EXPECT_NEAR(condition.effectiveDays, 21, 1e-9);
    EXPECT_EQ(condition.latest->at, at(nov(11), 12));
    EXPECT_FALSE(condition.readingIsStale);
}

TEST(RollCondition, OnlyReadingsOfTheFutureAreNoneAtAll) {
    Shelf shelf;
    shelf.climate[kUpperShelf] = shared(steady(at(nov(20)), at(nov(30)), 32, 45));
    const RollCondition condition = shelf.reckon();
    EXPECT_FALSE(condition.latest);
    EXPECT_TRUE(condition.readingIsStale);
    EXPECT_NEAR(condition.effectiveDays, 10.5, 1e-9);
}

TEST(RollCondition, ARollOfTheFutureHasNoAgeYet) {
    Shelf shelf;
    shelf.roll.receivedOn = nov(20);
    shelf.roll.stays = {{kUpperShelf, at(nov(20))}};
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)), at(nov(11), 12), 32, 60));
    const RollCondition condition = shelf.reckon();
    EXPECT_EQ(condition.calendarAge, Days{0});
    EXPECT_DOUBLE_EQ(condition.effectiveDays, 0);
    EXPECT_DOUBLE_EQ(condition.hoursOutside(), 0);
    // Its place was read, and warm.
    EXPECT_GT(*condition.useBy, nov(20) + Days{183});
    EXPECT_LT(*condition.useBy, nov(20) + Days{365});
}

TEST(RollCondition, ARollWithoutAPlaceSaysSo) {
    Shelf shelf;
    shelf.roll.stays.clear();
    const RollCondition condition = shelf.reckon();
    EXPECT_FALSE(condition.hasPlace);
    EXPECT_TRUE(condition.readingIsStale);
    EXPECT_NEAR(condition.effectiveDays, 10.5, 1e-9);
}

TEST(RollCondition, TheDayIsTheWorkshopsNotThatOfGreenwich) {
    Shelf shelf;
    // 23:30 UTC on the 10th is half past one on the 11th two hours to the east.
    shelf.now = {.instant = at(nov(10), 23, 30), .offset = Hours{2}};
    EXPECT_EQ(shelf.reckon().calendarAge, Days{10});
    EXPECT_NEAR(shelf.reckon().effectiveDays, 10 + 1.5 / 24, 1e-9);
    EXPECT_EQ(shelf.reckon().useBy, nov(1) + Days{365});
}

TEST(RollCondition, DeepColdDoesNotRunOffTheCalendar) {
    Shelf shelf;
    shelf.film.shelfLife = Days{3650};
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)), at(nov(11), 12), -60, 45));
    EXPECT_LE(*shelf.reckon().useBy, nov(11) + Days{36'501});
    shelf.film.ageing.q10 = 1e9;
    EXPECT_TRUE(shelf.reckon().useBy);
}

TEST(RollCondition, AModelThatIsChangedIsReckonedAnew) {
    Shelf shelf;
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)), at(nov(11), 12), 32, 45));
    ClimateReckoner reckoner;
    const auto effective = [&] {
        ShopFacts facts;
        facts.films = Roster<Film>{{shelf.film}};
        facts.rolls = Roster<FilmRoll>{{shelf.roll}};
        return reckoner.reckon(facts, shelf.climate, shelf.now).at(shelf.roll.id).effectiveDays;
    };
    EXPECT_NEAR(effective(), 21, 1e-9);
    shelf.film.ageing.q10 = 3;
    EXPECT_NEAR(effective(), 31.5, 1e-9);
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)), at(nov(11), 12), 22, 45));
    EXPECT_NEAR(effective(), 10.5, 1e-9);
    shelf.climate.clear();
    EXPECT_NEAR(effective(), 10.5, 1e-9);
}

TEST(RollCondition, KeptSumsLetGoOfReadingsThatWereReplaced) {
    Shelf shelf;
    auto series = shared(steady(at(nov(1)), at(nov(11), 12), 32, 45));
    shelf.climate[kUpperShelf] = series;
    ShopFacts facts;
    facts.films = Roster<Film>{{shelf.film}};
    facts.rolls = Roster<FilmRoll>{{shelf.roll}};
    ClimateReckoner reckoner;
    reckoner.reckon(facts, shelf.climate, shelf.now);
    const std::weak_ptr<const ClimateSeries> old = series;
    series.reset();
    shelf.climate[kUpperShelf] = shared(steady(at(nov(1)), at(nov(11), 12), 20, 45));
    EXPECT_FALSE(old.expired()); // the sums still lean on it
    reckoner.reckon(facts, shelf.climate, shelf.now);
    EXPECT_TRUE(old.expired());
}

TEST(RollCondition, KeptSumsReckonWhatFreshOnesDo) {
    std::mt19937 random{23};
    ClimateSeries series;
    for (int hour = 0; hour < 2000; ++hour)
        series.push_back({at(nov(1)) + Hours{hour},
                          {15.0 + static_cast<double>(random() % 200) / 10},
                          {20.0 + static_cast<double>(random() % 500) / 10}});
    Shelf shelf;
    shelf.climate[kUpperShelf] = shared(series);
    ShopFacts facts;
    facts.films = Roster<Film>{{shelf.film}};
    facts.rolls = Roster<FilmRoll>{{shelf.roll}};
    ClimateReckoner kept;
    for (int day = 0; day < 70; day += 3) {
        shelf.now = noonOf(nov(1) + Days{day});
        const RollCondition one = kept.reckon(facts, shelf.climate, shelf.now).at(shelf.roll.id);
        const RollCondition fresh = shelf.reckon();
        EXPECT_DOUBLE_EQ(one.effectiveDays, fresh.effectiveDays);
        EXPECT_DOUBLE_EQ(one.hoursOutside(), fresh.hoursOutside());
        EXPECT_EQ(one.useBy, fresh.useBy);
    }
}

TEST(RollCondition, OnlyRollsThatWereReckonedAreFound) {
    RollCondition known;
    known.roll = {7};
    const RollConditions conditions{{{known.roll, known}}};
    EXPECT_NE(conditions.find({7}), nullptr);
    EXPECT_EQ(conditions.find({8}), nullptr);
}

// Sums that go on from those of a shorter series are those of the whole.
TEST(ClimateReckoner, ReadingsThatComeOnTopAreSummedAsIfAllWereNew) {
    Shelf shelf;
    ClimateReckoner going;
    ClimateSeries series;
    ShopFacts facts;
    facts.settings = shelf.settings;
    facts.films = Roster<Film>{{shelf.film}};
    facts.rolls = Roster<FilmRoll>{{shelf.roll}};
    for (int reading = 0; reading < 60; ++reading) {
        const double wave = 8.0 * (reading % 7) - 20;
        // Now and then a gap that is too long, and one reading that comes between.
        const Instant when = at(nov(1)) + Hours{4 * reading + (reading > 30 ? 80 : 0)};
        series.push_back({when, {22 + wave}, {45 + wave}});
        if (reading == 40)
            series.insert(series.begin() + 3, {series[2].at + Minutes{5}, {50}, {90}});
        shelf.climate[kUpperShelf] = shared(series);
        const RollCondition sums = going.reckon(facts, shelf.climate, shelf.now).at(shelf.roll.id);
        const RollCondition anew = shelf.reckon();
        EXPECT_DOUBLE_EQ(sums.effectiveDays, anew.effectiveDays) << reading;
        EXPECT_EQ(sums.useBy, anew.useBy);
        EXPECT_EQ(sums.useByRange, anew.useByRange);
        EXPECT_DOUBLE_EQ(sums.humidityHoursOutside, anew.humidityHoursOutside);
        EXPECT_DOUBLE_EQ(sums.temperatureHoursOutside, anew.temperatureHoursOutside);
        EXPECT_DOUBLE_EQ(sums.bothHoursOutside, anew.bothHoursOutside);
    }
}

TEST(ClimateReckoner, IsAskedBeforeEachRollAndStopsWhenNoMoreAreWanted) {
    ShopFacts facts;
    facts.films = Roster<Film>{{aShelfFilm()}};
    facts.rolls = Roster<FilmRoll>{{aRoll(1), aRoll(2), aRoll(3), aRoll(4)}};
    std::vector<double> shares;
    const auto reckoned = [&](double upTo) {
        shares.clear();
        const RollConditions conditions =
            ClimateReckoner{}.reckon(facts, {}, noonOf(nov(11)), [&](double share) {
                shares.push_back(share);
                return share < upTo;
            });
        return std::ranges::distance(conditions.begin(), conditions.end());
    };
    EXPECT_EQ(reckoned(2), 4);
    EXPECT_EQ(shares, (std::vector<double>{0, 0.25, 0.5, 0.75}));
    EXPECT_EQ(reckoned(0.5), 2);
}

TEST(FilmRoll, IsLabelledAsOnItsCore) {
    EXPECT_EQ(aRoll(9).label(), "R-09");
    EXPECT_EQ(aRoll(17).label(), "R-17");
    EXPECT_EQ(aRoll(104).label(), "R-104");
}

TEST(FilmRoll, StandsWhereItWasPutLast) {
    FilmRoll roll = aRoll();
    roll.stays.push_back({kCellar, at(nov(5))});
    EXPECT_EQ(roll.placeNow(), kCellar);
    roll.stays.clear();
    EXPECT_FALSE(roll.placeNow());
}

TEST(Film, ARecipeIsCheckedFieldByField) {
    Recipe recipe;
    recipe.temperature = 150_C;
    recipe.dwell = Seconds{12};
    EXPECT_TRUE(checkRecipe(recipe).ok());
    const auto refusedField = [&](auto&& change) {
        Recipe wrong = recipe;
        change(wrong);
        const Result<Done> checked = checkRecipe(wrong);
        return checked.ok() ? std::string{} : checked.error().field;
    };
    EXPECT_EQ(refusedField([](Recipe& wrong) { wrong.temperature = 59_C; }), "temperature");
    EXPECT_EQ(refusedField([](Recipe& wrong) { wrong.temperature = 221_C; }), "temperature");
    EXPECT_EQ(refusedField([](Recipe& wrong) { wrong.temperature = {std::nan("")}; }), "temperature");
    EXPECT_EQ(refusedField([](Recipe& wrong) { wrong.dwell = Seconds{0}; }), "dwell");
    EXPECT_EQ(refusedField([](Recipe& wrong) { wrong.dwell = Seconds{121}; }), "dwell");
    EXPECT_EQ(refusedField([](Recipe& wrong) { wrong.preheat = Seconds{-1}; }), "preheat");
    EXPECT_EQ(refusedField([](Recipe& wrong) { wrong.coolBeforePeel = Seconds{601}; }), "coolBeforePeel");
    EXPECT_EQ(refusedField([](Recipe& wrong) { wrong.finishBack = Seconds{601}; }), "finishBack");
    EXPECT_EQ(refusedField([](Recipe& wrong) { wrong.tack = Seconds{600}; }), "");
}

} // namespace
} // namespace holdfast::test
