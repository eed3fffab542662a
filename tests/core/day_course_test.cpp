// SPDX-License-Identifier: GPL-3.0-or-later
// The quick run of a day against the simulation that its plan is written from: the same to the second, for
// every garment of thousands of days made at random, also of kinds that a shop seldom has.

#include "core/press/day_course.h"

#include "core/press/day_plan_simulation.h"
#include "tests/core/odd_days.h"

#include <gtest/gtest.h>

namespace holdfast::press_days {
namespace {

void expectSame(const TimedDay& day, DayCourse& course, std::span<const std::size_t> order) {
    DayRecord record;
    DaySimulation simulation{day, &record};
    simulation.begin(order);
    course.begin(order);
    for (const std::size_t job : order) {
        simulation.give(job);
        simulation.run();
        course.give(job);
        course.run();
    }
    const DayScore& whole = simulation.state().score;
    EXPECT_EQ(course.state().score, whole);
    EXPECT_EQ(course.state().score.lateGarments, whole.lateGarments);
    for (std::size_t place = 0; place < order.size(); ++place) {
        const auto number = static_cast<DayCourse::Number>(place);
        EXPECT_EQ(course.endAt(number), record.garments[place].ends);
        EXPECT_EQ(course.platenAt(number), record.garments[place].platen);
    }
}

TEST(DayCourse, IsTheSimulationToTheSecond) {
    RandomDays days{41};
    for (int day = 0; day < 2000; ++day) {
        const PlanRequest request = oddDay(days, day);
        const TimedDay timed{request};
        const CourseDay prepared{timed};
        DayCourse course{prepared};
        for (int order = 0; order < 3; ++order) {
            expectSame(timed, course, timed.cleaned(days.order(request)));
            ASSERT_FALSE(::testing::Test::HasFailure()) << "day " << day;
        }
    }
}

// A wait of a year between two presses, several times over: no sum is cut short.
TEST(DayCourse, AYearOfWaitingIsCounted) {
    const std::int64_t year = 366 * 24 * 3600;
    std::vector<RouteStep> steps{pressed(150, 10)};
    for (int wait = 0; wait < 30; ++wait)
        steps.push_back(cooled(year));
    steps.push_back(pressed(150, 10));
    const PlanRequest request = aDay({steps, {pressed(150, 20)}, steps});
    const TimedDay timed{request};
    const CourseDay prepared{timed};
    DayCourse course{prepared};
    const std::vector<std::size_t> order{0, 1, 2};
    expectSame(timed, course, order);
    EXPECT_GE(course.state().score.ends, 30 * year);
}

// A limit ends the run as soon as the day is later than that, and not before.
TEST(DayCourse, EndsWhereItIsTooLate) {
    RandomDays days{42};
    for (int day = 0; day < 200; ++day) {
        const PlanRequest request = oddDay(days, day);
        const TimedDay timed{request};
        const CourseDay prepared{timed};
        DayCourse course{prepared};
        const std::vector<std::size_t> order = timed.cleaned(days.order(request));
        const DayScore whole = timed.score(order);
        for (const double share : {0.5, 1.0}) {
            course.begin(order);
            for (const std::size_t job : order) {
                course.give(job);
                course.run(whole.lateness * share);
            }
            if (share == 1.0 || whole.lateness == 0)
                EXPECT_EQ(course.state().score, whole) << "day " << day;
            else
                EXPECT_GT(course.state().score.lateness, whole.lateness * share) << "day " << day;
        }
    }
}

} // namespace
} // namespace holdfast::press_days
