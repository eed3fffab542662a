// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/cut_length.h"
#include "core/cutting/percent_shares.h"
#include "core/shop/films_to_cut.h"
#include "tests/core/cutting_builders.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

namespace holdfast::test {
namespace {

TEST(Nest, OneDecalTakesItsSizeAndAGap) {
    CuttingBench bench;
    bench.film.hasGrain = true;
    bench.roll(9, 5000_mm);
    const DecalId decal = bench.waiting.decal(200_mm, 300_mm);

    const FilmNests made = bench.nests();
    ASSERT_EQ(made.nests.size(), 1U);
    const Nest& nest = made.nests.front();
    EXPECT_EQ(nest.length, 308_mm);
    EXPECT_EQ(nest.leastLength, 308_mm);
    EXPECT_EQ(nest.find(decal)->lies, (FilmArea{6_mm, 4_mm, 200_mm, 300_mm}));
    EXPECT_EQ(nest.find(decal)->box, (FilmArea{4_mm, 2_mm, 204_mm, 304_mm}));
    EXPECT_FALSE(nest.find(decal)->isTurned);
    EXPECT_EQ(nest.aboveLeast(), 0);
}

TEST(Nest, HowFarItIsAboveTheLeastIsAShareOfTheLeast) {
    Nest nest;
    nest.length = 103_mm;
    nest.leastLength = 100_mm;
    EXPECT_DOUBLE_EQ(nest.aboveLeast(), 0.03);
    nest.leastLength = 1_mm;
    EXPECT_DOUBLE_EQ(nest.aboveLeast(), 102);
    nest.leastLength = 0_mm; // nothing lies on it
    EXPECT_EQ(nest.aboveLeast(), 0);
}

TEST(Nest, SharesTellWhatBecomesOfTheFilm) {
    CuttingBench bench;
    bench.film.hasGrain = true;
    bench.roll(9, 5000_mm);
    bench.waiting.decal(200_mm, 300_mm);
    const Nest nest = bench.nests().nests.front();

    // The box is 204 × 304 of 500 × 308 mm charged; beside the decal's gap 290 × 308 mm are left.
    const FilmShares shares = nest.shares();
    EXPECT_NEAR(shares.decals, 204.0 * 304 / (500 * 308), 1e-12);
    ASSERT_EQ(nest.offcuts.size(), 1U);
    EXPECT_EQ(nest.offcuts.front(), (FilmArea{210_mm, 0_mm, 290_mm, 308_mm}));
    EXPECT_NEAR(shares.offcuts, 290.0 * 308 / (500 * 308), 1e-12);
    EXPECT_NEAR(shares.decals + shares.offcuts + shares.waste, 1, 1e-12);
}

// Largest remainder (Hamilton's method): 53.6, 37.3 and 9.1 are 54, 37 and 9; three thirds 34, 33 and 33.
TEST(Nest, SharesInPercentAddUpToAHundred) {
    EXPECT_EQ(inPercent({0.536, 0.373, 0.091}), (PercentShares{54, 37, 9}));
    EXPECT_EQ(inPercent({0.535, 0.365, 0.1}), (PercentShares{54, 36, 10}));
    EXPECT_EQ(inPercent({1 / 3.0, 1 / 3.0, 1 / 3.0}), (PercentShares{34, 33, 33}));
    EXPECT_EQ(inPercent({1, 0, 0}), (PercentShares{100, 0, 0}));
    EXPECT_EQ(inPercent({}), (PercentShares{0, 0, 0}));
    std::mt19937 random(7);
    std::uniform_real_distribution<double> any(0, 1);
    for (int round = 0; round < 2000; ++round) {
        const double decals = any(random);
        const double offcuts = (1 - decals) * any(random);
        const FilmShares shares{decals, offcuts, 1 - decals - offcuts};
        const PercentShares whole = inPercent(shares);
        EXPECT_EQ(whole.decals + whole.offcuts + whole.lost, 100);
        EXPECT_LT(std::abs(whole.decals - shares.decals * 100), 1);
        EXPECT_LT(std::abs(whole.offcuts - shares.offcuts * 100), 1);
        EXPECT_LT(std::abs(whole.lost - shares.waste * 100), 1);
    }
}

TEST(Nest, AFilmWithAGrainIsNeverTurned) {
    CuttingBench bench;
    bench.roll(9, 5000_mm);
    bench.waiting.decal(100_mm, 480_mm);
    EXPECT_TRUE(bench.nests().nests.front().decals.front().isTurned);
    NestWish upright = bench.usual();
    upright.mayTurn = false;
    EXPECT_FALSE(bench.nests(upright).nests.front().decals.front().isTurned);
    bench.film.hasGrain = true;
    EXPECT_FALSE(bench.nests().nests.front().decals.front().isTurned);
}

TEST(Nest, WhatDoesNotFitTheFirstRollGoesToTheNext) {
    CuttingBench bench;
    bench.film.hasGrain = true;
    bench.roll(9, 320_mm, nov(20));
    bench.roll(10, 5000_mm, nov(29));
    const DecalId first = bench.waiting.decal(400_mm, 300_mm);
    const DecalId second = bench.waiting.decal(400_mm, 300_mm);

    const FilmNests made = bench.nests();
    ASSERT_EQ(made.nests.size(), 2U);
    EXPECT_TRUE(made.nests[0].find(first));
    EXPECT_TRUE(made.nests[1].find(second));
    EXPECT_TRUE(made.lack.empty());
}

TEST(Nest, TheMakersChoiceOfRollsIsKept) {
    CuttingBench bench;
    bench.roll(9, 5000_mm, nov(20));
    bench.roll(10, 5000_mm, nov(29));
    bench.waiting.decal(100_mm, 100_mm);
    NestWish wish = bench.usual();
    EXPECT_EQ(bench.nests(wish).nests.front().roll, aRoll(9).id);
    wish.rolls = {aRoll(10).id, aRoll(10).id, RollId{777}};
    EXPECT_EQ(bench.nests(wish).nests.front().roll, aRoll(10).id);
    EXPECT_EQ(bench.nests(wish).nests.size(), 1U);
}

TEST(Nest, LeftOutDecalsLieOnNoRollAndLackNothing) {
    CuttingBench bench;
    bench.roll(9, 5000_mm);
    const DecalId stays = bench.waiting.decal(100_mm, 100_mm);
    const DecalId out = bench.waiting.decal(100_mm, 100_mm);
    NestWish wish = bench.usual();
    wish.leftOut = {out};
    const FilmNests made = bench.nests(wish);
    EXPECT_TRUE(made.nests.front().find(stays));
    EXPECT_FALSE(made.nests.front().find(out));
    EXPECT_TRUE(made.lack.empty());
}

TEST(Nest, APinnedDecalStaysAndTheOthersLieAroundIt) {
    CuttingBench bench;
    bench.roll(9, 5000_mm);
    std::vector<DecalId> decals;
    for (int count = 0; count < 8; ++count)
        decals.push_back(bench.waiting.decal(150_mm, 120_mm));
    NestWish wish = bench.usual();
    wish.pins[decals[3]] = {200_mm, 250_mm, true};

    const Nest nest = bench.nests(wish).nests.front();
    EXPECT_EQ(faultOf(nest), "");
    EXPECT_EQ(nest.decals.size(), 8U);
    EXPECT_EQ(nest.find(decals[3])->lies, (FilmArea{200_mm, 250_mm, 120_mm, 150_mm}));
    EXPECT_TRUE(nest.find(decals[3])->isPinned);
    EXPECT_GE(nest.leastLength, 404_mm); // to the pinned decal's end and half a gap
}

TEST(Nest, APinThatCannotStandIsLetGo) {
    CuttingBench bench;
    bench.film.hasGrain = true;
    bench.roll(9, 5000_mm);
    const DecalId first = bench.waiting.decal(150_mm, 120_mm);
    const DecalId over = bench.waiting.decal(150_mm, 120_mm);
    const DecalId off = bench.waiting.decal(150_mm, 120_mm);
    const DecalId turned = bench.waiting.decal(150_mm, 120_mm);
    NestWish wish = bench.usual();
    wish.pins[first] = {6_mm, 4_mm, false};
    wish.pins[over] = {7_mm, 5_mm, false};
    wish.pins[off] = {400_mm, 4_mm, false};
    wish.pins[turned] = {6_mm, 400_mm, true};

    const Nest nest = bench.nests(wish).nests.front();
    EXPECT_EQ(faultOf(nest), "");
    EXPECT_EQ(nest.decals.size(), 4U);
    EXPECT_TRUE(nest.find(first)->isPinned);
    for (const DecalId free : {over, off, turned})
        EXPECT_FALSE(nest.find(free)->isPinned);
}

TEST(Nest, WhatIsTooWideForEveryRollIsNamedWithItsNumbers) {
    CuttingBench bench;
    bench.roll(9, 5000_mm);
    const DecalId wide = bench.waiting.decal(600_mm, 520_mm);
    const DecalId fits = bench.waiting.decal(100_mm, 100_mm);
    const FilmNests made = bench.nests();
    EXPECT_TRUE(made.nests.front().find(fits));
    EXPECT_EQ(made.lack.at(wide),
              "600 × 520 mm needs 532 mm of width; the widest roll chosen, R-09, has 500 mm.");
}

TEST(Nest, WhatFindsNoRoomIsNamedWithItsNumbers) {
    CuttingBench bench;
    bench.film.hasGrain = true;
    bench.roll(9, 320_mm);
    bench.waiting.decal(400_mm, 300_mm);
    const DecalId late = bench.waiting.decal(400_mm, 300_mm);
    EXPECT_EQ(bench.nests().lack.at(late),
              "400 × 300 mm finds no room: R-09 has 12 mm left after the others.");
}

TEST(Nest, SizesThatAreNoneAreNamedAndTheRestIsNested) {
    CuttingBench bench;
    bench.roll(9, 5000_mm);
    const DecalId nothing = bench.waiting.decal(0_mm, 100_mm);
    const DecalId negative = bench.waiting.decal(100_mm, {-5});
    const DecalId endless = bench.waiting.decal(100_mm, {20'000'000});
    const DecalId fits = bench.waiting.decal(100_mm, 100_mm);
    const FilmNests made = bench.nests();
    EXPECT_TRUE(made.nests.front().find(fits));
    EXPECT_EQ(made.lack.at(nothing), "A decal must be at least 1 × 1 mm; this one is 0 × 100 mm.");
    EXPECT_EQ(made.lack.at(negative), "A decal must be at least 1 × 1 mm; this one is 100 × -5 mm.");
    EXPECT_EQ(made.lack.at(endless), "No roll is long enough for 100 × 20000000 mm.");
}

TEST(Nest, WithNoRollToCutFromItSaysWhatToDo) {
    CuttingBench bench;
    bench.roll(9, 0_mm);
    bench.roll(10, 5000_mm).width = 4_mm; // narrower than its own margins
    bench.roll(11, 5000_mm).state = RollState::PutAway;
    bench.waiting.decal(100_mm, 100_mm);
    const auto made = bench.tryNests(bench.usual());
    ASSERT_FALSE(made.ok());
    EXPECT_EQ(made.error().field, "roll");
    EXPECT_EQ(made.error().message.english(),
              "No roll of Marram Soft, Dusk may be cut from: receive one, or press a test strip.");
}

TEST(Nest, ASearchIsNeverLongerThanTheNestAtOnce) {
    std::mt19937 random{20261126};
    std::uniform_int_distribution<std::int64_t> side{20, 230};
    for (int round = 0; round < 40; ++round) {
        CuttingBench bench;
        bench.film.hasGrain = round % 2 == 0;
        bench.roll(9, 40'000_mm);
        for (int count = 0; count < 25; ++count)
            bench.waiting.decal({side(random)}, {side(random)});
        StripSearch search;
        search.rounds = 30;
        const Nest atOnce = bench.nests().nests.front();
        const Nest searched = bench.nests(bench.usual(), &search).nests.front();
        EXPECT_LE(searched.length, atOnce.length);
        EXPECT_EQ(faultOf(searched), "");
        EXPECT_EQ(searched.length, bench.nests(bench.usual(), &search).nests.front().length) << "same again";
    }
}

TEST(Nest, RandomMatsAreLegalAndEveryDecalIsPlacedOrNamed) {
    std::mt19937 random{3};
    const auto within = [&](std::int64_t least, std::int64_t most) {
        return Millimetres{std::uniform_int_distribution<std::int64_t>{least, most}(random)};
    };
    for (int round = 0; round < 1500; ++round) {
        CuttingBench bench;
        bench.film.hasGrain = round % 3 == 0;
        bench.settings.decalGap = within(0, 13);
        bench.settings.edgeMargin = within(0, 20);
        const auto rolls = within(1, 3).value;
        for (int number = 1; number <= rolls; ++number)
            bench.roll(number, within(100, 1500), nov(12) + Days{within(0, 40).value}).width =
                within(60, 700);
        std::vector<DecalId> decals;
        const auto count = within(1, 12).value;
        for (int decal = 0; decal < count; ++decal)
            decals.push_back(bench.waiting.decal(within(1, 400), within(1, 400)));
        NestWish wish = bench.usual();
        if (round % 4 == 0)
            wish.pins[decals.front()] = {within(-20, 500), within(-20, 900), round % 8 == 0};

        const FilmNests made = bench.nests(wish);
        std::size_t seen = made.lack.size();
        for (const Nest& nest : made.nests) {
            ASSERT_EQ(faultOf(nest), "") << "round " << round;
            seen += nest.decals.size();
        }
        ASSERT_EQ(seen, decals.size()) << "round " << round;
    }
}

TEST(Nest, LengthOfASetIsNeverMoreThanInRows) {
    std::mt19937 random{5};
    std::uniform_int_distribution<std::int64_t> side{10, 300};
    const ShopSettings settings;
    for (int round = 0; round < 300; ++round) {
        Film film = aShelfFilm();
        film.hasGrain = round % 2 == 0;
        std::vector<Decal> decals(12);
        std::vector<const Decal*> pointers;
        for (Decal& decal : decals) {
            decal.width = {side(random)};
            decal.height = {side(random)};
            pointers.push_back(&decal);
        }
        EXPECT_LE(nestedLength(pointers, film, 500_mm, settings),
                  lengthInRows(pointers, film, 500_mm, settings));
    }
    EXPECT_EQ(nestedLength({}, aShelfFilm(), 500_mm, settings), 0_mm);
}

} // namespace
} // namespace holdfast::test
