// SPDX-License-Identifier: GPL-3.0-or-later
// The day planned with more work than the window waits for: what the window shows in the end is the best plan
// there is, or one that is not worth changing for it.
#include "db/actions/press_actions.h"
#include "tests/app/shop_fixture.h"

#include <QSignalSpy>
#include <QTest>

namespace holdfast::app::test {

namespace {

constexpr int kPlanPatience = 20'000; // real milliseconds, for a busy machine without optimisation

class PlanBesideTest : public ShopFixture {
protected:
    // Eight garments for two presses, at four temperatures and with different counts.
    PlanRequest busyDay() {
        UsualShop usual = stockUsualShop();
        addPress("Cap press");
        usual.washed = wash(receiveBlanks(usual.style, "M", usual.moss, 6), 6);
        for (int garment = 0; garment < 8; ++garment) {
            usual.film = addFilm("Shade " + std::to_string(garment), [&](Film& film) {
                film.recipe->temperature = Celsius{130.0 + 10 * (garment % 4)};
                film.recipe->dwell = Seconds{8 + 3 * garment};
                film.recipe->coolBeforePeel = Seconds{20 + 25 * (garment % 3)};
            });
            const RollId roll = receiveRoll(usual.film, usual.place);
            const GarmentId taken = garmentsOf(takeOrder({aGarment(usual)}).id).front();
            cut(taken, roll);
        }
        const auto& shop = desk().shop();
        return planRequest(shop->facts, shop->assessments, shop->now);
    }

    static DayPlan withAllTime(PlanRequest request) {
        request.search.work = 10'000'000;
        return planDay(request);
    }
};

} // namespace

TEST_F(PlanBesideTest, WindowComesToTheBestPlan) {
    const PlanRequest request = busyDay();
    ASSERT_EQ(request.jobs.size(), 8U);
    ASSERT_EQ(request.platens.size(), 2U);
    const DayPlan best = withAllTime(request);
    ASSERT_FALSE(best.isCutShort);
    const auto isThere = [&] { return !isWorthTheChange(best, desk().shop()->plan); };
    EXPECT_TRUE(QTest::qWaitFor(isThere, kPlanPatience));
    EXPECT_FALSE(desk().shop()->plan.isBetterThan(best));
}

TEST_F(PlanBesideTest, FoundIsWhatAllTimeFinds) {
    const PlanRequest request = busyDay();
    PlanBeside beside;
    std::vector<DayPlan> found;
    QObject::connect(&beside, &PlanBeside::found, &beside,
                     [&](const DayPlan& plan) { found.push_back(plan); });
    QSignalSpy ended(&beside, &PlanBeside::ended);
    beside.begin(request);
    ASSERT_TRUE(QTest::qWaitFor([&] { return ended.count() == 1; }, kPlanPatience));
    const DayPlan best = withAllTime(request);
    ASSERT_FALSE(found.empty());
    EXPECT_FALSE(found.back().isCutShort);
    EXPECT_EQ(found.back().lateness, best.lateness);
    EXPECT_EQ(found.back().ends, best.ends);
    EXPECT_EQ(found.back().changes, best.changes);
}

TEST_F(PlanBesideTest, DroppedItSaysNothing) {
    const PlanRequest request = busyDay();
    PlanBeside beside;
    int found = 0;
    QObject::connect(&beside, &PlanBeside::found, &beside, [&](const DayPlan&) { ++found; });
    beside.begin(request);
    beside.drop();
    QTest::qWait(300);
    EXPECT_EQ(found, 0);
    beside.begin(request);
    EXPECT_TRUE(QTest::qWaitFor([&] { return found > 0; }, kPlanPatience));
}

// A minute later there is nothing new to look for; after a step there is.
TEST_F(PlanBesideTest, WhatWasSearchedThroughIsNotSearchedAgainForTheMomentAlone) {
    PlanRequest request = busyDay();
    request.jobs.front().isUnderway = true;
    PlanBeside beside;
    QSignalSpy found(&beside, &PlanBeside::found);
    QSignalSpy ended(&beside, &PlanBeside::ended);
    beside.begin(request);
    ASSERT_TRUE(QTest::qWaitFor([&] { return ended.count() == 1; }, kPlanPatience));
    const auto saidBefore = found.count();
    request.start += Minutes{1};
    request.jobs.front().steps.front().attended -= Seconds{1};
    beside.begin(request);
    QTest::qWait(100);
    EXPECT_EQ(found.count(), saidBefore);
    request.jobs.front().steps.erase(request.jobs.front().steps.begin());
    beside.begin(request);
    EXPECT_TRUE(QTest::qWaitFor([&] { return ended.count() == 2; }, kPlanPatience));
}

// Step by step as planned, the walk keeps its order: what the window shows at once is not worse than the rest
// of what it showed before, and nothing that is taken back half a second later.
TEST_F(PlanBesideTest, AfterAStepThePlanShownDoesNotFlicker) {
    const DayPlan best = withAllTime(busyDay());
    ASSERT_TRUE(QTest::qWaitFor([&] { return !isWorthTheChange(best, desk().shop()->plan); }, kPlanPatience));
    for (int step = 0; step < 6; ++step) {
        const std::vector<GarmentId> before = desk().shop()->plan.order;
        const GarmentId first = before.front();
        const Route route = desk().shop()->of(first).route;
        if (desk().shop()->of(first).progress.hasBegun()) {
            const std::size_t open = *desk().shop()->of(first).progress.underway;
            time().pass(route.steps[open].total());
            valueOf(db::finishStep(file(), first, route));
        } else {
            valueOf(db::takeUp(file(), first, route, desk().now()));
        }
        const auto& shop = desk().shop();
        const PlanRequest request = planRequest(shop->facts, shop->assessments, shop->now);
        std::vector<std::size_t> rest;
        for (const GarmentId garment : before) {
            const auto job = std::ranges::find(request.jobs, garment, &PressJob::garment);
            if (job != request.jobs.end())
                rest.push_back(static_cast<std::size_t>(job - request.jobs.begin()));
        }
        ASSERT_EQ(rest.size(), request.jobs.size());
        const DayPlan asBefore = planInOrder(request, rest);
        EXPECT_FALSE(asBefore.isBetterThan(shop->plan)) << "step " << step;
        EXPECT_TRUE(shop->plan.isBetterThan(asBefore) || shop->plan.order == asBefore.order)
            << "as good, and yet another order: step " << step;
        // What comes later, if anything, is better: never the same again.
        const DayPlan atOnce = shop->plan;
        QSignalSpy replanned(&desk(), &ShopDesk::replanned);
        QTest::qWait(50);
        EXPECT_EQ(isWorthTheChange(desk().shop()->plan, atOnce), replanned.count() > 0);
    }
}

} // namespace holdfast::app::test
