// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a few pieces fit is held against trying every place (shortest_by_trying.h), which knows nothing of
// how two pieces lie to one another.

#include "core/cutting/strip_pairs.h"
#include "tests/core/shortest_by_trying.h"
#include "tests/core/strip_builders.h"

#include <gtest/gtest.h>

#include <numeric>

using namespace holdfast;
using namespace holdfast::strips;

namespace {

constexpr std::uint64_t kEnoughChoices = 1'000'000;

StripPairs pairsOf(const StripTask& task) {
    std::vector<StripPairs::Piece> pieces;
    for (const StripPiece& piece : task.pieces) {
        StripPairs::Piece& made = pieces.emplace_back();
        made.pinned = piece.pinned;
        for (const bool isTurned : {false, true}) {
            if (piece.pinned ? piece.pinned->isTurned == isTurned : !isTurned || piece.mayTurn)
                made.ways.push_back(extentOf(piece, isTurned));
        }
    }
    return {task.width, std::move(pieces)};
}

// Three loose pieces, some of them alike, and some pinned.
StripTask someTask(StripMaker& maker) {
    StripTask task{maker.between(12, 24), std::nullopt, {}};
    for (int piece = 0; piece < 3; ++piece) {
        if (piece > 0 && maker.oneIn(3))
            task.pieces.push_back(task.pieces.back());
        else
            task.pieces.push_back({maker.between(1, 12), maker.between(1, 12), maker.oneIn(2), std::nullopt});
    }
    for (std::int64_t pins = maker.between(0, 2); pins > 0; --pins) {
        StripPiece pinned{maker.between(1, 6), maker.between(1, 6), true, std::nullopt};
        pinned.pinned = StripPlace{maker.between(0, 12), maker.between(0, 12), maker.oneIn(2)};
        task.pieces.push_back(pinned);
        if (!checkTask(task).ok())
            task.pieces.pop_back();
    }
    return task;
}

} // namespace

TEST(StripPairs, FitsExactlyWhereTryingEveryPlaceFindsRoom) {
    StripMaker maker{2007};
    int fits = 0;
    int doesNot = 0;
    for (int round = 0; round < 600; ++round) {
        const StripTask task = someTask(maker);
        StripPairs pairs = pairsOf(task);
        const std::int64_t end = maker.between(4, 26);
        const StripPairs::Answer answer = pairs.fitsBefore(end, kEnoughChoices);
        const bool isThereRoom = fitsOn(task, end);
        ASSERT_EQ(answer, isThereRoom ? StripPairs::Answer::Fits : StripPairs::Answer::DoesNotFit)
            << "round " << round;
        (isThereRoom ? fits : doesNot) += 1;
        if (isThereRoom) {
            EXPECT_LE(pairs.length(), end);
            EXPECT_TRUE(fitsOn(task, pairs.length()));
        }
    }
    EXPECT_GT(fits, 150);
    EXPECT_GT(doesNot, 150);
}

// Cut out of a whole strip they fit it, and nothing shorter.
TEST(StripPairs, PiecesOfAStripCutUpWholeFitItAndNothingShorter) {
    StripMaker maker{2008};
    for (int round = 0; round < 40; ++round) {
        StripTask task = maker.withoutWaste(40, 30, 6, false);
        for (StripPiece& piece : task.pieces)
            piece.mayTurn = round % 2 == 0;
        StripPairs pairs = pairsOf(task);
        EXPECT_EQ(pairs.fitsBefore(30, kEnoughChoices), StripPairs::Answer::Fits) << "round " << round;
        EXPECT_EQ(pairs.length(), 30);
        EXPECT_EQ(pairs.fitsBefore(29, kEnoughChoices), StripPairs::Answer::DoesNotFit) << "round " << round;
    }
}

TEST(StripPairs, CutShortItIsNotKnown) {
    StripMaker maker{2009};
    const StripTask task = maker.withoutWaste(200, 150, 12, false);
    StripPairs pairs = pairsOf(task);
    EXPECT_EQ(pairs.fitsBefore(149, 10), StripPairs::Answer::NotKnown);
    EXPECT_EQ(pairs.choices(), 10U);
}

// Three of five squares of 6 lie one behind another where only two of them lie side by side.
TEST(StripPairs, TheLeastLengthOfAFewIsTheShortest) {
    EXPECT_EQ(leastLength(aStrip(13, {{6, 6}, {6, 6}, {6, 6}, {6, 6}, {6, 6}})), 18);
    StripMaker maker{2010};
    int longerThanByArea = 0;
    for (int round = 0; round < 200; ++round) {
        const StripTask task = someTask(maker);
        const std::int64_t least = leastLength(task);
        ASSERT_TRUE(fitsOn(task, least)) << "round " << round;
        ASSERT_FALSE(fitsOn(task, least - 1)) << "round " << round;
        const std::int64_t area = std::accumulate(
            task.pieces.begin(), task.pieces.end(), std::int64_t{0},
            [](std::int64_t sum, const StripPiece& piece) { return sum + piece.across * piece.along; });
        longerThanByArea += least > (area + task.width - 1) / task.width;
    }
    EXPECT_GT(longerThanByArea, 100);
}

// Whatever else there is to lay, the few largest of it need their room.
TEST(StripPairs, TheLargestOfManyCountAlone) {
    StripTask task = aStrip(446, {{230, 240}, {235, 228}, {240, 226}}, true);
    const std::int64_t alone = leastLength(task);
    EXPECT_GT(alone, 3 * 226 - 1);
    for (int small = 0; small < 40; ++small)
        task.pieces.push_back({10, 12, true, std::nullopt});
    EXPECT_GE(leastLength(task), alone);
}
