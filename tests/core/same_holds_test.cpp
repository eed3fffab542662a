// SPDX-License-Identifier: GPL-3.0-or-later
// What the rules say of garments whose measures lie on the limits and just beyond them: one number for all
// that comes of it (see same_results_test.cpp).

#include "core/holds/cutting_holds.h"
#include "core/shop/settled_day.h"
#include "tests/core/builders.h"
#include "tests/core/drawn_sum.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

// Mostly the usual, else something about a limit.
std::int64_t near(Draw& draw, std::int64_t usual, std::int64_t limit) {
    return draw.oneIn(3) ? limit + draw.between(-1, 1) : usual;
}

Celsius nearTo(Draw& draw, std::int64_t usual, std::int64_t limit) {
    return {static_cast<double>(near(draw, usual, limit))};
}

void drawBlank(Draw& draw, GarmentBuilder& garment) {
    garment.label([&](FabricLabel& label) {
        const auto share = static_cast<int>(near(draw, 20, 5));
        label.fibres = {{static_cast<Fibre>(draw.between(0, 9)), share}, {Fibre::Cotton, 100 - share}};
        label.stretch = static_cast<Stretch>(draw.between(0, 2));
        label.coating = draw.oneIn(4) ? Coating::WaterRepellent : Coating::None;
        label.highestSafe.reset();
        if (draw.oneIn(2))
            label.highestSafe = nearTo(draw, 200, 150);
        label.care.ironCelsius = static_cast<int>(near(draw, 200, 150));
        if (draw.oneIn(5))
            label.care.ironCelsius = 0;
    });
    garment.style([&](BlankStyle& style) {
        style.forChild = draw.oneIn(6);
        style.sleepwear = draw.oneIn(6);
        style.hasCords = draw.oneIn(6);
        if (draw.oneIn(6))
            style.notPrewashedBecause = "coated";
    });
    garment.lot([&](BlankLot& lot) {
        lot.unitsLeft = draw.between(-1, 2);
        if (draw.oneIn(3))
            lot.shrinkage =
                Shrinkage{Millimetres{1000 * draw.between(0, 1)}, Millimetres{near(draw, 990, 960)},
                          Millimetres{500 * draw.between(0, 2)}, Millimetres{near(draw, 500, 480)}};
    });
    garment.load([&](WashLoad& load) {
        load.softener = draw.oneIn(8);
        load.dryerSheet = draw.oneIn(8);
        load.startedAt = hoursAgo(near(draw, 40, 12));
        if (draw.oneIn(4))
            load.dryAt.reset();
    });
    if (draw.oneIn(9))
        garment.onUnwashedTee();
    else if (draw.oneIn(9))
        garment.onZipHoodie(draw.oneIn(2) ? std::nullopt
                                          : std::optional{static_cast<WayRound>(draw.between(0, 2))});
    if (draw.oneIn(12))
        garment.onUnreadLabel();
}

void drawFilm(Draw& draw, GarmentBuilder& garment) {
    garment.film([&](Film& film) {
        film.follows = static_cast<Stretch>(draw.between(0, 2));
        film.gripsCoated = draw.oneIn(2);
        film.mayLieUnder = !draw.oneIn(4);
        if (draw.oneIn(3))
            film.notFor = {static_cast<Fibre>(draw.between(0, 9))};
        if (draw.oneIn(5))
            film.recipe->confirmedBy.clear();
        film.recipe->temperature = nearTo(draw, 150, 155);
        if (draw.oneIn(12))
            film.recipe.reset();
    });
    garment.withOtherFilm([&](Film& film) {
        film.mayLieOver = !draw.oneIn(4);
        film.recipe->temperature = nearTo(draw, 150, 160);
    });
    garment.condition([&](RollCondition& condition) {
        condition.useBy = theMoment().today() + Days{near(draw, 60, 0)};
        condition.useByIsEstimate = draw.oneIn(2);
        condition.extendedByStrip = draw.oneIn(6);
        condition.humidityHoursOutside = static_cast<double>(near(draw, 0, 72));
        condition.temperatureHoursOutside = static_cast<double>(near(draw, 0, 3));
        condition.bothHoursOutside = draw.oneIn(4) ? 1 : 0;
        condition.readingIsStale = draw.oneIn(8);
        condition.hasPlace = !draw.oneIn(9);
        condition.stripFailed = draw.oneIn(8);
        if (draw.oneIn(8))
            condition.latestHumidity.reset();
        if (draw.oneIn(8)) {
            condition.latest.reset();
            condition.latestHumidity.reset();
        }
        condition.humidityOutsideNow = condition.latestHumidity && draw.oneIn(8);
        condition.temperatureOutsideNow = condition.latest && draw.oneIn(8);
    });
    if (draw.oneIn(4))
        garment.roll([&](FilmRoll& roll) {
            roll.testStrips = {{daysAgo(draw.between(0, 3)), draw.oneIn(2), Days{30}, {}}};
        });
}

void drawOrder(Draw& draw, GarmentBuilder& garment) {
    for (std::int64_t decal = draw.between(0, 2); decal > 0; --decal)
        garment.withDecal([&](Decal& one) {
            one.film = draw.oneIn(2) ? kFilm : kOtherFilm;
            one.layer = static_cast<int>(draw.between(1, 3));
            one.placement = static_cast<Placement>(draw.between(0, 4));
            one.below = Millimetres{near(draw, 100, 355)};
            one.width = Millimetres{near(draw, 60, 380)};
            one.height = Millimetres{near(draw, 60, 380)};
            if (draw.oneIn(3))
                one.content = Wording{"Otter Quay", draw.oneIn(2) ? Face::Plain : Face::BookSerif};
            if (draw.oneIn(3))
                one.height = Millimetres{draw.between(4, 40)};
            if (draw.oneIn(4))
                one.confirmedBy.clear();
        });
    garment.order([&](Order& order) {
        order.total = Money{2650};
        order.paid = Money{near(draw, 2650, 650)};
        order.state = draw.oneIn(5) ? OrderState::Quoted : OrderState::Confirmed;
    });
    if (draw.oneIn(4))
        garment.uncut();
    else if (draw.oneIn(9))
        garment.lacking("No roll is wide enough.");
    if (draw.oneIn(5))
        garment.waived(static_cast<Rule>(draw.between(0, 31)));
    if (draw.oneIn(4))
        garment.doneThrough(draw.oneIn(2) ? "preheat-1" : "press-1");
}

TestShop drawnShop(Draw& draw) {
    GarmentBuilder garment = aGarment();
    drawBlank(draw, garment);
    drawFilm(draw, garment);
    drawOrder(draw, garment);
    ShopBuilder builder = aShop();
    builder.settings([&](ShopSettings& settings) {
        settings.depositPercent = draw.oneIn(2) ? 25 : 0;
        settings.depositHolds = draw.oneIn(2);
    });
    builder.check([&](PressCheck& check) {
        check.at = daysAgo(near(draw, 5, 30)) + Hours{draw.between(-1, 1)};
        check.set = {static_cast<double>(near(draw, 150, 151))};
        check.readings = {nearTo(draw, 150, 153), nearTo(draw, 150, 147), nearTo(draw, 150, 144), {150}};
    });
    if (draw.oneIn(12))
        builder.withoutCheck();
    return builder.with(garment).build();
}

std::uint64_t sumOfHolds() {
    Draw draw{97};
    DrawnSum sum;
    for (int shop = 0; shop < 1200; ++shop) {
        const TestShop made = drawnShop(draw);
        const Assessment assessment = assess(made.around(), made.garment());
        sum << static_cast<int>(assessment.stage) << assessment.isHeld();
        for (const Finding& finding : assessment.findings) {
            sum << ruleCode(finding.rule) << static_cast<int>(finding.grade) << finding.what << finding.why
                << finding.isWaived << leavesDayTrue(finding.rule);
            for (const FreeingAct act : finding.frees)
                sum << freeingWords(act);
        }
        const Finding* unsettles = whatUnsettlesDay(assessment.findings);
        sum << (unsettles ? unsettledWords(*unsettles) : Sentence{});
        for (const Decal& decal : made.garment().decals)
            sum << (stopsTheKnife(assessment.findings, decal) != nullptr);
    }
    return sum.value();
}

TEST(SameHolds, GarmentsOnTheLimitsAndBeyond) {
    EXPECT_EQ(sumOfHolds(), 1454292416813381051u);
}

} // namespace
} // namespace holdfast::test
