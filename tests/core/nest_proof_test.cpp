// SPDX-License-Identifier: GPL-3.0-or-later
// That a nest is the shortest possible is said where its length is the least length. Looked at by trying
// every place: where it is said, nothing shorter fits; and the least length is never above what does fit.

#include "core/cutting/pins.h"
#include "core/shop/films_to_cut.h"
#include "tests/core/cutting_builders.h"
#include "tests/core/nest_as_strip.h"
#include "tests/core/shortest_by_trying.h"

#include <gtest/gtest.h>

#include <random>

using namespace holdfast;
using namespace holdfast::literals;
using namespace holdfast::test;

namespace {

struct Seen {
    int proved = 0;
    int notProved = 0;
};

void expectHonest(const Nest& nest, Seen& seen, int round) {
    ASSERT_EQ(faultOf(nest), "") << "round " << round;
    const StripTask task = strips::asStrip(nest);
    EXPECT_FALSE(strips::fitsOn(task, nest.leastLength.value - 1)) << "round " << round;
    EXPECT_TRUE(strips::fitsOn(task, nest.length.value)) << "the check itself, round " << round;
    (nest.length <= nest.leastLength ? seen.proved : seen.notProved) += 1;
}

class NestProof : public testing::Test {
protected:
    Millimetres within(std::int64_t least, std::int64_t most) {
        return {std::uniform_int_distribution<std::int64_t>{least, most}(m_random)};
    }
    bool oneIn(std::int64_t times) { return within(1, times).value == 1; }

private:
    std::mt19937 m_random{20261129};
};

// The same decals after each change: pinned, moved, let go, one more of them, another gap, another roll,
// turned or not.
TEST_F(NestProof, AfterEachChangeItIsProvedAgainOrNotSaid) {
    Seen seen;
    for (int round = 0; round < 120; ++round) {
        CuttingBench bench;
        bench.roll(9, 3'000_mm).width = within(200, 400);
        FilmRoll& other = bench.roll(10, 3'000_mm);
        other.width = within(200, 400);
        const RollId otherRoll = other.id;
        std::vector<DecalId> decals;
        for (int decal = 0; decal < 2; ++decal)
            decals.push_back(bench.waiting.decal(within(30, 180), within(30, 180)));
        NestWish wish = bench.usual();
        Nest nest = bench.nests(wish).nests.front();
        expectHonest(nest, seen, round);

        const NestedDecal first = nest.decals.front();
        const DecalPin wanted{first.lies.across + within(0, 60), first.lies.along + within(0, 200), false};
        if (const auto free = nearestFreePlace(nest, first.decal, wanted)) {
            nest = withDecalAt(nest, first.decal, *free);
            expectHonest(nest, seen, round);
            nest = withPin(nest, first.decal, false);
            expectHonest(nest, seen, round);
            wish.pins[first.decal] = *free;
            expectHonest(bench.nests(wish).nests.front(), seen, round);
            wish.pins.clear();
        }
        decals.push_back(bench.waiting.decal(within(30, 180), within(30, 180)));
        expectHonest(bench.nests(wish).nests.front(), seen, round);
        wish.gap = within(0, 30);
        expectHonest(bench.nests(wish).nests.front(), seen, round);
        wish.mayTurn = !wish.mayTurn;
        expectHonest(bench.nests(wish).nests.front(), seen, round);
        wish.rolls = {otherRoll};
        expectHonest(bench.nests(wish).nests.front(), seen, round);
    }
    EXPECT_GT(seen.proved, 100);
    EXPECT_GT(seen.notProved, 100);
}

} // namespace
