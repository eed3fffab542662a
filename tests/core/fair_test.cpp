// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/fair.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

using namespace std::chrono_literals;

const LocalDate kSaturday = localDate(2026, 11, 14);

Fair aFair(std::int64_t id, const std::string& name, LocalDate first, int days = 1) {
    Fair fair;
    fair.id = FairId{id};
    fair.name = name;
    fair.firstDay = first;
    fair.lastDay = first + Days{days - 1};
    fair.hours = {9h + 30min, 16h};
    return fair;
}

TEST(Fairs, HoursWorkedAreThoseOfTheStallUnlessSaid) {
    Fair fair = aFair(1, "Creek Fair", kSaturday, 2);
    EXPECT_EQ(fair.days(), 2);
    EXPECT_EQ(fair.hoursWorked(), 13h);
    fair.worked = 20h;
    EXPECT_EQ(fair.hoursWorked(), 20h);
}

TEST(Fairs, AnOrderBelongsToAFairByNameAndDay) {
    const std::vector fairs{aFair(1, "Creek Fair", kSaturday - Days{364}, 2),
                            aFair(2, "Creek Fair", kSaturday, 2), aFair(3, "Ropewalk Market", kSaturday)};
    EXPECT_EQ(fairOf(fairs, "Creek Fair", kSaturday + Days{1})->id, FairId{2});
    EXPECT_EQ(fairOf(fairs, "Creek Fair", kSaturday - Days{363})->id, FairId{1});
    EXPECT_EQ(fairOf(fairs, "Creek Fair", kSaturday + Days{2}), nullptr);
    EXPECT_EQ(fairOf(fairs, "workshop", kSaturday), nullptr);
}

TEST(Fairs, TheNextIsTheOneOfTodayOrTheFirstToCome) {
    const std::vector fairs{aFair(1, "Later", kSaturday + Days{9}), aFair(2, "Next", kSaturday, 2),
                            aFair(3, "Gone", kSaturday - Days{7})};
    EXPECT_EQ(nextFair(fairs, kSaturday - Days{1})->id, FairId{2});
    EXPECT_EQ(nextFair(fairs, kSaturday + Days{1})->id, FairId{2});
    EXPECT_EQ(nextFair(fairs, kSaturday + Days{2})->id, FairId{1});
    EXPECT_EQ(nextFair(fairs, kSaturday + Days{10}), nullptr);
    // Of two that begin on one day, the one that was put down first.
    const std::vector<Fair> twice{fairs[0], fairs[0]};
    EXPECT_EQ(nextFair(twice, fairs[0].firstDay), &twice[0]);
}

TEST(Fairs, ThoseOfTodayAreNamedOnceAndByName) {
    const std::vector fairs{aFair(1, "Ropewalk Market", kSaturday), aFair(2, "Creek Fair", kSaturday, 2),
                            aFair(3, "Creek Fair", kSaturday), aFair(4, "Gone", kSaturday - Days{7})};
    EXPECT_EQ(fairsOfToday(fairs, kSaturday), (std::vector<std::string>{"Creek Fair", "Ropewalk Market"}));
    EXPECT_EQ(fairsOfToday(fairs, kSaturday + Days{3}), std::vector<std::string>{});
}

} // namespace
} // namespace holdfast
