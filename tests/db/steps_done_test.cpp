// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/steps_done.h"
#include "tests/db/small_shop.h"

namespace holdfast::db {
namespace {

using StepsDone = SmallShop;

TEST_F(StepsDone, AreReadWithTheirKindsTheLatestFirst) {
    const auto garment = garmentOf(readyToPress());
    const Route route = routeFor(garment);
    ASSERT_TRUE(takeUp(shop(), garment, route, now()).ok());
    UnreadFacts unread;
    EXPECT_TRUE(loadStepsDone(connection(), now(), unread).empty());
    ASSERT_TRUE(finishStep(shop(), garment, route).ok());
    const auto done = loadStepsDone(connection(), now(), unread);
    ASSERT_EQ(done.size(), 1U);
    EXPECT_EQ(done.front().kind, route.steps.front().kind);
    EXPECT_TRUE(unread.empty());
    for (const RouteStep& step : route.steps)
        EXPECT_EQ(stepKindOf(step.key), step.kind) << step.key;
    EXPECT_FALSE(stepKindOf("pressed-1"));
    EXPECT_FALSE(stepKindOf("press"));
}

} // namespace
} // namespace holdfast::db
