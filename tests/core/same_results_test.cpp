// SPDX-License-Identifier: GPL-3.0-or-later
// What is computed from the same input is the same on every machine and after every change that means to
// change nothing: drawn input of many kinds, and one number for all that comes of it. Whether a result is
// right is tested elsewhere; this tells that it has become another. Where that was meant, the new number goes
// in.

#include "core/cutting/cut_file.h"
#include "core/film/ageing_outlook.h"
#include "core/film/climate_log.h"
#include "core/film/usual_use.h"
#include "core/garments/garment_drawings.h"
#include "core/garments/garment_scale.h"
#include "core/orders/decal_on_cloth.h"
#include "core/quality/control_chart.h"
#include "core/stock/demand.h"
#include "core/trade/limits.h"
#include "tests/core/drawn_sum.h"
#include "tests/core/promise_builders.h"
#include "tests/core/shelf_builders.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <string>
#include <vector>

namespace holdfast::test {
namespace {

// ── logs ──

struct LogForm {
    char separator = ',';
    bool hasHeader = true;
    bool isFahrenheit = false;
    bool hasCommas = false; // in numbers
    int dates = 0;
    bool isApart = false; // date and clock in columns of their own
    bool hasHumidity = true;
};

std::string dateIn(const LogForm& form, LocalDate date) {
    const std::chrono::year_month_day day{date};
    const std::string d = std::to_string(static_cast<unsigned>(day.day()));
    const std::string m = std::to_string(static_cast<unsigned>(day.month()));
    const std::string y = std::to_string(static_cast<int>(day.year()));
    switch (form.dates) {
    case 0:
        return isoDate(date);
    case 1:
        return d + "/" + m + "/" + y;
    case 2:
        return m + "/" + d + "/" + y;
    default:
        return d + "." + m + "." + y;
    }
}

std::string numberIn(const LogForm& form, std::int64_t tenths) {
    std::string text =
        std::to_string(tenths / 10) + (form.hasCommas ? "," : ".") + std::to_string(std::abs(tenths) % 10);
    return tenths < 0 && tenths > -10 ? "-" + text : text;
}

std::string drawnLog(Draw& draw, const LogForm& form) {
    const std::string between(1, form.separator);
    std::string text;
    if (form.hasHeader)
        text = (form.isApart ? "Date" + between + "Clock" : std::string{"Time"}) + between +
               (form.isFahrenheit ? "Temp °F" : "Temp °C") + (form.hasHumidity ? between + "RH" : "") + "\n";
    LocalTime time = LocalTime{localDate(2026, 1, 1)} + Days{draw.between(0, 300)};
    for (std::int64_t line = draw.between(1, 60); line > 0; --line) {
        time += Minutes{draw.oneIn(15) ? draw.between(0, 3000) : 30};
        std::int64_t tenths = draw.between(-50, 320);
        if (form.isFahrenheit)
            tenths = tenths * 9 / 5 + 320;
        std::string humidity = draw.oneIn(12) ? std::string{} : numberIn(form, draw.between(200, 800));
        text += dateIn(form, dateOf(time)) + (form.isApart ? between : " ") + clockTime(time) + between +
                (draw.oneIn(25) ? "n/a" : numberIn(form, draw.oneIn(40) ? 2000 : tenths)) +
                (form.hasHumidity ? between + humidity : "") + (draw.oneIn(30) ? "\r\n\n" : "\n");
    }
    return text;
}

void addLog(DrawnSum& sum, const Result<ClimateLog>& log) {
    if (!log.ok()) {
        sum << log.error().message.english();
        return;
    }
    for (const ClimateReading& reading : log->readings)
        sum << std::int64_t{reading.at.time_since_epoch().count()} << reading.temperature.value
            << (reading.hasHumidity ? reading.humidity.percent : -1.0);
    for (const Sentence& words : log->skipped)
        sum << words;
    sum << static_cast<std::int64_t>(log->duplicates) << static_cast<std::int64_t>(log->gaps)
        << static_cast<std::int64_t>(log->withoutHumidity) << static_cast<std::int64_t>(log->skippedCount)
        << std::int64_t{log->wasFahrenheit}
        << std::int64_t{log->dateOrder ? static_cast<int>(*log->dateOrder) : -1};
    if (log->doubtfulDate)
        sum << log->doubtfulDate->written << isoDate(log->doubtfulDate->dayFirst)
            << isoDate(log->doubtfulDate->monthFirst);
}

std::uint64_t sumOfLogs() {
    Draw draw{31};
    DrawnSum sum;
    for (int log = 0; log < 400; ++log) {
        LogForm form;
        form.separator = std::array{',', ';', '\t'}[static_cast<std::size_t>(draw.between(0, 2))];
        form.hasHeader = !draw.oneIn(3);
        form.isFahrenheit = form.hasHeader && draw.oneIn(4);
        form.hasCommas = form.separator != ',' && draw.oneIn(2);
        form.dates = static_cast<int>(draw.between(0, 3));
        form.isApart = form.hasHeader && draw.oneIn(4);
        form.hasHumidity = !draw.oneIn(6);
        std::string text = drawnLog(draw, form);
        if (draw.oneIn(5))
            text[static_cast<std::size_t>(draw.between(0, static_cast<std::int64_t>(text.size()) - 1))] =
                static_cast<char>(draw.between(1, 255));
        addLog(sum, readClimateLog(text, alwaysAhead(Hours{1})));
        if (draw.oneIn(6))
            addLog(sum, readClimateLog(text, alwaysAhead(Hours{1}), {}, DateOrder::MonthFirst));
    }
    return sum.value();
}

TEST(SameResults, LogsOfManyForms) {
    EXPECT_EQ(sumOfLogs(), 4758054431241433927u);
}

// ── film ──

std::uint64_t sumOfUse() {
    Draw draw{32};
    DrawnSum sum;
    for (int shelf = 0; shelf < 60; ++shelf) {
        const std::int64_t scale =
            draw.oneIn(3) ? 10'000 : 1; // so large that a thousandth of the spread shows
        const UseRate rate{static_cast<double>(scale * draw.between(0, 900)),
                           static_cast<double>(scale * draw.between(0, 400))};
        std::vector<RollInTurn> rolls;
        Days days{0};
        for (std::int64_t roll = draw.between(1, 4); roll > 0; --roll) {
            days += Days{draw.between(0, 60)};
            RollInTurn one{days, Millimetres{scale * draw.between(0, 800)},
                           Millimetres{scale * draw.between(0, 6000)}, !draw.oneIn(6)};
            if (draw.oneIn(2)) {
                one.daysAtLeast = days - Days{draw.between(0, days.count() / 2)};
                one.daysAtMost = days + Days{draw.between(0, 90)};
            }
            rolls.push_back(one);
        }
        for (const ExpectedUse& use : expectedUseInTurn(rate, rolls))
            sum << use.expected.value << use.low.value << use.high.value;
        const ExpectedUse alone = expectedUse(rate, days, rolls.front().allotted, rolls.back().free);
        sum << alone.expected.value << alone.low.value << alone.high.value;
    }
    return sum.value();
}

TEST(SameResults, UseOfRollsInTurn) {
    EXPECT_EQ(sumOfUse(), 17976813860311925933u);
}

std::uint64_t sumOfOutlooks() {
    Draw draw{33};
    DrawnSum sum;
    for (int place = 0; place < 40; ++place) {
        const AgeingModel model{1.5 + 2 * draw.share(), {15 + 10 * draw.share()}};
        ClimateSeries series;
        Instant time = at(localDate(2025, 1, 1)) + Days{draw.between(0, 300)};
        for (std::int64_t reading = draw.between(2, 700); reading > 0; --reading) {
            time += draw.oneIn(60) ? std::chrono::seconds{Days{draw.between(1, 30)}}
                                   : std::chrono::seconds{Hours{24}};
            series.push_back({time, {static_cast<double>(draw.between(40, 320)) / 10}, {45}});
        }
        const Now now{.instant = time + Hours{draw.between(0, 400)}, .offset = std::chrono::seconds{0}};
        const AgeingOutlook outlook{AgeingCurve{series, model}, series.front().at, model, now};
        for (const double aged : {0.0, 5.0, 60.0, 200.0, 700.0, 9000.0}) {
            const DaysAhead ahead = outlook.daysUntil(aged);
            sum << std::llround(ahead.fast * 1000) << std::llround(ahead.usual * 1000)
                << std::llround(ahead.slow * 1000);
        }
    }
    return sum.value();
}

TEST(SameResults, OutlooksOfManyPlaces) {
    EXPECT_EQ(sumOfOutlooks(), 10985423617231040491u);
}

// ── garments ──

std::uint64_t sumOfGarments() {
    Draw draw{34};
    DrawnSum sum;
    for (const GarmentDrawing& drawing : garmentDrawings()) {
        const GarmentMeasures& measures = garmentMeasures(drawing.outline);
        sum << measures.body.left << measures.body.top << measures.body.right << measures.body.bottom
            << measures.seam.x << measures.seam.y;
        for (const std::string size : {"XS", "S", "M", "L", "XL", "2XL", "3XL", "one size", "6–12 months",
                                       "0-3 m", "3-4 y", "12 years", "18 m", "9 y"})
            sum << millimetresPerUnit(drawing.outline, size);
        BlankStyle style;
        style.outline = drawing.outline;
        style.obstacles = {{Obstacle::Seams, WayRound::Pillow}, {Obstacle::ThickHem, WayRound::Pillow}};
        for (int spot = 0; spot < 12; ++spot) {
            DecalSpot one;
            one.placement = static_cast<Placement>(draw.between(0, 4));
            one.below = Millimetres{draw.between(-40, 500)};
            one.aside = Millimetres{draw.between(-250, 250)};
            one.width = Millimetres{draw.between(10, 320)};
            one.height = Millimetres{draw.between(10, 320)};
            const std::string size =
                std::array{"S", "M", "3XL", "3-4 y"}[static_cast<std::size_t>(draw.between(0, 3))];
            sum << offClothWords(style, size, one);
            DecalSpot other = one;
            other.below = one.below + Millimetres{draw.between(-100, 100)};
            const std::array others{other};
            if (const auto better = betterSpot(style, size, one, others))
                sum << better->below.value << better->aside.value << better->width.value
                    << better->height.value << wayToSpot(one, *better);
        }
    }
    return sum.value();
}

TEST(SameResults, SpotsOnAllGarments) {
    EXPECT_EQ(sumOfGarments(), 538759224533818690u);
}

// ── counts ──

std::uint64_t sumOfCounts() {
    Draw draw{35};
    DrawnSum sum;
    for (int round = 0; round < 300; ++round) {
        const double mean = static_cast<double>(draw.between(1, 400)) / 10;
        const Demand demand{mean, mean * (draw.oneIn(2) ? 1 : 1 + 4 * draw.share())};
        const double under = static_cast<double>(draw.between(1, 3000));
        const double over = static_cast<double>(draw.between(1, 3000));
        const Brought best = bestQuantity(demand, under, over);
        sum << best.quantity << std::llround(best.shortage * 1e6) << std::llround(best.leftover * 1e6);
        const Brought any = broughtOf(demand, draw.between(0, 60));
        sum << std::llround(any.shortage * 1e6) << std::llround(any.leftover * 1e6);
        const double ratio = 0.02 + 0.95 * draw.share();
        const Demand normal{mean, mean + 1};
        sum << std::llround(normalQuantity(normal, ratio) * 1e6)
            << std::llround(normalShortage(normal, mean * 2 * draw.share()) * 1e6);
        std::vector<CountSample> samples;
        for (std::int64_t sample = draw.between(1, 14); sample > 0; --sample) {
            const std::int64_t of = draw.between(1, 120);
            samples.push_back({draw.between(0, std::min<std::int64_t>(of, 9)), of});
        }
        for (const ChartedSample& sample : shareChart(samples).samples)
            sum << std::llround(sample.low * 1e7) << std::llround(sample.high * 1e7)
                << std::int64_t{sample.isOut()} << std::int64_t{sample.isCountedOut};
    }
    return sum.value();
}

TEST(SameResults, DemandsAndCharts) {
    EXPECT_EQ(sumOfCounts(), 5333435461242607736u);
}

} // namespace
} // namespace holdfast::test

namespace holdfast::fair_days {
namespace {

std::uint64_t sumOfPromises() {
    test::Draw draw{36};
    test::DrawnSum sum;
    for (int round = 0; round < 500; ++round) {
        FairShop shop;
        ShopSettings& settings = shop.facts.settings;
        settings.planMarginPercent = static_cast<int>(draw.between(0, 30));
        settings.restBeforeWash = Hours{draw.between(0, 72)};
        settings.dryingTakes = Hours{draw.between(0, 30)};
        settings.blankLeadTime = Days{draw.between(0, 9)};
        settings.filmLeadTime = Days{draw.between(0, 9)};
        settings.cutTakes = Minutes{draw.between(0, 30)};
        settings.weedingTakes = Seconds{draw.between(0, 90)};
        for (auto& day : settings.week) {
            day.reset();
            if (!draw.oneIn(4))
                day = OpeningHours{Minutes{draw.between(8 * 60, 12 * 60)},
                                   Minutes{draw.between(13 * 60, 19 * 60)}};
        }
        for (int closed = 0; closed < 3; ++closed)
            settings.closedDays.push_back(kTuesday + Days{draw.between(0, 20)});
        for (std::int64_t given = draw.between(0, 9); given > 0; --given)
            shop.promised.work.push_back({atTheTable().local() + Minutes{draw.between(-3000, 12 * 24 * 60)},
                                          Seconds{draw.between(60, 20'000)}});
        for (std::int64_t wash = draw.between(0, 3); wash > 0; --wash)
            shop.promised.washes.push_back(
                {atTheTable().local() + Minutes{draw.between(-300, 3000)}, Grams{draw.between(100, 9000)}});
        shop.promised.longestGarment = Seconds{draw.between(0, 2000)};
        if (draw.oneIn(3))
            shop.promised.film[0].useBy = kTuesday + Days{draw.between(-2, 9)};
        std::vector<AskedGarment> asked;
        for (std::int64_t garment = draw.between(1, 7); garment > 0; --garment) {
            AskedGarment one;
            one.style = kTee;
            one.size = "M";
            one.colour = ColourId{draw.between(1, 3)};
            one.pressTime = Seconds{draw.between(0, 9000)};
            one.isOnPress = draw.oneIn(9);
            for (std::int64_t decal = draw.between(0, 2); decal > 0; --decal)
                one.decals.push_back({draw.oneIn(6) ? FilmId{9} : kDusk, Millimetres{draw.between(20, 400)},
                                      Millimetres{draw.between(20, 400)}});
            asked.push_back(one);
        }
        const auto promise = promiseFor(asked, shop.facts, shop.promised, atTheTable());
        if (!promise.ok()) {
            sum << promise.error().message.english();
            continue;
        }
        sum << std::int64_t{promise->readyAt.time_since_epoch().count()} << promise->why;
        for (const PromiseStep& step : promise->path)
            sum << static_cast<std::int64_t>(step.stage) << std::int64_t{step.at.time_since_epoch().count()}
                << step.words << step.when;
    }
    return sum.value();
}

TEST(SameResults, PromisesOfManyShops) {
    EXPECT_EQ(sumOfPromises(), 13628545181979715209u);
}

} // namespace
} // namespace holdfast::fair_days
