// SPDX-License-Identifier: GPL-3.0-or-later
// A mistake in the program is said with its place and ends it, however the program was built.

#include "core/trade/assertion.h"

#include "core/facts/rule.h"
#include "core/trade/result.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

TEST(AssertionDeathTest, WhatIsNotSoIsSaidWithItsPlace) {
    GTEST_FLAG_SET(death_test_style, "threadsafe");
    const int garments = 0;
    EXPECT_DEATH(HOLDFAST_ASSERT(garments > 0), "assertion_test.cpp:[0-9]+: .*garments > 0.* is not so");
}

TEST(AssertionDeathTest, RefusedResultHasNoValue) {
    GTEST_FLAG_SET(death_test_style, "threadsafe");
    const Result<int> refused = plainError(said("The disk is full."));
    EXPECT_DEATH((void)refused.value(), "result.h:[0-9]+: .*ok");
}

TEST(AssertionDeathTest, RuleWithoutACodeIsNamed) {
    GTEST_FLAG_SET(death_test_style, "threadsafe");
    EXPECT_DEATH((void)ruleCode(static_cast<Rule>(9'999)), "each rule has a code");
}

TEST(Assertion, WhatIsSoGoesOn) {
    int looked = 0;
    HOLDFAST_ASSERT(++looked == 1);
    EXPECT_EQ(looked, 1);
}

} // namespace
} // namespace holdfast
