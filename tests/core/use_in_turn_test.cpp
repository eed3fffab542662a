// SPDX-License-Identifier: GPL-3.0-or-later
// Rolls of a film one after the other, against use that is drawn a great many times by the model in words:
// what is cut is cut from the first roll that has any left and is not out of date.
#include "core/film/usual_use.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <random>
#include <vector>

namespace holdfast {

using namespace literals;

namespace {

struct Tried {
    std::vector<double> mean;
    std::vector<double> within; // how often what was taken lay within the ends that were given
};

constexpr int kCoursesTried = 60'000;

// One course of the film's use: each roll takes what comes after those before it.
class UseTried {
public:
    UseTried(const std::vector<RollInTurn>& rolls, const std::vector<ExpectedUse>& ends, Tried& tried)
        : m_rolls(rolls)
        , m_ends(ends)
        , m_tried(tried) {}

    void reach(std::size_t at, double use) {
        m_use += use;
        const double taken = std::clamp(m_use - m_gone, 0.0, static_cast<double>(m_rolls[at].free.value));
        m_gone += taken;
        m_tried.mean[at] += taken / kCoursesTried;
        const auto whole = std::llround(taken);
        m_tried.within[at] +=
            whole >= m_ends[at].low.value && whole <= m_ends[at].high.value ? 1.0 / kCoursesTried : 0;
    }

private:
    const std::vector<RollInTurn>& m_rolls;
    const std::vector<ExpectedUse>& m_ends;
    Tried& m_tried;
    double m_use = 0;
    double m_gone = 0;
};

// By days: each day has its own use.
Tried byTrying(const UseRate& rate, const std::vector<RollInTurn>& rolls,
               const std::vector<ExpectedUse>& ends) {
    std::mt19937 random{7};
    Tried tried{std::vector<double>(rolls.size()), std::vector<double>(rolls.size())};
    for (int time = 0; time < kCoursesTried; ++time) {
        UseTried course(rolls, ends, tried);
        Days reached{0};
        for (std::size_t at = 0; at < rolls.size(); ++at) {
            const double weeks = static_cast<double>((rolls[at].days - reached).count()) / 7;
            course.reach(at, std::normal_distribution<double>{rate.weeklyMean * weeks,
                                                              rate.weeklySpread * std::sqrt(weeks)}(random));
            reached = rolls[at].days;
        }
    }
    return tried;
}

TEST(UseInTurn, OfOneRollIsTheFormulaItself) {
    const UseRate rate{400, 250};
    const std::vector<RollInTurn> one{{Days{28}, 300_mm, 1200_mm, true}};
    const ExpectedUse use = expectedUseInTurn(rate, one).front();
    const ExpectedUse formula = expectedUse(rate, Days{28}, 300_mm, 1200_mm);
    EXPECT_EQ(use.expected, formula.expected);
    EXPECT_EQ(use.low, formula.low);
    EXPECT_EQ(use.high, formula.high);
}

TEST(UseInTurn, OfSecondAndThirdRollsIsWhatTryingGivesAndTheEndsHoldInEightOfTen) {
    const UseRate rate{400, 180};
    const std::vector<RollInTurn> rolls{
        {Days{20}, 0_mm, 5000_mm, true}, {Days{48}, 0_mm, 5000_mm, true}, {Days{90}, 0_mm, 9000_mm, true}};
    const auto uses = expectedUseInTurn(rate, rolls);
    const Tried tried = byTrying(rate, rolls, uses);
    for (std::size_t at = 0; at < rolls.size(); ++at) {
        EXPECT_NEAR(static_cast<double>(uses[at].expected.value), tried.mean[at], 8) << at;
        EXPECT_NEAR(tried.within[at], 0.8, 0.02) << at;
    }
    // Four weeks at 400 ± 180 for the second: nothing of the twenty days before is in its spread.
    EXPECT_NEAR(static_cast<double>((uses[1].high - uses[1].low).value), 2 * 1.28155 * 180 * 2, 30);
}

TEST(UseInTurn, WhatTheFirstCannotHoldGoesToTheNext) {
    const UseRate rate{400, 180};
    const std::vector<RollInTurn> rolls{{Days{60}, 0_mm, 1500_mm, true}, {Days{75}, 0_mm, 4000_mm, true}};
    const auto uses = expectedUseInTurn(rate, rolls);
    const Tried tried = byTrying(rate, rolls, uses);
    EXPECT_NEAR(static_cast<double>(uses[1].expected.value), tried.mean[1], 8);
    EXPECT_NEAR(tried.within[1], 0.8, 0.02);
    EXPECT_GT(uses[1].expected, 2500_mm);
}

TEST(UseInTurn, WhatWaitsOnTheFirstRollIsNotTakenFromTheSecond) {
    const UseRate steady{350, 0};
    const std::vector<RollInTurn> rolls{{Days{28}, 600_mm, 400_mm, true}, {Days{56}, 0_mm, 5000_mm, true}};
    const auto uses = expectedUseInTurn(steady, rolls);
    EXPECT_EQ(uses[0].expected, 400_mm); // 1,400 in four weeks, 600 of which wait already
    EXPECT_EQ(uses[1].expected, 2800_mm - 1000_mm);
}

TEST(UseInTurn, ARollThatMayNotBeUsedTakesOnlyWhatIsAllotted) {
    const UseRate steady{350, 0};
    const std::vector<RollInTurn> rolls{{Days{28}, 100_mm, 400_mm, false}, {Days{56}, 0_mm, 5000_mm, true}};
    const auto uses = expectedUseInTurn(steady, rolls);
    EXPECT_EQ(uses[0].expected, 0_mm);
    EXPECT_EQ(uses[1].expected, 2700_mm);
}

// The same, where the days of the rolls are an estimate: by days of a year that is as warm for one as for
// all.
Tried byTryingYears(const UseRate& rate, const std::vector<RollInTurn>& rolls,
                    const std::vector<ExpectedUse>& ends) {
    std::mt19937 random{9};
    std::normal_distribution<double> normal;
    Tried tried{std::vector<double>(rolls.size()), std::vector<double>(rolls.size())};
    for (int time = 0; time < kCoursesTried; ++time) {
        const double year = normal(random);
        std::multimap<double, std::size_t> byDay;
        for (std::size_t at = 0; at < rolls.size(); ++at) {
            const auto usual = static_cast<double>(rolls[at].days.count());
            const auto end =
                static_cast<double>((year < 0 ? *rolls[at].daysAtLeast : *rolls[at].daysAtMost).count());
            byDay.emplace(std::max(0.0, usual + std::abs(year) * (end - usual) / 1.28155), at);
        }
        UseTried course(rolls, ends, tried);
        double reached = 0;
        for (const auto& [day, at] : byDay) {
            const double weeks = (day - reached) / 7;
            course.reach(at, rate.weeklyMean * weeks + rate.weeklySpread * std::sqrt(weeks) * normal(random));
            reached = day;
        }
    }
    return tried;
}

TEST(UseInTurn, DaysThatAreAnEstimateWidenTheRangeOfFirstAndSecondRollsAlike) {
    const UseRate rate{400, 180};
    const std::vector<RollInTurn> rolls{{Days{60}, 0_mm, 20'000_mm, true, Days{50}, Days{75}},
                                        {Days{130}, 0_mm, 20'000_mm, true, Days{110}, Days{165}},
                                        {Days{220}, 0_mm, 20'000_mm, true, Days{190}, Days{280}}};
    const auto uses = expectedUseInTurn(rate, rolls);
    const Tried tried = byTryingYears(rate, rolls, uses);
    std::vector<RollInTurn> facts = rolls;
    for (RollInTurn& roll : facts)
        roll.daysAtLeast = roll.daysAtMost = std::nullopt;
    const auto ofFacts = expectedUseInTurn(rate, facts);
    for (std::size_t at = 0; at < rolls.size(); ++at) {
        EXPECT_NEAR(static_cast<double>(uses[at].expected.value), tried.mean[at], 25) << at;
        EXPECT_NEAR(tried.within[at], 0.8, 0.025) << at;
        EXPECT_GT(uses[at].high - uses[at].low, ofFacts[at].high - ofFacts[at].low) << at;
    }
    // Of days taken as facts, the ends would hold less often.
    EXPECT_LT(byTryingYears(rate, rolls, ofFacts).within[0], 0.75);
}

TEST(UseInTurn, IsTheSameEachTime) {
    const UseRate rate{400, 300};
    const std::vector<RollInTurn> rolls{{Days{20}, 0_mm, 900_mm, true}, {Days{40}, 0_mm, 900_mm, true}};
    const auto one = expectedUseInTurn(rate, rolls);
    const auto other = expectedUseInTurn(rate, rolls);
    EXPECT_EQ(one[1].expected, other[1].expected);
    EXPECT_EQ(one[1].low, other[1].low);
    EXPECT_EQ(one[1].high, other[1].high);
}

} // namespace
} // namespace holdfast
