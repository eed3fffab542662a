// SPDX-License-Identifier: GPL-3.0-or-later
// Many orders at once: each day is promised after those before it.
#include "core/shop/promises_in_turn.h"
#include "tests/core/promise_builders.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

using namespace fair_days;

class InTurn : public ::testing::Test {
protected:
    // The table's shop: five washed Fog, five unwashed Moss, an hour of wash and twelve of drying.
    InTurn() {
        m_shop.now = atTheTable();
        m_shop.facts = FairShop{}.facts;
    }

    static std::vector<AskedGarment> tees(std::size_t count, ColourId colour, Seconds each) {
        return std::vector<AskedGarment>(count, AskedGarment{kTee, "M", colour, {}, each});
    }

    static LocalTime dayFor(const PromisesInTurn& promises, const std::vector<AskedGarment>& asked) {
        const auto promise = promises.ask(asked);
        EXPECT_TRUE(promise.ok());
        return promise.ok() ? promise->readyAt : LocalTime{};
    }

    ReckonedShop m_shop;
};

TEST_F(InTurn, AskingSetsNothingAside) {
    const PromisesInTurn promises{m_shop};
    const auto asked = tees(1, kFog, Minutes{10});
    const LocalTime first = dayFor(promises, asked);
    EXPECT_EQ(dayFor(promises, asked), first);
    const auto plain = promiseFor(asked, m_shop.facts, {}, m_shop.now);
    ASSERT_TRUE(plain.ok());
    EXPECT_EQ(first, plain->readyAt) << "as for one order at the table";
}

// Two orders of five hours do not fit into one day of eight.
TEST_F(InTurn, HandsThatAreGivenAreNotGivenAgain) {
    PromisesInTurn promises{m_shop};
    const auto asked = tees(2, kFog, Hours{2} + Minutes{30});
    const LocalTime first = dayFor(promises, asked);
    promises.give(asked, first);
    EXPECT_GT(dayFor(promises, asked), first);
}

TEST_F(InTurn, BlanksThatAreGivenAreNotGivenAgain) {
    PromisesInTurn promises{m_shop};
    const auto all = tees(5, kFog, Minutes{1});
    const auto one = tees(1, kFog, Minutes{1});
    const LocalTime before = dayFor(promises, one);
    promises.give(all, dayFor(promises, all));
    // A new blank comes only after the lead time.
    EXPECT_GE(dateOf(dayFor(promises, one)), m_shop.now.today() + m_shop.facts.settings.blankLeadTime);
    EXPECT_GT(dayFor(promises, one), before);
}

TEST_F(InTurn, OfFiveBlanksFourLeaveOne) {
    PromisesInTurn promises{m_shop};
    const auto four = tees(4, kFog, Minutes{1});
    promises.give(four, dayFor(promises, four));
    EXPECT_LT(dateOf(dayFor(promises, tees(1, kFog, Minutes{1}))),
              m_shop.now.today() + m_shop.facts.settings.blankLeadTime);
}

} // namespace
} // namespace holdfast
