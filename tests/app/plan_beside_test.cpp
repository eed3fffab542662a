// The day planned with more time beside the window: what the window shows in the end is the best plan there is.
#include "tests/app/shop_fixture.h"

#include <QSignalSpy>
#include <QTest>

namespace holdfast::app::test {

namespace {

constexpr int kPatience = 20'000; // real milliseconds, for a busy machine without optimisation

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
        request.search.atMost = std::chrono::minutes{5};
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
    const auto isThere = [&] { return !best.isBetterThan(desk().shop()->plan); };
    EXPECT_TRUE(QTest::qWaitFor(isThere, kPatience));
    EXPECT_FALSE(desk().shop()->plan.isBetterThan(best));
}

TEST_F(PlanBesideTest, FoundIsWhatAllTimeFinds) {
    const PlanRequest request = busyDay();
    PlanBeside beside;
    std::vector<DayPlan> found;
    QObject::connect(&beside, &PlanBeside::found, &beside,
                     [&](const DayPlan& plan) { found.push_back(plan); });
    beside.begin(request);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !found.empty(); }, kPatience));
    const DayPlan best = withAllTime(request);
    EXPECT_FALSE(found.front().isCutShort);
    EXPECT_EQ(found.front().lateness, best.lateness);
    EXPECT_EQ(found.front().ends, best.ends);
    EXPECT_EQ(found.front().changes, best.changes);
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
    EXPECT_TRUE(QTest::qWaitFor([&] { return found == 1; }, kPatience));
}

} // namespace holdfast::app::test
