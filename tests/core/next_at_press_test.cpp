// SPDX-License-Identifier: GPL-3.0-or-later
// What the maker is offered next: a warm peel never waits for a cool one.
#include "core/press/next_at_press.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

namespace holdfast::test {

namespace {

using namespace std::chrono_literals;
using Kind = NextAtPress::Kind;

constexpr GarmentId kHand{1};
constexpr GarmentId kWarm{2};
constexpr GarmentId kCool{3};
constexpr GarmentId kPlanned{4};

OnTheRack warm(std::chrono::milliseconds left, GarmentId garment = kWarm) {
    return {garment, Peel::Warm, left};
}
OnTheRack cool(std::chrono::milliseconds left, GarmentId garment = kCool) {
    return {garment, Peel::Cool, left};
}

NextAtPress nextOf(std::optional<GarmentId> inHand, bool isUnderPlaten, const std::vector<OnTheRack>& rack,
                   std::optional<GarmentId> planned = kPlanned) {
    return nextAtPress({inHand, isUnderPlaten, rack, planned});
}

} // namespace

TEST(NextAtPress, WarmPeelThatIsDueComesBeforeACoolOneHoursOverdue) {
    const std::vector rack{cool(-2h - 29min), warm(-25s)};
    EXPECT_EQ(nextOf({}, false, rack), (NextAtPress{Kind::BringBack, kWarm}));
    EXPECT_EQ(dueOnRack(rack), kWarm);
}

TEST(NextAtPress, WarmPeelIsOfferedTheMomentItIsDueAndNotBefore) {
    EXPECT_EQ(nextOf({}, false, {warm(1ms)}), (NextAtPress{Kind::TakeUp, kPlanned}));
    EXPECT_EQ(nextOf({}, false, {warm(0ms)}), (NextAtPress{Kind::BringBack, kWarm}));
    EXPECT_EQ(nextOf({}, false, {cool(-1h), warm(1ms)}), (NextAtPress{Kind::BringBack, kCool}))
        << "nothing is held up by a warm peel that still cools";
}

TEST(NextAtPress, WarmPeelComesBeforeHandWorkAndACoolOneDoesNot) {
    EXPECT_EQ(nextOf(kHand, false, {warm(-1s)}), (NextAtPress{Kind::BringBack, kWarm}));
    EXPECT_EQ(nextOf(kHand, false, {cool(-1h)}), (NextAtPress{Kind::GoOn, kHand}));
}

TEST(NextAtPress, WhatLiesUnderTheClosedPlatenIsLiftedFirst) {
    EXPECT_EQ(nextOf(kHand, true, {warm(-1h), cool(-1h)}), (NextAtPress{Kind::GoOn, kHand}));
}

TEST(NextAtPress, OfSeveralWarmPeelsTheOneDueLongestComesFirst) {
    const std::vector rack{warm(-5s, GarmentId{7}), warm(-9s, GarmentId{8}), warm(-9s, GarmentId{9})};
    EXPECT_EQ(dueOnRack(rack), GarmentId{8});
}

TEST(NextAtPress, CoolPeelThatIsDueComesBeforeANewGarment) {
    EXPECT_EQ(nextOf({}, false, {cool(0ms)}), (NextAtPress{Kind::BringBack, kCool}));
}

TEST(NextAtPress, WhatOnlyCoolsIsAwaitedWhenNothingElseIsLeft) {
    EXPECT_EQ(nextOf({}, false, {cool(9s), warm(4s)}, {}), (NextAtPress{Kind::AwaitRack, kWarm}));
    EXPECT_EQ(nextOf({}, false, {}, {}), NextAtPress{});
}

TEST(NextAtPress, CountThatCannotBeKnownIsNeverDue) {
    OnTheRack unknown = warm(-1h);
    unknown.isKnown = false;
    EXPECT_EQ(nextOf({}, false, {unknown, cool(-1s)}), (NextAtPress{Kind::BringBack, kCool}));
    EXPECT_EQ(nextOf({}, false, {unknown, cool(8s)}, {}), (NextAtPress{Kind::AwaitRack, kCool}));
    EXPECT_EQ(nextOf({}, false, {unknown}, {}), (NextAtPress{Kind::AwaitRack, kWarm}));
}

// Whatever is on the rack: no cool peel is offered while a warm one is due, and none of the warm ones that
// are due has waited longer than the one that is offered.
TEST(NextAtPress, NoWarmPeelEverWaitsForACoolOne) {
    std::mt19937 random(20261129);
    const auto between = [&](int low, int high) { return std::uniform_int_distribution{low, high}(random); };
    int warmOffered = 0;
    for (int round = 0; round < 20'000; ++round) {
        std::vector<OnTheRack> rack;
        for (int count = between(0, 6); count > 0; --count) {
            const auto left = std::chrono::milliseconds{between(0, 3) == 0 ? between(-20'000'000, 0)
                                                                           : between(-9000, 9000)};
            rack.push_back({GarmentId{between(100, 9999)}, between(0, 1) == 0 ? Peel::Warm : Peel::Cool, left,
                            between(0, 9) != 0});
        }
        const std::optional<GarmentId> inHand = between(0, 1) == 0 ? std::optional{kHand} : std::nullopt;
        const bool isUnderPlaten = inHand && between(0, 1) == 0;
        const std::optional<GarmentId> planned = between(0, 1) == 0 ? std::optional{kPlanned} : std::nullopt;
        const NextAtPress next = nextOf(inHand, isUnderPlaten, rack, planned);

        if (isUnderPlaten) {
            ASSERT_EQ(next, (NextAtPress{Kind::GoOn, inHand}));
            continue;
        }
        const auto isWarmDue = [](const OnTheRack& entry) {
            return entry.isDue() && entry.peel == Peel::Warm;
        };
        if (std::ranges::any_of(rack, isWarmDue)) {
            ++warmOffered;
            ASSERT_EQ(next.kind, Kind::BringBack);
            const auto offered = std::ranges::find_if(rack, [&](const OnTheRack& entry) {
                return entry.garment == next.garment && isWarmDue(entry);
            });
            ASSERT_NE(offered, rack.end()) << "a cool one was offered";
            for (const OnTheRack& entry : rack)
                ASSERT_FALSE(isWarmDue(entry) && entry.left < offered->left) << "another waits longer";
        } else if (inHand) {
            ASSERT_EQ(next, (NextAtPress{Kind::GoOn, inHand}));
        } else if (std::ranges::any_of(rack, &OnTheRack::isDue)) {
            ASSERT_EQ(next.kind, Kind::BringBack);
        } else {
            ASSERT_EQ(next.kind, planned ? Kind::TakeUp : rack.empty() ? Kind::Nothing : Kind::AwaitRack);
        }
    }
    EXPECT_GT(warmOffered, 5'000) << "too few rounds asked for one";
}

} // namespace holdfast::test
