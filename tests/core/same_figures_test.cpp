// SPDX-License-Identifier: GPL-3.0-or-later
// What is learned from a shop's past, of drawn counts small enough to tie: one number for all that comes of
// it (see same_results_test.cpp).

#include "core/care/care_card.h"
#include "core/facts/placement.h"
#include "core/fairs/fair_sales.h"
#include "core/garments/placement_presets.h"
#include "core/orders/cutting_time.h"
#include "core/orders/film_waste.h"
#include "core/orders/lettering_strokes.h"
#include "core/orders/order_draft.h"
#include "core/orders/price.h"
#include "core/orders/promise_hours.h"
#include "core/quality/exact_test.h"
#include "core/quality/figures.h"
#include "core/stock/what_to_bring.h"
#include "tests/core/builders.h"
#include "tests/core/drawn_sum.h"
#include "tests/core/made_garments.h"

#include <gtest/gtest.h>

#include <array>
#include <string>

namespace holdfast::test {
namespace {

// ── quality ──

std::vector<MadeGarment> drawnPast(Draw& draw) {
    const auto named = [&](const std::string& what) {
        return what + " " + std::to_string(draw.between(1, 3));
    };
    std::vector<MadeGarment> past;
    for (std::int64_t garment = draw.between(0, 140); garment > 0; --garment) {
        MadeGarment one;
        one.on = theMoment().today() - Days{draw.between(0, 200)};
        one.style = named("Style");
        one.washing = draw.oneIn(3) ? "not washed" : "washed";
        one.films = {named("Film")};
        if (draw.oneIn(3))
            one.films.push_back(named("Film"));
        one.rolls = {named("Roll")};
        if (!draw.oneIn(4))
            one.presses = {named("Press")};
        if (draw.oneIn(one.style == "Style 1" ? 3 : 15))
            one.fault = FirstFault{one.on + Days{draw.between(0, 12)}, Fault::Cracked};
        past.push_back(one);
    }
    return past;
}

std::uint64_t sumOfPasts() {
    Draw draw{81};
    DrawnSum sum;
    const auto add = [&](const FaultShare& share) {
        sum << share.name << share.garments << share.faults << share.interval.low << share.interval.high
            << share.chance << share.isJudged << share.isMoreThanChance;
    };
    for (int shop = 0; shop < 60; ++shop) {
        const auto past = drawnPast(draw);
        add(faultsOfAll(past));
        for (const auto& [by, shares] : faultTables(past)) {
            sum << static_cast<int>(by);
            for (const FaultShare& share : shares)
                add(share);
        }
        const Survival days = daysWithoutFault(past, theMoment().today());
        for (const SurvivalStep& step : days.steps)
            sum << step.at << step.watched << step.faults << step.share << step.standardError << step.low
                << step.high;
        sum << days.watchedUntil << days.median().value_or(-1) << days.at(5).share << days.at(0).watched;
        const FaultMonths months = faultsByMonth(past);
        for (std::size_t month = 0; month < months.months.size(); ++month)
            sum << static_cast<unsigned>(months.months[month].month()) << months.samples[month].found
                << months.samples[month].of << months.chart.samples[month].low
                << months.chart.samples[month].high << months.chart.samples[month].isCountedOut;
    }
    return sum.value();
}

TEST(SameFigures, PastsOfManyShops) {
    EXPECT_EQ(sumOfPasts(), 3951039877586443596u);
}

std::uint64_t sumOfFewEvents() {
    Draw draw{82};
    DrawnSum sum;
    for (int table = 0; table < 1500; ++table) {
        sum << chanceOfAsMany(
            {draw.between(0, 6), draw.between(0, 9), draw.between(0, 6), draw.between(0, 9)});
        const std::int64_t of = draw.between(0, 20);
        sum << chanceOfMoreThan(draw.between(0, of), of, static_cast<double>(draw.between(0, 10)) / 10);
        std::vector<Watched> cases;
        for (std::int64_t each = draw.between(0, 8); each > 0; --each)
            cases.push_back({static_cast<double>(draw.between(0, 4)), draw.oneIn(2)});
        const Survival survival = survivalOf(cases);
        for (const SurvivalStep& step : survival.steps)
            sum << step.at << step.share << step.low << step.high;
        sum << survival.watchedUntil << survival.median().value_or(-1);
        std::vector<PromiseGiven> promises;
        for (std::int64_t promise = draw.between(0, 4); promise > 0; --promise)
            promises.push_back({theMoment().local(),
                                draw.oneIn(4)
                                    ? std::nullopt
                                    : std::optional{theMoment().local() + Minutes{draw.between(-1, 1)}}});
        const PromisesKept kept = promisesKept(promises);
        sum << kept.given << kept.kept << (kept.interval ? kept.interval->high : -1.0);
    }
    return sum.value();
}

TEST(SameFigures, FewEventsAndPromises) {
    EXPECT_EQ(sumOfFewEvents(), 3388069090808022332u);
}

// ── fairs ──

struct DrawnFairs {
    ShopFacts facts;
    std::vector<Fair> fairs;
    std::vector<FairOrder> orders;
};

DrawnFairs drawnFairs(Draw& draw) {
    DrawnFairs drawn;
    BlankStyle tee = aTee();
    tee.colours = {{ColourId{1}, "Moss", 0}, {ColourId{2}, "Fog", 0}};
    drawn.facts.styles = Roster{std::vector{tee}};
    drawn.facts.settings.keepingPercent = static_cast<int>(draw.between(0, 30));
    const auto kindOf = [&](auto& thing) {
        thing.style = kTee;
        thing.size = std::array{"S", "M", "L"}[static_cast<std::size_t>(draw.between(0, 2))];
        thing.colour = ColourId{draw.between(1, 2)};
    };
    for (std::int64_t lot = draw.between(0, 4); lot > 0; --lot) {
        BlankLot one;
        one.id = BlankLotId{lot};
        kindOf(one);
        one.unitsLeft = draw.between(0, 4);
        drawn.facts.lots.add(one);
    }
    const auto dayAround = [&](std::int64_t back, std::int64_t on) {
        return theMoment().today() + Days{draw.between(-back, on)};
    };
    for (std::int64_t fair = draw.between(0, 5); fair > 0; --fair) {
        Fair one;
        one.id = FairId{fair};
        one.name = draw.oneIn(2) ? "Creek Fair" : "Quay Market";
        one.firstDay = dayAround(40, 6);
        one.lastDay = one.firstDay + Days{draw.between(0, 2)};
        one.hours = {Hours{draw.between(8, 9)}, Hours{draw.between(10, 16)}};
        one.stallCost = Money{draw.between(0, 9) * 500};
        if (draw.oneIn(3))
            one.worked = Hours{draw.between(1, 20)};
        drawn.fairs.push_back(one);
    }
    for (std::int64_t order = draw.between(0, 30); order > 0; --order) {
        FairOrder one{draw.oneIn(2)   ? "Creek Fair"
                      : draw.oneIn(2) ? "Quay Market"
                                      : "Old Hall",
                      dayAround(45, 0),
                      Money{draw.between(0, 4) * 500},
                      {}};
        for (std::int64_t garment = draw.between(0, 4); garment > 0; --garment) {
            SoldGarment sold;
            kindOf(sold);
            sold.price = Money{draw.between(18, 26) * 100};
            sold.cost = Cost{{450}, {draw.between(0, 300)}, {500}, {60}};
            one.garments.push_back(sold);
        }
        drawn.orders.push_back(one);
    }
    return drawn;
}

std::uint64_t sumOfFairs() {
    Draw draw{83};
    DrawnSum sum;
    const LocalDate today = theMoment().today();
    for (int year = 0; year < 250; ++year) {
        const DrawnFairs drawn = drawnFairs(draw);
        const LocalDate from = today - Days{draw.between(0, 40)};
        for (const Earned& earned : earnedAtFairs(drawn.orders, drawn.fairs, from, today))
            sum << earned.place << earned.days << earned.orders << earned.garments << earned.ordered.minor
                << earned.paid.minor << earned.left().minor << earned.leftAnHour().value_or(Money{-1}).minor;
        const Fair* next = nextFair(drawn.fairs, today);
        const Fair* there = fairOf(drawn.fairs, "Creek Fair", today);
        sum << (next ? next->id.value : 0) << (there ? there->id.value : 0);
        for (const std::string& name : fairsOfToday(drawn.fairs, today))
            sum << name;
        const FairDemand demand = fairDemand(drawn.orders, drawn.fairs, from, today);
        sum << demand.fairs << demand.days;
        const WhatToBring bring = whatToBring(demand, drawn.facts, draw.between(1, 3));
        for (const ToBring& kind : bring.kinds)
            sum << kind.name << kind.asked.mean << kind.asked.variance << kind.brought.quantity
                << kind.brought.shortage << kind.brought.leftover << kind.ready << kind.toWash
                << kind.missing();
        sum << bring.asked << bring.shortage << bring.leftover << bring.isFromFew();
    }
    return sum.value();
}

TEST(SameFigures, FairsOfManyYears) {
    EXPECT_EQ(sumOfFairs(), 16862199694085357981u);
}

// ── money and time ──

std::uint64_t sumOfPrices() {
    Draw draw{84};
    DrawnSum sum;
    Film film = aFilm();
    Film narrow = aFilm(kOtherFilm);
    for (int garment = 0; garment < 1500; ++garment) {
        ShopSettings settings;
        settings.marginPercent = static_cast<int>(draw.between(-5, 100));
        settings.pricePoint = Money{draw.oneIn(4) ? draw.between(0, 1) : 50};
        settings.depositPercent = static_cast<int>(draw.between(0, 110));
        settings.filmWastePercent = static_cast<int>(draw.between(0, 40));
        settings.minuteRate = Money{draw.between(0, 60)};
        settings.weedingTakes = Seconds{draw.between(-10, 90)};
        settings.cutTakes = Minutes{draw.between(0, 5)};
        settings.washerHolds = Grams{draw.between(0, 20) * 200};
        film.rollWidth = Millimetres{draw.between(0, 5) * 100};
        narrow.costPerMetre = Money{draw.between(-1, 12) * 100};
        BlankStyle style = aTee();
        style.cost = Money{draw.between(-5, 900)};
        style.weight = Grams{draw.between(0, 500)};
        if (draw.oneIn(3))
            style.notPrewashedBecause = "coated";
        std::vector<DecalOnFilm> decals;
        std::vector<DecalToCut> toCut;
        for (std::int64_t decal = draw.between(0, 3); decal > 0; --decal) {
            const Film& its = draw.oneIn(2) ? film : narrow;
            decals.push_back({&its, Millimetres{draw.between(0, 30) * 10},
                              Millimetres{draw.between(0, 30) * 10}, draw.oneIn(2)});
            toCut.push_back({its.id, decals.back().width, decals.back().height, decals.back().isLettering,
                             draw.oneIn(2)});
        }
        Route route;
        route.steps.resize(2);
        route.steps[0].attended = Seconds{draw.between(0, 300)};
        route.steps[1].platen = Seconds{draw.between(0, 30)};
        route.steps[1].waiting = Seconds{draw.between(0, 30)};
        const Seconds hands = handsFor(route, decals, style, settings);
        const Cost cost = costOf(style, decals, hands, settings);
        sum << hands.count() << cost.blank.minor << cost.film.minor << cost.work.minor << cost.overhead.minor
            << priceOf(cost, settings).minor << depositDue(Money{draw.between(-1, 5000)}, settings).minor
            << cuttingTime(toCut, settings).count();
        for (const DecalToCut& decal : toCut)
            sum << weedingTime(decal, settings).count();
        const FilmWaste waste =
            filmWaste({draw.between(10, 14), draw.between(0, 9) * 1000, draw.between(0, 9) * 1000}, settings);
        sum << waste.percent << waste.isMeasured;
    }
    return sum.value();
}

TEST(SameFigures, PricesOfManyGarments) {
    EXPECT_EQ(sumOfPrices(), 3481657304761511870u);
}

std::uint64_t sumOfHours() {
    Draw draw{85};
    DrawnSum sum;
    const auto halfHours = [&](std::int64_t least, std::int64_t most) {
        return Minutes{30 * draw.between(least, most)};
    };
    for (int shop = 0; shop < 1200; ++shop) {
        ShopSettings settings;
        for (auto& day : settings.week) {
            day.reset();
            if (!draw.oneIn(4))
                day = OpeningHours{halfHours(14, 24), halfHours(20, 50)};
        }
        if (draw.oneIn(3))
            settings.closedDays = {theMoment().today() + Days{draw.between(0, 5)}};
        const LocalTime from = LocalTime{theMoment().today()} + halfHours(0, 47);
        const auto hours = openHours(settings, from, Days{draw.between(0, 9)});
        std::vector<PromisedWork> load;
        for (std::int64_t work = draw.between(0, 4); work > 0; --work)
            load.push_back({from + halfHours(-4, 200), halfHours(1, 10)});
        const auto left = hoursLeft(hours, load);
        for (const auto* stretches : {&hours, &left})
            for (const OpenStretch& stretch : *stretches)
                sum << (stretch.begins - from).count() << (stretch.ends - from).count();
        const LocalTime begins = from + halfHours(0, 150);
        const Now now{Instant{from.time_since_epoch()}};
        sum << outsideHours(settings, now, now.toInstant(begins)).count()
            << (nextOpen(hours, begins).value_or(from) - from).count()
            << (doneBy(left, begins, halfHours(1, 30)).value_or(from) - from).count()
            << settings.isOpenOn(dateOf(begins));
    }
    return sum.value();
}

TEST(SameFigures, HoursOfManyShops) {
    EXPECT_EQ(sumOfHours(), 7432666530202668273u);
}

std::uint64_t sumOfCare() {
    Draw draw{86};
    DrawnSum sum;
    const auto limits = [&] {
        CareLimits one;
        one.washCelsius = std::array{0, 30, 40, 60, 95}[static_cast<std::size_t>(draw.between(0, 4))];
        one.agitation = static_cast<Agitation>(draw.between(0, 3));
        one.tumble = static_cast<Tumble>(draw.between(0, 2));
        one.ironCelsius = std::array{0, 110, 120, 150, 200}[static_cast<std::size_t>(draw.between(0, 4))];
        one.bleach = static_cast<Bleach>(draw.between(0, 2));
        one.cleaning = static_cast<Cleaning>(draw.between(0, 7));
        return one;
    };
    Film one = aFilm();
    Film other = aFilm(kOtherFilm);
    for (int garment = 0; garment < 1500; ++garment) {
        one.care = limits();
        other.care = limits();
        std::vector<const Film*> films;
        if (!draw.oneIn(4))
            films.push_back(&one);
        if (draw.oneIn(2))
            films.push_back(&other);
        const auto blank = draw.oneIn(4) ? std::nullopt : std::optional{limits()};
        const LocalTime washFrom = LocalTime{theMoment().today()} + Hours{draw.between(0, 40)};
        const CareCard card =
            careCard(blank, films, draw.oneIn(5) ? std::nullopt : std::optional{washFrom},
                     draw.oneIn(3) ? std::nullopt : std::optional{washFrom + Hours{draw.between(-1, 30)}});
        sum << card.firstWash;
        for (const CareLine& line : card.lines)
            sum << static_cast<int>(line.about) << line.words;
        for (const Sentence& words : careWords(stricter(one.care, other.care)))
            sum << words;
    }
    return sum.value();
}

TEST(SameFigures, CareOfManyGarments) {
    EXPECT_EQ(sumOfCare(), 6916978791260996509u);
}

std::uint64_t sumOfDrafts() {
    Draw draw{87};
    DrawnSum sum;
    ShopFacts facts;
    facts.styles = Roster{std::vector{aTee()}};
    facts.films = Roster{std::vector{aFilm()}};
    const Now now = theMoment();
    const auto letters = [&](std::int64_t most) {
        return std::string(static_cast<std::size_t>(draw.oneIn(4) ? most + draw.between(-1, 1) : 3), 'a');
    };
    const auto around = [&](std::int64_t usual, std::int64_t least, std::int64_t most) {
        return draw.oneIn(12) ? (draw.oneIn(2) ? least : most) + draw.between(-1, 1) : usual;
    };
    for (int order = 0; order < 3000; ++order) {
        OrderDraft draft;
        draft.customerName = letters(80);
        draft.customerPhone = letters(30);
        draft.note = letters(500);
        draft.isQuotation = draw.oneIn(5);
        draft.promised = now.local() + (draw.oneIn(6)   ? Minutes{draw.between(-1, 1)}
                                        : draw.oneIn(6) ? Minutes{Days{5 * 365 + draw.between(0, 3)}}
                                                        : Minutes{Days{3}});
        for (std::int64_t garment = draw.oneIn(40) ? draw.between(199, 201) : draw.between(0, 2); garment > 0;
             --garment) {
            GarmentDraft one;
            one.style = draw.oneIn(30) ? BlankStyleId{9} : kTee;
            one.size = draw.oneIn(30) ? "XL" : "M";
            one.colour = draw.oneIn(30) ? ColourId{9} : kMoss;
            one.price = Money{around(2000, 0, 100'000'000)};
            for (std::int64_t decal = around(1, 1, 12); decal > 0; --decal) {
                DecalDraft its;
                its.film = draw.oneIn(60) ? kOtherFilm : kFilm;
                its.width = Millimetres{around(100, 5, 2000)};
                its.height = Millimetres{around(100, 5, 2000)};
                its.layer = static_cast<int>(around(1, 1, 9));
                if (draw.oneIn(3))
                    its.content = Wording{letters(60)};
                else
                    its.content = Artwork{letters(60)};
                one.decals.push_back(its);
            }
            draft.garments.push_back(one);
        }
        draft.deposit = Money{around(0, 0, draft.total().minor)};
        const auto checked = checkDraft(draft, facts, now);
        sum << (checked.ok() ? std::string{} : checked.error().field + checked.error().message.english());
    }
    return sum.value();
}

TEST(SameFigures, OrdersAsTheyAreTyped) {
    EXPECT_EQ(sumOfDrafts(), 17025451512527019494u);
}

// ── what is read off sheets and labels ──

std::uint64_t sumOfChecks() {
    Draw draw{88};
    DrawnSum sum;
    const auto add = [&](const Result<Done>& checked) {
        sum << (checked.ok() ? std::string{} : checked.error().field + checked.error().message.english());
    };
    const auto around = [&](std::int64_t usual, std::int64_t least, std::int64_t most) {
        return draw.oneIn(6) ? (draw.oneIn(2) ? least : most) + draw.between(-1, 1) : usual;
    };
    for (int sheet = 0; sheet < 2000; ++sheet) {
        Recipe recipe;
        recipe.temperature = Celsius{static_cast<double>(around(150, 60, 220))};
        recipe.dwell = Seconds{around(12, 1, 120)};
        for (Seconds* seconds :
             {&recipe.preheat, &recipe.coolBeforePeel, &recipe.finishFront, &recipe.finishBack, &recipe.tack})
            *seconds = Seconds{around(5, 0, 600)};
        add(checkRecipe(recipe));
        std::vector<FibreShare> fibres;
        int left = 100;
        while (left > 0 && fibres.size() < 4) {
            const int percent = draw.oneIn(2) ? left : static_cast<int>(draw.between(0, left));
            fibres.push_back(
                {static_cast<Fibre>(draw.between(0, 9)), percent + static_cast<int>(draw.oneIn(9))});
            left -= percent;
        }
        add(checkFibres(fibres));
        sum << fibreText(fibres);
        std::string words;
        for (std::int64_t letter = draw.between(0, 4); letter > 0; --letter)
            words += std::array{"a", "g", "H", "d", "Q", "x", " ", "É", "ß", "7"}[static_cast<std::size_t>(
                draw.between(0, 9))];
        sum << strokeEstimate({words, draw.oneIn(2) ? Face::Plain : Face::BookSerif},
                              Millimetres{draw.between(5, 60)});
    }
    for (const char* outline :
         {"tee", "long-sleeve", "hoodie", "tote", "bib", "bodysuit", "cap", "apron", "sock"})
        for (int at = 0; at < 5; ++at)
            for (const char* size : {"XS", "S", "M", "L", "XL", "3XL", "one size", "3-6 months", "9 y"})
                if (const auto preset = presetFor(outline, static_cast<Placement>(at), size))
                    sum << preset->below.value << preset->aside.value << preset->wide.value
                        << preset->widest.value << preset->tallest.value;
    return sum.value();
}

TEST(SameFigures, SheetsLabelsAndPresets) {
    EXPECT_EQ(sumOfChecks(), 1895672078526674482u);
}

} // namespace
} // namespace holdfast::test
