// SPDX-License-Identifier: GPL-3.0-or-later
// The demo's shop, over some of its days: what is reckoned from it is the same on every machine and after
// every change that means to change nothing. Whether it is right is tested elsewhere; where a result was
// meant to become another, the new number goes in.

#include "core/cutting/nest.h"
#include "core/orders/film_waste.h"
#include "core/shop/care_of_garment.h"
#include "core/shop/films_to_cut.h"
#include "core/shop/garment_cost.h"
#include "core/shop/press_first.h"
#include "core/shop/promise_again.h"
#include "core/shop/promised_load.h"
#include "core/shop/walk.h"
#include "db/demo/demo_shop.h"
#include "db/journal/shop.h"
#include "db/tables/facts.h"
#include "tests/core/drawn_sum.h"
#include "tests/db/journal_fixture.h"

#include <gtest/gtest.h>

#include <functional>
#include <stdexcept>

namespace holdfast::db {
namespace {

using test::DrawnSum;
using namespace std::chrono_literals;

// One demo's shop at several moments: an hour, some days and some months on, with nothing done meanwhile.
class DemoMoments {
public:
    explicit DemoMoments(LocalDate on) {
        const auto path = m_folder / "demo.holdfast";
        if (const auto made = makeDemoShop(path, on); !made.ok())
            throw std::runtime_error(made.error().message.english());
        const Now morning = demoNow(on);
        auto opened = Shop::open(path, [instant = morning.instant] { return instant; });
        if (!opened.ok())
            throw std::runtime_error(opened.error().message.english());
        Connection& connection = (*opened)->connection();
        ClimateReckoner reckoner;
        for (const auto later : {0h, 1h, 9h, 30h, 24h * 9, 24h * 75}) {
            Now now = morning;
            now.instant += later;
            m_shops.push_back(reckonShop(loadOpenFacts(connection), loadClimate(connection),
                                         loadRecentUse(connection, now.instant), reckoner, now,
                                         PlanSearch{}));
        }
    }

    std::uint64_t sumOf(const std::function<void(DrawnSum&, const ReckonedShop&)>& add) const {
        DrawnSum sum;
        for (const auto& shop : m_shops)
            add(sum, *shop);
        return sum.value();
    }

private:
    testing::TemporaryFolder m_folder;
    std::vector<std::shared_ptr<const ReckonedShop>> m_shops;
};

const DemoMoments& moments() {
    static const DemoMoments made{localDate(2026, 11, 11)};
    return made;
}

void addDay(DrawnSum& sum, const std::optional<LocalDate>& day) {
    sum << (day ? isoDate(*day) : std::string{"-"});
}

void addHolds(DrawnSum& sum, const ReckonedShop& shop) {
    for (const auto& [garment, assessment] : shop.assessments) {
        sum << garment.value << static_cast<int>(assessment.stage) << assessment.isHeld()
            << assessment.progress.finished;
        for (const Finding& finding : assessment.findings)
            sum << ruleCode(finding.rule) << static_cast<int>(finding.grade) << finding.what << finding.why
                << finding.frees.size() << finding.isWaived;
        for (const RouteStep& step : assessment.route.steps)
            sum << step.key << step.title << step.detail << step.attended.count() << step.platen.count()
                << step.waiting.count() << (step.temperature ? step.temperature->value : 0.0);
        sum << assessment.route.restAfter.count();
    }
}

void addShelf(DrawnSum& sum, const ReckonedShop& shop) {
    for (const auto& [roll, condition] : shop.conditions) {
        sum << roll.value << condition.calendarAge.count() << condition.effectiveDays
            << condition.unrecordedDays << condition.humidityHoursOutside << condition.temperatureHoursOutside
            << condition.bothHoursOutside << condition.isOutsideNow() << condition.readingIsStale
            << condition.stripFailed;
        addDay(sum, condition.useBy);
        if (condition.useByRange) {
            addDay(sum, condition.useByRange->first);
            addDay(sum, condition.useByRange->last);
        }
    }
    for (const RollForecast& forecast : shop.allotment.useFirst)
        sum << forecast.roll.value << forecast.left.value << forecast.allotted.value
            << forecast.usualUse.value << forecast.expectedWaste.value << forecast.wasteLow.value
            << forecast.wasteHigh.value << forecast.decals.size() << forecast.pressEarly.size()
            << forecast.mayBeUsed;
    for (const auto& [decal, roll] : shop.allotment.rollOf)
        sum << decal.value << roll.value;
    for (const auto& [decal, why] : shop.allotment.lack)
        sum << decal.value << why;
    for (const auto& [decal, roll] : shop.allotment.rollIfConfirmed)
        sum << decal.value << roll.value;
}

void addOrders(DrawnSum& sum, const ReckonedShop& shop) {
    for (const Garment& garment : shop.facts.garments) {
        const Cost cost = garmentCost(shop.facts, garment, shop.of(garment.id).route);
        sum << cost.blank.minor << cost.film.minor << cost.work.minor << cost.overhead.minor;
        const CareCard card = careOf(shop, garment);
        sum << card.firstWash;
        for (const CareLine& line : card.lines)
            sum << line.words;
    }
    const Promised load = promisedLoad(shop);
    for (const PromisedWork& work : load.work)
        sum << work.due.time_since_epoch().count() << work.work.count();
    for (const Order& order : shop.facts.orders) {
        const auto promise = promiseAgain(shop, order.id);
        sum << (promise.ok() ? promise->why : promise.error().message);
        if (promise.ok())
            sum << promise->readyAt.time_since_epoch().count() << promise->path.size();
    }
}

void addCutting(DrawnSum& sum, const ReckonedShop& shop) {
    for (const FilmToCut& film : filmsToCut(shop)) {
        sum << film.film.value << film.waiting.size();
        for (const auto& [decal, why] : film.notYet)
            sum << decal.value << why;
        for (const RollOffer& offer : film.rolls)
            sum << offer.roll.value << offer.mayBeUsed << offer.reason;
        const auto nests = nestFilm(shop, film, usualWish(shop, film));
        if (!nests.ok()) {
            sum << nests.error().message.english();
            continue;
        }
        for (const auto& [decal, why] : nests->lack)
            sum << decal.value << why;
        for (const Nest& nest : nests->nests) {
            const FilmShares shares = nest.shares();
            sum << nest.length.value << nest.leastLength.value << nest.offcuts.size() << shares.decals
                << shares.waste;
            for (const NestedDecal& decal : nest.decals)
                sum << decal.decal.value << decal.lies.along.value << decal.lies.across.value
                    << decal.isTurned;
        }
    }
    for (const RollForecast& forecast : shop.allotment.useFirst) {
        const PressedFirst first = pressedFirst(shop, forecast.roll, forecast.pressEarly);
        sum << first.length.value << first.fits << first.slipped.size() << first.notReady.size();
        for (const RollOutlook& roll : first.rolls)
            sum << roll.roll.value << roll.leftAfter.value << roll.wasteBefore.value << roll.wasteAfter.value;
    }
}

void addWalk(DrawnSum& sum, const ReckonedShop& shop) {
    const Walk walk = walkOf(shop);
    for (const WalkRun& run : walk.runs)
        sum << run.temperature.value << run.change.count() << run.begins.time_since_epoch().count()
            << run.ends.time_since_epoch().count() << run.entries.size() << run.pressedCount();
    for (const RackEntry& entry : walk.rack)
        sum << entry.garment.value << entry.until.time_since_epoch().count() << entry.after;
    for (const AsideEntry& entry : walk.aside)
        sum << entry.garment.value << static_cast<int>(entry.stage) << entry.isHeld << entry.what
            << entry.why;
    sum << walk.pressed << walk.total << walk.ends.time_since_epoch().count();
}

TEST(DemoSameResults, HoldsAndRoutes) {
    EXPECT_EQ(moments().sumOf(addHolds), 17641181554180536480u);
}

TEST(DemoSameResults, RollsAndWhatIsAllotted) {
    EXPECT_EQ(moments().sumOf(addShelf), 11695621372854423091u);
}

TEST(DemoSameResults, CostsCareAndPromises) {
    EXPECT_EQ(moments().sumOf(addOrders), 7881570473275388698u);
}

TEST(DemoSameResults, WhatIsCutAndPressedFirst) {
    EXPECT_EQ(moments().sumOf(addCutting), 1978703919333778154u);
}

TEST(DemoSameResults, TheWalkOfTheDay) {
    EXPECT_EQ(moments().sumOf(addWalk), 14983591000587643297u);
}

} // namespace
} // namespace holdfast::db
