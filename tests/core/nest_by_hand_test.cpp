// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/pins.h"
#include "core/shop/films_to_cut.h"
#include "tests/core/cutting_builders.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace holdfast::test {
namespace {

struct Pair {
    CuttingBench bench;
    DecalId still;
    DecalId moved;
    Nest nest;

    Pair() {
        bench.film.hasGrain = true;
        bench.roll(9, 1000_mm);
        still = bench.waiting.decal(100_mm, 100_mm);
        moved = bench.waiting.decal(100_mm, 60_mm);
        NestWish wish = bench.usual();
        wish.pins[still] = {200_mm, 200_mm, false};
        wish.pins[moved] = {6_mm, 4_mm, false};
        nest = bench.nests(wish).nests.front();
    }
};

TEST(NestByHand, AFreePlaceIsTakenAsItIs) {
    const Pair pair;
    const DecalPin wish{350_mm, 500_mm, false};
    EXPECT_EQ(nearestFreePlace(pair.nest, pair.moved, wish), wish);
}

TEST(NestByHand, OverAnotherItSlidesToTheNearestGap) {
    const Pair pair;
    // Laid 10 mm short of the other's end along the roll, it goes on to where the gap is kept.
    EXPECT_EQ(nearestFreePlace(pair.nest, pair.moved, {200_mm, 290_mm, false}),
              (DecalPin{200_mm, 308_mm, false}));
    EXPECT_EQ(nearestFreePlace(pair.nest, pair.moved, {300_mm, 220_mm, false}),
              (DecalPin{308_mm, 220_mm, false}));
}

TEST(NestByHand, OffTheRollItComesBackToTheMargin) {
    const Pair pair;
    EXPECT_EQ(nearestFreePlace(pair.nest, pair.moved, {{-50}, {-50}, false}), (DecalPin{6_mm, 4_mm, false}));
    EXPECT_EQ(nearestFreePlace(pair.nest, pair.moved, {9000_mm, 9000_mm, false}),
              (DecalPin{394_mm, 936_mm, false}));
}

TEST(NestByHand, APinRaisesTheLeastLengthAndLetGoItDoesNot) {
    CuttingBench bench;
    bench.film.hasGrain = true;
    bench.roll(9, 1000_mm);
    const DecalId decal = bench.waiting.decal(100_mm, 100_mm);
    const Nest free = bench.nests().nests.front();
    const Nest moved = withDecalAt(free, decal, {6_mm, 304_mm, false});
    EXPECT_EQ(moved.length, 408_mm);
    EXPECT_EQ(moved.leastLength, 408_mm);
    const Nest letGo = withPin(moved, decal, false);
    EXPECT_FALSE(letGo.find(decal)->isPinned);
    EXPECT_EQ(letGo.length, 408_mm) << "nothing moves";
    EXPECT_EQ(letGo.leastLength, free.leastLength);
    EXPECT_EQ(withPin(letGo, decal, true).leastLength, 408_mm);
}

TEST(NestByHand, WhereNothingIsFreeThereIsNoPlace) {
    CuttingBench bench;
    bench.film.hasGrain = true;
    bench.roll(9, 120_mm);
    const DecalId wide = bench.waiting.decal(480_mm, 100_mm);
    const Nest nest = bench.nests().nests.front();
    EXPECT_EQ(nearestFreePlace(nest, wide, {0_mm, 0_mm, false}), (DecalPin{6_mm, 4_mm, false}));
    EXPECT_FALSE(nearestFreePlace(nest, wide, {0_mm, 0_mm, true})) << "480 mm along a roll of 120 mm";
    EXPECT_FALSE(nearestFreePlace(nest, DecalId{999}, {0_mm, 0_mm, false}));
}

TEST(NestByHand, AMovedDecalIsPinnedAndLengthAndOffcutsFollow) {
    const Pair pair;
    const Nest moved = withDecalAt(pair.nest, pair.moved, {300_mm, 700_mm, false});
    EXPECT_EQ(faultOf(moved), "");
    EXPECT_TRUE(moved.find(pair.moved)->isPinned);
    EXPECT_EQ(moved.length, 764_mm);
    EXPECT_EQ(moved.leastLength, 764_mm);
    const Nest back = withDecalAt(moved, pair.moved, {6_mm, 4_mm, false});
    EXPECT_EQ(back.length, pair.nest.length);
    EXPECT_EQ(back.leastLength, pair.nest.leastLength);
}

TEST(NestByHand, ATurnedDecalExchangesItsSides) {
    const Pair pair;
    const Nest turned = withDecalAt(pair.nest, pair.moved, {6_mm, 400_mm, true});
    EXPECT_EQ(turned.find(pair.moved)->lies, (FilmArea{6_mm, 400_mm, 60_mm, 100_mm}));
    EXPECT_TRUE(turned.find(pair.moved)->isTurned);
}

// No point of the roll that is free lies nearer than the one found: tried against every millimetre.
TEST(NestByHand, TheNearestPlaceIsTheNearestOfAll) {
    std::mt19937 random{8};
    const auto within = [&](std::int64_t least, std::int64_t most) {
        return Millimetres{std::uniform_int_distribution<std::int64_t>{least, most}(random)};
    };
    for (int round = 0; round < 8; ++round) {
        CuttingBench bench;
        bench.settings.decalGap = within(0, 5);
        bench.settings.edgeMargin = within(0, 4);
        bench.roll(9, within(50, 70)).width = within(40, 60);
        for (int count = 0; count < 6; ++count)
            bench.waiting.decal(within(8, 20), within(8, 20));
        const Nest nest = bench.nests().nests.front();
        const NestedDecal& moved = nest.decals[static_cast<std::size_t>(round) % nest.decals.size()];
        const Millimetres mostAcross = nest.rollWidth - nest.edge - moved.lies.acrossSize;
        const Millimetres mostAlong = nest.rollLeft - nest.gap - moved.lies.alongSize;
        const DecalPin wish{within(nest.edge.value, mostAcross.value),
                            within(nest.gap.value, mostAlong.value), moved.isTurned};

        double nearest = INFINITY;
        for (std::int64_t across = 0; across <= nest.rollWidth.value; ++across) {
            for (std::int64_t along = 0; along <= nest.rollLeft.value; ++along) {
                const Nest tried = withDecalAt(nest, moved.decal, {{across}, {along}, moved.isTurned});
                if (faultOf(tried).empty())
                    nearest = std::min(nearest, std::hypot(static_cast<double>(across - wish.across.value),
                                                           static_cast<double>(along - wish.along.value)));
            }
        }
        const std::optional<DecalPin> found = nearestFreePlace(nest, moved.decal, wish);
        ASSERT_TRUE(found);
        EXPECT_EQ(faultOf(withDecalAt(nest, moved.decal, *found)), "");
        const double reached = std::hypot(static_cast<double>((found->across - wish.across).value),
                                          static_cast<double>((found->along - wish.along).value));
        EXPECT_NEAR(reached, nearest, 1e-9);
    }
}

} // namespace
} // namespace holdfast::test
