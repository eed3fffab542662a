// SPDX-License-Identifier: GPL-3.0-or-later
// Film of round lengths on round rolls, so that decals just fit and rolls end exactly: one number for all
// that comes of it (see same_results_test.cpp).

#include "core/cutting/cut_file.h"
#include "core/cutting/nest.h"
#include "core/cutting/offcuts.h"
#include "core/cutting/strip.h"
#include "core/cutting/strip_packing.h"
#include "core/cutting/strip_pairs.h"
#include "core/film/air.h"
#include "core/film/climate_window.h"
#include "core/film/exposure.h"
#include "core/shop/films_to_cut.h"
#include "core/shop/press_first.h"
#include "tests/core/cutting_builders.h"
#include "tests/core/drawn_sum.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

Millimetres tens(Draw& draw, std::int64_t least, std::int64_t most) {
    return Millimetres{10 * draw.between(least, most)};
}

void addArea(DrawnSum& sum, const FilmArea& area) {
    sum << area.across.value << area.along.value << area.acrossSize.value << area.alongSize.value;
}

std::uint64_t sumOfOffcuts() {
    Draw draw{71};
    DrawnSum sum;
    for (int film = 0; film < 800; ++film) {
        const FilmArea whole{{}, {}, tens(draw, 1, 12), tens(draw, 1, 20)};
        std::vector<FilmArea> taken;
        for (std::int64_t area = draw.between(0, 6); area > 0; --area)
            taken.push_back({tens(draw, -2, 10), tens(draw, -2, 18), tens(draw, 1, 6), tens(draw, 1, 6)});
        for (const FilmArea& area :
             offcutsOf(whole, taken, tens(draw, 1, 4), static_cast<std::size_t>(draw.between(0, 4))))
            addArea(sum, area);
    }
    return sum.value();
}

TEST(SameFilmResults, Offcuts) {
    EXPECT_EQ(sumOfOffcuts(), 2996558639121325075u);
}

// ── strips ──

StripTask roundStrip(Draw& draw, std::int64_t mostPieces) {
    StripTask task;
    task.width = 10 * draw.between(3, 12);
    if (draw.oneIn(2))
        task.length = 10 * draw.between(3, 30);
    for (std::int64_t piece = draw.between(1, mostPieces); piece > 0; --piece)
        task.pieces.push_back({10 * draw.between(1, 8), 10 * draw.between(1, 8), draw.oneIn(2), {}});
    if (draw.oneIn(4))
        task.pieces.front().pinned = StripPlace{10 * draw.between(0, 3), 10 * draw.between(0, 24), false};
    return task;
}

std::uint64_t sumOfRoundStrips() {
    Draw draw{72};
    DrawnSum sum;
    for (int strip = 0; strip < 130; ++strip) {
        const StripTask task = roundStrip(draw, strip < 110 ? 9 : 30);
        if (const auto checked = checkTask(task); !checked.ok()) {
            sum << checked.error().message.english();
            continue;
        }
        sum << leastLength(task);
        StripSearch search;
        search.work = 3000;
        const StripPacking packing = packWithin(task, search).value();
        for (const auto& place : packing.places)
            sum << (place ? place->across : -1) << (place ? place->along : -1) << (place && place->isTurned);
        for (const std::int64_t more : {-10, 0, 10})
            sum << leastLength(task, packing.length + more);
        sum << packing.length << faultOf(task, packing).value_or("");
        StripPacking moved = packing;
        if (auto& place = moved.places.front())
            place->across += 10;
        sum << faultOf(task, moved).value_or("");
    }
    return sum.value();
}

// How the pieces of a few lie to one another: also how many ways were tried.
std::uint64_t sumOfPairs() {
    Draw draw{76};
    DrawnSum sum;
    for (int strip = 0; strip < 300; ++strip) {
        const StripTask task = roundStrip(draw, 7);
        std::vector<StripPairs::Piece> pieces;
        for (const StripPiece& piece : task.pieces) {
            pieces.push_back({{extentOf(piece, false)}, piece.pinned});
            if (piece.mayTurn && !piece.pinned)
                pieces.back().ways.push_back(extentOf(piece, true));
        }
        StripPairs pairs{task.width, std::move(pieces)};
        for (const std::int64_t end : {60, 100, 140, 200})
            sum << static_cast<int>(pairs.fitsBefore(end, 400)) << pairs.choices() << pairs.length();
    }
    return sum.value();
}

TEST(SameFilmResults, PairsOfRoundPieces) {
    EXPECT_EQ(sumOfPairs(), 12765336711984273926u);
}

TEST(SameFilmResults, StripsOfRoundPieces) {
    EXPECT_EQ(sumOfRoundStrips(), 1789331609109291413u);
}

// ── the shelf and the bench ──

CuttingBench roundBench(Draw& draw) {
    CuttingBench bench;
    bench.film.hasGrain = draw.oneIn(3);
    bench.film.rollWidth = tens(draw, 20, 30);
    bench.settings.decalGap = tens(draw, 0, 1);
    bench.settings.edgeMargin = tens(draw, 0, 1);
    for (auto& day : bench.settings.week)
        if (draw.oneIn(3))
            day.reset();
    for (int roll = 1; roll <= static_cast<int>(draw.between(0, 4)); ++roll) {
        const auto useBy =
            draw.oneIn(4) ? std::nullopt : std::optional{bench.now.today() + Days{draw.between(-1, 14)}};
        FilmRoll& made = bench.roll(roll, tens(draw, 0, 40), useBy);
        made.width = tens(draw, 18, 30);
        made.number = static_cast<int>(draw.between(1, 9));
        if (draw.oneIn(8))
            made.state = RollState::PutAway;
        RollCondition& condition = bench.condition(roll);
        condition.stripFailed = draw.oneIn(6);
        condition.humidityHoursOutside = static_cast<double>(draw.oneIn(4) ? 24 * draw.between(2, 4) : 0);
    }
    for (std::int64_t decal = draw.between(0, 14); decal > 0; --decal) {
        bench.waiting.decal(tens(draw, 3, 24), tens(draw, 3, 24));
        Order& order = bench.waiting.lastOrder();
        order.promised = LocalTime{bench.now.today() + Days{draw.between(0, 12)}} + Hours{15};
        if (draw.oneIn(5))
            order.state = OrderState::Quoted;
    }
    for (std::int64_t week = draw.between(0, 6); week > 0; --week)
        bench.recentUse[kShelfFilm].push_back(tens(draw, 0, 40));
    return bench;
}

void addAllotment(DrawnSum& sum, const Allotment& allotment) {
    for (const RollForecast& forecast : allotment.useFirst) {
        sum << forecast.roll.value << (forecast.daysLeft ? forecast.daysLeft->count() : -99)
            << forecast.left.value << forecast.allotted.value << forecast.usualUse.value
            << forecast.expectedWaste.value << forecast.wasteLow.value << forecast.wasteHigh.value
            << forecast.mayBeUsed;
        for (const DecalId decal : forecast.decals)
            sum << decal.value;
        for (const DecalId decal : forecast.pressEarly)
            sum << decal.value;
    }
    for (const auto& [decal, roll] : allotment.rollOf)
        sum << decal.value << roll.value;
    for (const auto& [decal, why] : allotment.lack)
        sum << decal.value << why;
    for (const auto& [decal, roll] : allotment.rollIfConfirmed)
        sum << decal.value << roll.value;
    for (const auto& [decal, why] : allotment.lackIfConfirmed)
        sum << decal.value << why;
}

std::uint64_t sumOfRoundShelves() {
    Draw draw{73};
    DrawnSum sum;
    for (int shelf = 0; shelf < 130; ++shelf) {
        const CuttingBench bench = roundBench(draw);
        const ReckonedShop shop = bench.shop();
        addAllotment(sum, shop.allotment);
        for (const RollForecast& forecast : shop.allotment.useFirst) {
            const PressedFirst first = pressedFirst(shop, forecast.roll, forecast.pressEarly);
            sum << first.length.value << first.fits << first.slipped.size() << first.notReady.size();
            for (const RollOutlook& roll : first.rolls)
                sum << roll.roll.value << roll.leftAfter.value << roll.wasteBefore.value
                    << roll.wasteAfter.value;
        }
    }
    return sum.value();
}

TEST(SameFilmResults, RoundDecalsOnRoundRolls) {
    EXPECT_EQ(sumOfRoundShelves(), 4766287725391281622u);
}

void addNest(DrawnSum& sum, const Nest& nest) {
    const FilmShares shares = nest.shares();
    sum << nest.roll.value << nest.length.value << nest.leastLength.value << shares.decals << shares.offcuts
        << shares.waste << nest.aboveLeast();
    for (const NestedDecal& decal : nest.decals) {
        sum << decal.decal.value << decal.isTurned << decal.isPinned;
        addArea(sum, decal.lies);
        addArea(sum, decal.box);
        const OutlinePoint point = onSheet(decal, {3, 7});
        sum << point.x << point.y;
    }
    for (const FilmArea& offcut : nest.offcuts)
        addArea(sum, offcut);
}

NestWish drawnWish(Draw& draw, const CuttingBench& bench, const FilmToCut& film) {
    NestWish wish = bench.usual();
    wish.gap = Millimetres{draw.between(0, 12)};
    wish.mayTurn = !draw.oneIn(3);
    for (const DecalId decal : film.waiting) {
        if (draw.oneIn(6))
            wish.leftOut.insert(decal);
        if (draw.oneIn(5))
            wish.pins[decal] = {tens(draw, -1, 12), tens(draw, -1, 20), draw.oneIn(3)};
    }
    return wish;
}

// Each decal's outline is a corner cut off and a curve.
std::string cutFileOf(Draw& draw, const Nest& nest) {
    std::vector<DecalOutline> outlines;
    for (const NestedDecal& decal : nest.decals) {
        DecalOutline outline{decal.decal, draw.oneIn(3) ? "4<&\">18" : "418-b", {}};
        outline.loops.push_back({{1.5, 0}, {{false, {}, {}, {9, 4}}, {true, {2, 7}, {1, 8}, {0.25, 6}}}});
        outlines.push_back(outline);
    }
    return cutFileSvg(nest, outlines, {!draw.oneIn(3), !draw.oneIn(3), "R-09"});
}

std::uint64_t sumOfRoundNests() {
    Draw draw{74};
    DrawnSum sum;
    for (int mat = 0; mat < 150; ++mat) {
        const CuttingBench bench = roundBench(draw);
        const ReckonedShop shop = bench.shop();
        for (const FilmToCut& film : filmsToCut(shop)) {
            for (const RollOffer& offer : film.rolls)
                sum << offer.roll.value << offer.mayBeUsed << offer.reason;
            const auto nests = nestFilm(shop, film, drawnWish(draw, bench, film));
            if (!nests.ok()) {
                sum << nests.error().message.english();
                continue;
            }
            for (const auto& [decal, why] : nests->lack)
                sum << decal.value << why;
            for (const Nest& nest : nests->nests) {
                addNest(sum, nest);
                sum << cutFileOf(draw, nest);
                if (nest.decals.empty())
                    continue;
                const DecalId moved = nest.decals.front().decal;
                const auto place =
                    nearestFreePlace(nest, moved, {tens(draw, -2, 25), tens(draw, -2, 40), draw.oneIn(3)});
                sum << place.has_value();
                if (place)
                    addNest(sum, withDecalAt(nest, moved, *place));
            }
        }
    }
    return sum.value();
}

TEST(SameFilmResults, RoundNestsAndDecalsMovedByHand) {
    EXPECT_EQ(sumOfRoundNests(), 15008207951675533100u);
}

// ── how it is kept ──

ClimateSeries roundSeries(Draw& draw) {
    ClimateSeries series;
    Instant time = at(localDate(2026, 3, 1));
    for (std::int64_t reading = draw.between(0, 30); reading > 0; --reading) {
        time += Hours{draw.oneIn(9) ? 72 + draw.between(-1, 1) : draw.between(1, 8)};
        series.push_back({time,
                          {static_cast<double>(5 * draw.between(0, 8))},
                          {static_cast<double>(10 * draw.between(2, 6))},
                          !draw.oneIn(7)});
    }
    return series;
}

std::uint64_t sumOfRoundClimates() {
    Draw draw{75};
    DrawnSum sum;
    const auto add = [&](const Ranged& ranged) { sum << ranged.low << ranged.high << ranged.mean; };
    for (int place = 0; place < 400; ++place) {
        const ClimateSeries series = roundSeries(draw);
        const Instant from = at(localDate(2026, 3, 1)) + Hours{4 * draw.between(-3, 30)};
        const Instant to = from + Hours{4 * draw.between(1, 40)};
        if (const auto figures = figuresOf(series, {from, to}, StorageLimits{})) {
            sum << figures->readings << figures->recordedHours << figures->humidHours
                << figures->unrecordedHours << figures->kinetic.value << figures->humidityOutside.below
                << figures->humidityOutside.above << figures->temperatureOutside.below
                << figures->temperatureOutside.above;
            add(figures->temperature);
            add(figures->humidity);
            add(figures->dewPoint);
            add(figures->absoluteHumidity);
        }
        for (const Measure measure : {Measure::Temperature, Measure::Humidity}) {
            const ExposureCurve curve = measure == Measure::Humidity ? ExposureCurve{series, measure, 30, 50}
                                                                     : ExposureCurve{series, measure, 10, 30};
            sum << curve.hoursBetween(from, to);
            for (const Spell& spell : curve.spellsBetween(from, to))
                sum << spell.hours() << spell.isAbove << (spell.begins - from).count();
        }
    }
    return sum.value();
}

TEST(SameFilmResults, RoundReadingsOfAPlace) {
    EXPECT_EQ(sumOfRoundClimates(), 1985525744069047853u);
}

ClimateSeries seriesFrom(Draw& draw, Instant begins) {
    ClimateSeries series;
    for (Instant time = begins; time < at(nov(11), 12);
         time += draw.oneIn(30) ? Hours{72 + draw.between(-1, 1)} : Hours{draw.between(4, 12)})
        series.push_back({time,
                          {static_cast<double>(5 * draw.between(1, 7))},
                          {static_cast<double>(10 * draw.between(2, 6))},
                          !draw.oneIn(9)});
    return series;
}

Shelf drawnShelf(Draw& draw) {
    Shelf shelf;
    const auto dayBefore = [&](std::int64_t most) { return nov(11) - Days{draw.between(0, most)}; };
    shelf.film.shelfLife.reset();
    if (!draw.oneIn(6))
        shelf.film.shelfLife = Days{draw.between(20, 120)};
    shelf.film.ageing = {draw.oneIn(2) ? 2.0 : 3.0, Celsius{draw.oneIn(2) ? 20.0 : 25.0}};
    shelf.roll.receivedOn = dayBefore(60);
    if (draw.oneIn(2))
        shelf.roll.madeOn = shelf.roll.receivedOn - Days{draw.between(0, 20)};
    if (draw.oneIn(3))
        shelf.roll.printedUseBy = nov(11) + Days{draw.between(-3, 60)};
    shelf.roll.stays.clear();
    Instant since = at(shelf.roll.receivedOn);
    for (std::int64_t stay = draw.between(0, 3); stay > 0; --stay) {
        shelf.roll.stays.push_back({draw.oneIn(2) ? kUpperShelf : kCellar, since});
        since = std::min(since + Days{draw.between(0, 20)}, shelf.now.instant);
    }
    Instant tested = at(shelf.roll.receivedOn, 12);
    for (std::int64_t strip = draw.between(0, 3); strip > 0; --strip) {
        tested = std::min(tested + Days{draw.between(0, 30)}, shelf.now.instant);
        shelf.roll.testStrips.push_back({tested, !draw.oneIn(3), Days{15 * draw.between(0, 3)}, {}});
    }
    for (const PlaceId place : {kUpperShelf, kCellar})
        if (!draw.oneIn(5))
            shelf.climate[place] = shared(seriesFrom(draw, at(dayBefore(80), 12)));
    shelf.settings.readingsGoStaleAfter = Hours{draw.between(0, 12)};
    return shelf;
}

std::uint64_t sumOfRollsKept() {
    Draw draw{77};
    DrawnSum sum;
    const auto add = [&](const std::optional<LocalDate>& day) { sum << (day ? isoDate(*day) : "-"); };
    for (int roll = 0; roll < 150; ++roll) {
        const Shelf shelf = drawnShelf(draw);
        const RollCondition condition = shelf.reckon();
        sum << condition.calendarAge.count() << condition.effectiveDays << condition.unrecordedDays
            << condition.useByIsEstimate << condition.extendedByStrip << condition.humidityHoursOutside
            << condition.temperatureHoursOutside << condition.bothHoursOutside << condition.humidityOutsideNow
            << condition.temperatureOutsideNow << condition.readingIsStale << condition.hasPlace
            << condition.stripFailed << condition.isBadlyKept(shelf.film)
            << condition.mayBeUsed(shelf.film, nov(11));
        add(condition.useBy);
        if (condition.useByRange) {
            add(condition.useByRange->first);
            add(condition.useByRange->last);
        }
        sum << (condition.latest ? condition.latest->temperature.value : -99.0)
            << (condition.latestHumidity ? condition.latestHumidity->percent : -99.0);
    }
    return sum.value();
}

TEST(SameFilmResults, RollsAndHowTheyWereKept) {
    EXPECT_EQ(sumOfRollsKept(), 9077088248821691412u);
}

} // namespace
} // namespace holdfast::test
