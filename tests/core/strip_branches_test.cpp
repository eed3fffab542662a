// SPDX-License-Identifier: GPL-3.0-or-later
// Branches of a filling: they find what the greedy rule alone does not, and keep to what they promise. What
// they find is looked over by faultOf, which knows nothing of how it was made.

#include "core/cutting/strip_branches.h"

#include "core/cutting/strip_construction.h"
#include "core/cutting/strip_plan.h"
#include "core/cutting/strip_tree.h"
#include "tests/core/strip_builders.h"

#include <gtest/gtest.h>

using namespace holdfast;
using namespace holdfast::strips;

namespace {

// A strip that ends where it was cut off whole, so that nothing is to spare.
struct Full {
    StripTask task;
    StripPlan plan;
    FillOrder order;
    std::int64_t areaLeft = 0; // by the rule alone

    Full(StripTask whole, std::int64_t length)
        : task(std::move(whole)) {
        task.length = length;
        plan = planOf(task);
        plan.frame.end = length;
        order = fillOrders(plan.pieces).front();
        areaLeft = StripFiller{plan.frame, plan.pieces, FillHabit{true, false}}.fill(order).areaLeft;
    }

    std::optional<StripPacking> branch(double width, const std::function<bool()>& mayFill) const {
        StripRandom random{5};
        StripBranches branches{plan.frame, plan.pieces, {}, 0};
        const auto places = branches.search(order, areaLeft, width, random, mayFill);
        return places ? std::optional{packingOf(task, *places)} : std::nullopt;
    }
};

bool always() {
    return true;
}

} // namespace

// A strip that was cut up whole can be laid whole again; how it was cut is told to nobody.
TEST(StripBranches, FindRoomForAllWhereTheRuleLeavesSome) {
    StripMaker maker{31};
    int left = 0;
    int found = 0;
    for (int round = 0; round < 60; ++round) {
        const Full full{maker.withoutWaste(30, 30, 16, round % 2 == 0), 30};
        if (full.areaLeft == 0)
            continue;
        ++left;
        const auto packing = full.branch(20, always);
        if (!packing)
            continue;
        ++found;
        ASSERT_EQ(faultOf(full.task, *packing), std::nullopt) << "round " << round;
        ASSERT_EQ(packing->placed(), full.task.pieces.size()) << "round " << round;
        ASSERT_EQ(packing->length, 30) << "round " << round;
    }
    EXPECT_GT(left, 40);
    EXPECT_GT(found, left / 2);
}

TEST(StripBranches, KeepClearOfPins) {
    StripMaker maker{33};
    int found = 0;
    for (int round = 0; round < 40; ++round) {
        StripTask task = maker.withoutWaste(20, 14, 10, false);
        for (StripPiece& piece : task.pieces)
            piece.mayTurn = true;
        task.pieces.push_back({20, 2, false, StripPlace{0, 7, false}});
        const Full full{std::move(task), 17};
        if (full.areaLeft == 0)
            continue;
        StripRandom random{6};
        StripBranches branches{full.plan.frame, full.plan.pieces, {}, 20};
        const auto places = branches.search(full.order, full.areaLeft, 20, random, always);
        if (!places)
            continue;
        ++found;
        const StripPacking packing = packingOf(full.task, *places);
        ASSERT_EQ(faultOf(full.task, packing), std::nullopt) << "round " << round;
        ASSERT_EQ(packing.placed(), full.task.pieces.size()) << "round " << round;
    }
    EXPECT_GT(found, 0);
}

TEST(StripBranches, AskBeforeEachFillingAndStopAtOnce) {
    StripMaker maker{35};
    const Full full{maker.withoutWaste(100, 100, 40, false), 100};
    ASSERT_GT(full.areaLeft, 0);
    for (const int allowed : {0, 1, 7, 50}) {
        int asked = 0;
        EXPECT_FALSE(full.branch(4, [&] { return asked++ < allowed; }));
        EXPECT_EQ(asked, allowed + 1);
    }
}

// A piece of 4 × 10 fills the strip's 10 × 4 turned, and no other way.
TEST(StripTree, LaysTurnedWhatFitsOnlySo) {
    const std::vector<FillPiece> pieces{{7, 4, 10, true}};
    const auto places = StripTree{{10, 4, {}}, pieces}.search(always);
    ASSERT_TRUE(places);
    ASSERT_EQ(places->size(), 1u);
    EXPECT_EQ(places->front().piece, 7u);
    EXPECT_TRUE(places->front().isTurned);
}

TEST(StripBranches, FindNothingWhereThereIsTooLittleRoom) {
    const Full full{aStrip(10, {{6, 6}, {6, 6}, {4, 7}}), 10};
    ASSERT_GT(full.areaLeft, 0);
    EXPECT_FALSE(full.branch(64, always));
}
