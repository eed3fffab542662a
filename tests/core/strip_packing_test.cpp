// SPDX-License-Identifier: GPL-3.0-or-later
// Single packings: what is at the edge of what may be asked, precedence, stopping, telling.

#include "core/cutting/strip_search.h"
#include "tests/core/strip_builders.h"

#include <gtest/gtest.h>

#include <chrono>
#include <utility>

using namespace holdfast;
using namespace holdfast::strips;

TEST(StripPacking, NothingToPackIsNoLength) {
    const StripPacking packing = packWithin(aStrip(10, {}), rounds(10)).value();
    EXPECT_EQ(packing.length, 0);
    EXPECT_TRUE(packing.places.empty());
}

TEST(StripPacking, OnePieceOfOne) {
    const StripPacking packing = packAtOnce(aStrip(1, {{1, 1}})).value();
    EXPECT_EQ(packing.length, 1);
    EXPECT_EQ(packing.places[0], StripPlace{});
}

TEST(StripPacking, TooWideFindsNoPlaceAndTheOthersDo) {
    const StripPacking packing = packWithin(aStrip(10, {{11, 2}, {3, 2}, {12, 12}}), rounds(100)).value();
    EXPECT_FALSE(packing.places[0]);
    EXPECT_TRUE(packing.places[1]);
    EXPECT_FALSE(packing.places[2]);
    EXPECT_EQ(packing.length, 2);
}

TEST(StripPacking, TooWideLiesTurnedWhereItMay) {
    const StripTask task = aStrip(10, {{11, 2}}, true);
    const StripPacking packing = packAtOnce(task).value();
    EXPECT_EQ(packing.places[0], (StripPlace{0, 0, true}));
    EXPECT_EQ(packing.length, 11);
}

TEST(StripPacking, ErrorsAreThoseOfTheCheck) {
    EXPECT_EQ(packAtOnce(aStrip(10, {{0, 1}})).error().field, "piece 1");
    EXPECT_EQ(packWithin(aStrip(0, {{1, 1}}), rounds(1)).error().field, "width");
}

TEST(StripPacking, LargestSidesDoNotOverflow) {
    StripTask task = aStrip(kLongestSide, {});
    for (int piece = 0; piece < 60; ++piece)
        task.pieces.push_back({kLongestSide, kLongestSide, true, std::nullopt});
    task.pieces[0].pinned = StripPlace{0, kLongestSide, false};
    const StripPacking packing = packWithin(task, rounds(200)).value();
    EXPECT_EQ(faultOf(task, packing), std::nullopt);
    EXPECT_EQ(packing.length, 60 * kLongestSide);
}

TEST(StripPacking, GrowsAroundAPinAndFillsBeneathIt) {
    StripTask task = aStrip(10, {{10, 1}, {10, 4}, {10, 3}});
    task.pieces[0].pinned = StripPlace{0, 4, false};
    const StripPacking packing = packAtOnce(task).value();
    EXPECT_EQ(faultOf(task, packing), std::nullopt);
    EXPECT_EQ(packing.length, 8);
    EXPECT_EQ(packing.places[1]->along, 0); // exactly beneath it
}

TEST(StripPacking, WhereNotAllFitTheEarlierComeFirst) {
    StripTask task = aStrip(10, {{10, 3}, {10, 4}, {10, 9}, {10, 3}, {5, 1}});
    task.length = 10;
    const StripPacking packing = packWithin(task, rounds(500)).value();
    EXPECT_TRUE(packing.places[0]);
    EXPECT_TRUE(packing.places[1]);
    EXPECT_FALSE(packing.places[2]); // it is longer than what is left
    EXPECT_TRUE(packing.places[3]);
    EXPECT_FALSE(packing.places[4]); // the strip is full
    EXPECT_EQ(packing.length, 10);
}

// Found by hand: 6x6 and 4x6 beside one another, 10x4 behind them; laid by size alone one of the first three
// is left.
TEST(StripPacking, AnEarlierPieceIsWorthManyLaterOnes) {
    StripTask task = aStrip(10, {{6, 6}, {4, 6}, {10, 4}, {5, 5}, {5, 5}, {5, 5}, {5, 5}});
    task.length = 10;
    const StripPacking packing = packWithin(task, rounds(2'000)).value();
    EXPECT_TRUE(packing.places[0] && packing.places[1] && packing.places[2]);
    EXPECT_EQ(packing.placed(), 3U);
}

TEST(StripPacking, LooksForAllOnAStripWithoutRoomToSpare) {
    StripMaker maker{21};
    int complete = 0;
    for (int round = 0; round < 20; ++round) {
        StripTask task = maker.withoutWaste(30, 30, 12, false);
        task.length = 30;
        const StripPacking packing = packWithin(task, rounds(20'000)).value();
        ASSERT_EQ(faultOf(task, packing), std::nullopt);
        complete += packing.placed() == task.pieces.size();
    }
    EXPECT_GE(complete, 19);
}

TEST(StripPacking, TellsEachBetterOneAndEndsWithTheLast) {
    StripMaker maker{8};
    const StripTask task = maker.withoutWaste(60, 60, 40, false);
    std::vector<StripPacking> told;
    StripSearch search = rounds(4'000);
    search.improved = [&](const StripPacking& packing) { told.push_back(packing); };
    const StripPacking packing = packWithin(task, search).value();
    ASSERT_GT(told.size(), 1U);
    EXPECT_EQ(told.front().length, packAtOnce(task).value().length);
    for (std::size_t next = 1; next < told.size(); ++next) {
        EXPECT_TRUE(isWorse(told[next - 1], told[next]));
        EXPECT_EQ(faultOf(task, told[next]), std::nullopt);
    }
    EXPECT_EQ(told.back().length, packing.length);
}

TEST(StripPacking, EndsByItselfAtTheLeastLength) {
    StripSearch search;
    search.budget = std::chrono::hours{1};
    EXPECT_EQ(packWithin(aStrip(10, {{5, 4}, {5, 4}, {10, 2}}), search).value().length, 6);
}

TEST(StripPacking, KeepsToItsWork) {
    StripMaker maker{4};
    const StripTask task = maker.withoutWaste(400, 400, 150, false);
    for (const std::uint64_t work : {0ULL, 15'000ULL, 300'000ULL}) {
        std::uint64_t laid = 0;
        StripSearch search;
        search.work = work;
        search.worked = [&](std::uint64_t pieces) { laid += pieces; };
        EXPECT_EQ(faultOf(task, packWithin(task, search).value()), std::nullopt);
        EXPECT_LE(laid, work + task.pieces.size());
        EXPECT_GE(laid + 2 * StripBudget::kWorkBetweenAsking, work);
    }
}

// However busy the machine: what was asked for is counted in work and not in time.
TEST(StripPacking, TheSameWorkGivesTheSamePlaces) {
    StripMaker maker{6};
    const StripTask task = maker.withoutWaste(90, 90, 60, false);
    StripSearch search;
    search.work = 600'000;
    search.budget = std::chrono::milliseconds{1}; // of no account
    const StripPacking one = packWithin(task, search).value();
    search.budget = std::chrono::hours{1};
    EXPECT_EQ(packWithin(task, search).value().places, one.places);
}

// The first packing too, wherever it is: once it was told to stop it lays the rest in rows and asks no more
// than each of its loops does once.
TEST(StripPacking, AnswersAStopAtOnceWherever) {
    std::vector<StripTask> tasks{manyPieces(2'000, true), manyPieces(2'000, true),
                                 pinsAndPieces(1'000, 3'500)};
    tasks[1].length = 12'000;
    for (const StripTask& task : tasks) {
        for (const int asksBefore : {0, 40, 300}) {
            for (const bool isFirstOnly : {false, true}) {
                int asked = 0;
                StripSearch search;
                search.work = 50'000;
                search.shouldStop = [&] { return ++asked > asksBefore; };
                const StripPacking packing = isFirstOnly ? packAtOnce(task, search.shouldStop).value()
                                                         : packWithin(task, search).value();
                EXPECT_LE(asked, asksBefore + 40);
                EXPECT_EQ(faultOf(task, packing), std::nullopt);
                EXPECT_GT(packing.placed(), task.length ? 500 : task.pieces.size() - 1);
            }
        }
    }
}

// Work between two questions is bounded: every so many pieces laid or gaps given up, in the first packing and
// in the search. How long that takes stands in the bench.
TEST(StripPacking, IsAskedOftenWhetherToStop) {
    for (const StripTask& task : {manyPieces(600, true), pinsAndPieces(250, 600)}) {
        std::uint64_t asked = 0;
        const auto count = [&] { return ++asked == 0; };
        EXPECT_TRUE(packAtOnce(task, count).ok());
        EXPECT_GE(asked, task.pieces.size() / 32) << "one order alone lays each piece once";
        const std::uint64_t first = std::exchange(asked, 0);
        std::uint64_t laid = 0;
        StripSearch search;
        search.work = 20'000;
        search.shouldStop = count;
        search.worked = [&](std::uint64_t pieces) { laid += pieces; };
        EXPECT_TRUE(packWithin(task, search).ok());
        EXPECT_GE(asked - first, laid / StripBudget::kWorkBetweenAsking / 2);
        EXPECT_GT(laid, 0U);
    }
}

// What is promised first is cut first, however little time there was.
TEST(StripPacking, StoppedAtOnceOnAStripThatEndsTheEarlierPiecesLie) {
    StripTask task = manyPieces(500, true);
    task.length = 3'000;
    StripSearch search;
    search.shouldStop = [] { return true; };
    const StripPacking packing = packWithin(task, search).value();
    EXPECT_EQ(faultOf(task, packing), std::nullopt);
    const auto isLaid = [](const std::optional<StripPlace>& place) { return place.has_value(); };
    const auto firstLeft = std::ranges::find_if_not(packing.places, isLaid);
    EXPECT_GT(firstLeft - packing.places.begin(), 20);
    EXPECT_NE(firstLeft, packing.places.end());
    EXPECT_TRUE(std::none_of(firstLeft, packing.places.end(), isLaid));
}

TEST(StripPacking, TenThousandPiecesFillTheStripWell) {
    const StripTask task = manyPieces(kMostPieces, true);
    const StripPacking packing = packAtOnce(task).value();
    EXPECT_EQ(faultOf(task, packing), std::nullopt);
    EXPECT_EQ(packing.placed(), kMostPieces);
    EXPECT_LT(static_cast<double>(packing.length), 1.01 * static_cast<double>(leastLength(task)));
}
