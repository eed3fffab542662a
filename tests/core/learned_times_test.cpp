// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/quality/holm.h"
#include "core/quality/learned_times.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace holdfast {
namespace {

const LocalTime kNine{LocalDate{} + Days{20000}};

StepDone took(StepKind kind, std::int64_t seconds, int decals = 1) {
    const LocalTime from = kNine + Hours{9};
    return {.kind = kind, .from = from, .until = from + Seconds{seconds}, .decals = decals};
}

std::vector<StepDone> drawn(std::mt19937& draw, StepKind kind, double middle, int count) {
    std::lognormal_distribution<double> time{std::log(middle), 0.4};
    std::vector<StepDone> all;
    for (int at = 0; at < count; ++at)
        all.push_back(took(kind, std::llround(time(draw))));
    return all;
}

// By hand: 0.01 × 3 and 0.02 × 2 are below 0.05, 0.2 × 1 is not; 0.02 × 3 is not, and ends it.
TEST(Holm, JudgesAllTogether) {
    EXPECT_EQ(beyondChance(std::vector<double>{0.2, 0.01, 0.02}), (std::vector<bool>{false, true, true}));
    EXPECT_EQ(beyondChance(std::vector<double>{0.04, 0.02, 0.03}), (std::vector<bool>{false, false, false}));
    EXPECT_TRUE(beyondChance({}).empty());
}

TEST(LearnedTimes, WhatDiffersIsProposedInWholeSeconds) {
    const std::vector<StepDone> done(20, took(StepKind::LintRoll, 19));
    const auto learned = learnedTimes(done, {});
    ASSERT_EQ(learned.size(), std::size(kAllHandTimes));
    EXPECT_EQ(learned[1].times, 20U);
    EXPECT_TRUE(learned[1].isJudged);
    ASSERT_TRUE(learned[1].proposed);
    EXPECT_EQ(*learned[1].proposed, Seconds{19});
    EXPECT_EQ(learned[0].times, 0U);
    EXPECT_FALSE(learned[0].done);
    HandTimes accepted;
    accepted.lintRoll = Seconds{19};
    EXPECT_FALSE(learnedTimes(done, accepted)[1].proposed);
}

TEST(LearnedTimes, TooFewOrTooNearAreNotProposed) {
    EXPECT_FALSE(learnedTimes(std::vector<StepDone>(19, took(StepKind::LintRoll, 30)), {})[1].isJudged);
    EXPECT_FALSE(learnedTimes(std::vector<StepDone>(50, took(StepKind::PlaceDecal, 27)), {})[3].proposed);
    EXPECT_TRUE(learnedTimes(std::vector<StepDone>(50, took(StepKind::PlaceDecal, 28)), {})[3].proposed);
}

TEST(LearnedTimes, PausesNightsAndNothingsAreLeftOutAndCounted) {
    std::vector<StepDone> done(20, took(StepKind::Turn, 10));
    done.push_back(took(StepKind::Turn, 0));
    done.push_back(took(StepKind::Turn, 601));
    done.push_back(took(StepKind::Turn, Hours{15} / Seconds{1} + 5));
    const LearnedTime turn = learnedTimes(done, {})[5];
    EXPECT_EQ(turn.times, 20U);
    EXPECT_EQ(turn.atOnce, 1U);
    EXPECT_EQ(turn.paused, 1U);
    EXPECT_EQ(turn.overMidnight, 1U);
    EXPECT_FALSE(turn.proposed);
}

TEST(LearnedTimes, AJoinedPeelCountsForEachDecal) {
    const auto peel = learnedTimes(std::vector<StepDone>(20, took(StepKind::PeelCarrier, 30, 3)), {})[4];
    EXPECT_NEAR(peel.done->estimate, 10, 1e-9);
    EXPECT_FALSE(peel.proposed);
}

TEST(LearnedTimes, OnlyTheLatestCount) {
    std::vector<StepDone> done(200, took(StepKind::Turn, 10));
    done.insert(done.end(), 500, took(StepKind::Turn, 40));
    const LearnedTime turn = learnedTimes(done, {})[5];
    EXPECT_EQ(turn.times, kLatestToJudge);
    EXPECT_FALSE(turn.proposed);
}

// Where hands take what is planned, and one time in twenty has a pause in it of ten minutes to two hours, any
// of two kinds is proposed in no more than one shop in twenty: of 600, within three standard errors.
TEST(LearnedTimes, PausesDoNotBiasThem) {
    std::mt19937 draw{20261202};
    std::uniform_int_distribution<int> pause{601, 7200};
    int proposed = 0;
    for (int shop = 0; shop < 600; ++shop) {
        std::vector<StepDone> done = drawn(draw, StepKind::PlaceDecal, 25, 60);
        for (const StepDone& step : drawn(draw, StepKind::WayRound, 20, 60))
            done.push_back(step);
        for (std::size_t at = 0; at < done.size(); at += 20)
            done[at].until += Seconds{pause(draw)};
        bool any = false;
        for (const LearnedTime& learned : learnedTimes(done, {}))
            any |= learned.proposed.has_value();
        proposed += any;
    }
    EXPECT_LE(proposed, 600 * 0.05 + 3 * std::sqrt(600 * 0.05 * 0.95));
}

} // namespace
} // namespace holdfast
