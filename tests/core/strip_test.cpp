// SPDX-License-Identifier: GPL-3.0-or-later
// What a strip may be asked, what a packing must be, and the least length.

#include "core/cutting/strip_plan.h"
#include "tests/core/strip_builders.h"

#include <gtest/gtest.h>

using namespace holdfast;
using namespace holdfast::strips;

namespace {

std::string errorOf(const StripTask& task) {
    const Result<Done> checked = checkTask(task);
    return checked ? "" : checked.error().field + ": " + checked.error().message.english();
}

StripPacking packed(std::initializer_list<StripPlace> places, std::int64_t length) {
    StripPacking packing;
    for (const StripPlace& place : places)
        packing.places.push_back(place);
    packing.length = length;
    return packing;
}

} // namespace

TEST(Strip, SizesBelowOneNameThePiece) {
    EXPECT_EQ(errorOf(aStrip(10, {{2, 3}, {0, 3}})),
              "piece 2: Piece 2 needs a size of at least 1 both ways.");
    EXPECT_EQ(errorOf(aStrip(10, {{2, -3}})), "piece 1: Piece 1 needs a size of at least 1 both ways.");
    EXPECT_EQ(errorOf(aStrip(10, {{2, kLongestSide + 1}})), "piece 1: Piece 1 is larger than 10000000.");
    EXPECT_EQ(errorOf(aStrip(10, {{2, kLongestSide}})), "");
}

TEST(Strip, TheStripNeedsWidthAndLength) {
    EXPECT_EQ(errorOf(aStrip(0, {})), "width: The strip's width must be at least 1.");
    EXPECT_EQ(errorOf(aStrip(kLongestSide + 1, {})), "width: The strip's width may be at most 10000000.");
    StripTask task = aStrip(1, {});
    task.length = 0;
    EXPECT_EQ(errorOf(task), "length: The strip's length must be at least 1.");
}

TEST(Strip, NoMorePiecesThanTheMost) {
    StripTask task{10, std::nullopt,
                   std::vector<StripPiece>(kMostPieces, StripPiece{1, 1, false, std::nullopt})};
    EXPECT_EQ(errorOf(task), "");
    task.pieces.push_back(task.pieces.front());
    EXPECT_EQ(errorOf(task), "pieces: At most 10000 pieces are nested at once; these are 10001.");
}

TEST(Strip, PinsLieOnTheStripAndNotOverOneAnother) {
    StripTask task = aStrip(10, {{4, 3}, {4, 3}});
    task.pieces[0].pinned = StripPlace{6, 0, false};
    EXPECT_EQ(errorOf(task), "");
    task.pieces[0].pinned = StripPlace{7, 0, false};
    EXPECT_EQ(errorOf(task), "piece 1: Piece 1 is pinned off the strip.");
    task.pieces[0].pinned = StripPlace{0, -1, false};
    EXPECT_EQ(errorOf(task), "piece 1: Piece 1 is pinned off the strip.");
    task.pieces[0].pinned = StripPlace{0, 0, true};
    EXPECT_EQ(errorOf(task), "piece 1: Piece 1 is pinned turned, and may not be turned.");
    task.pieces[0].pinned = StripPlace{0, 0, false};
    task.pieces[1].pinned = StripPlace{3, 2, false};
    EXPECT_EQ(errorOf(task), "piece 2: Piece 2 is pinned over piece 1.");
    task.pieces[1].pinned = StripPlace{3, 3, false};
    EXPECT_EQ(errorOf(task), "");
    task.length = 5;
    EXPECT_EQ(errorOf(task), "piece 2: Piece 2 is pinned off the strip.");
    task.length.reset();
    task.pieces[1].pinned = StripPlace{0, std::numeric_limits<std::int64_t>::max() - 1, false};
    EXPECT_EQ(errorOf(task), "piece 2: Piece 2 is pinned off the strip.");
}

TEST(Strip, APieceOnlyTooWideIsNoError) {
    EXPECT_EQ(errorOf(aStrip(10, {{11, 3}})), "");
}

TEST(StripFault, ARightPackingHasNone) {
    const StripTask task = aStrip(10, {{4, 3}, {6, 3}, {10, 1}});
    EXPECT_EQ(faultOf(task, packed({{0, 0}, {4, 0}, {0, 3}}, 4)), std::nullopt);
}

TEST(StripFault, NamesWhatIsWrong) {
    StripTask task = aStrip(10, {{4, 3}, {6, 3}});
    EXPECT_EQ(faultOf(task, packed({{0, 0}}, 3)), "There are 1 places for 2 pieces.");
    EXPECT_EQ(faultOf(task, packed({{0, 0}, {3, 2}}, 5)), "Piece 1 lies over piece 2.");
    EXPECT_EQ(faultOf(task, packed({{0, 0}, {5, 0}}, 3)), "Piece 2 does not lie on the strip.");
    EXPECT_EQ(faultOf(task, packed({{0, 0}, {4, -1}}, 3)), "Piece 2 does not lie on the strip.");
    EXPECT_EQ(faultOf(task, packed({{0, 0}, {4, 0}}, 4)), "The length is said to be 4 and is 3.");
    EXPECT_EQ(faultOf(task, packed({{0, 0}, {4, 0, true}}, 6)), "Piece 2 is turned, and may not be.");
    task.pieces[1].pinned = StripPlace{4, 1, false};
    EXPECT_EQ(faultOf(task, packed({{0, 0}, {4, 0}}, 3)), "Piece 2 does not lie where it is pinned.");
    EXPECT_EQ(faultOf(task, packed({{0, 0}, {4, 1}}, 4)), std::nullopt);
    task.length = 3;
    EXPECT_EQ(faultOf(task, packed({{0, 0}, {4, 1}}, 4)), "Piece 2 does not lie on the strip.");
}

// The sweep against a look at every pair, on places at random of which many lie over one another.
TEST(StripFault, FindsEveryOverlapThatEveryPairWouldShow) {
    StripMaker maker{5};
    int faulty = 0;
    for (int round = 0; round < 4'000; ++round) {
        StripTask task = aStrip(12, {});
        StripPacking packing;
        for (std::int64_t piece = maker.between(1, 6); piece > 0; --piece) {
            const StripPiece made{maker.between(1, 6), maker.between(1, 5), false, std::nullopt};
            task.pieces.push_back(made);
            packing.places.push_back(
                StripPlace{maker.between(0, 12 - made.across), maker.between(0, 12), false});
            packing.length = std::max(packing.length, packing.places.back()->along + made.along);
        }
        bool isOver = false;
        for (std::size_t one = 0; one < task.pieces.size(); ++one) {
            for (std::size_t other = 0; other < one; ++other) {
                const StripPlace& a = *packing.places[one];
                const StripPlace& b = *packing.places[other];
                isOver = isOver || (a.across < b.across + task.pieces[other].across &&
                                    b.across < a.across + task.pieces[one].across &&
                                    a.along < b.along + task.pieces[other].along &&
                                    b.along < a.along + task.pieces[one].along);
            }
        }
        faulty += isOver;
        ASSERT_EQ(faultOf(task, packing).has_value(), isOver) << "round " << round;
    }
    EXPECT_GT(faulty, 1'000);
    EXPECT_LT(faulty, 3'900);
}

// On a strip of 100 two of 50 just fill a row; the third begins the next, and what would lie beyond the end
// is left out.
TEST(StripRows, ARowIsFilledToTheStripsEdge) {
    const FillFrame frame{100, 60, {}};
    const auto laid = shelvedAfter(frame, 10, {{0, 50, 30}, {1, 50, 20}, {2, 60, 20}, {3, 50, 21}});
    ASSERT_EQ(laid.size(), 3u);
    EXPECT_EQ(std::pair(laid[0].across, laid[0].along), std::pair(0l, 10l));
    EXPECT_EQ(laid[1].piece, 3u);
    EXPECT_EQ(std::pair(laid[1].across, laid[1].along), std::pair(50l, 10l));
    EXPECT_EQ(laid[2].piece, 1u);
    EXPECT_EQ(std::pair(laid[2].across, laid[2].along), std::pair(0l, 40l));
}

TEST(LeastLength, AreaLongestWideStacksAndPins) {
    EXPECT_EQ(leastLength(aStrip(10, {})), 0);
    EXPECT_EQ(leastLength(aStrip(10, {{5, 3}, {5, 3}, {1, 1}})), 4); // 31 of 10 across
    EXPECT_EQ(leastLength(aStrip(10, {{1, 9}})), 9);
    EXPECT_EQ(leastLength(aStrip(10, {{6, 3}, {6, 4}})), 7);
    EXPECT_EQ(leastLength(aStrip(10, {{4, 3}, {4, 4}, {4, 5}})), 7); // two of three lie one behind the other
    EXPECT_EQ(leastLength(aStrip(10, {{7, 4}, {3, 2}, {4, 3}})), 7); // the wide one leaves no room for the 4
    StripTask pinned = aStrip(10, {{1, 1}});
    pinned.pieces[0].pinned = StripPlace{0, 30, false};
    EXPECT_EQ(leastLength(pinned), 31);
}

// Sixteen pieces 4 wide and 5 long on a strip of 10: by area 32, but 64 across are more than six strips, so
// that seven lie one behind the other.
TEST(LeastLength, StacksOfMoreThanTwo) {
    StripTask task = aStrip(10, {});
    task.pieces.assign(16, {4, 5, false, std::nullopt});
    EXPECT_EQ(leastLength(task), 35);
}

TEST(LeastLength, TurnsCountAsTheyHelpAndWhatIsTooWideDoesNot) {
    EXPECT_EQ(leastLength(aStrip(10, {{2, 9}}, true)), 2);
    EXPECT_EQ(leastLength(aStrip(10, {{12, 3}}, true)), 12); // it fits only turned
    EXPECT_EQ(leastLength(aStrip(10, {{12, 3}, {1, 1}})), 1);
}

TEST(LeastLength, OfAStripWithoutWasteIsItsLength) {
    StripMaker maker{11};
    for (int round = 0; round < 200; ++round) {
        const std::int64_t width = maker.between(5, 300);
        const std::int64_t length = maker.between(5, 300);
        const StripTask task =
            maker.withoutWaste(width, length, static_cast<std::size_t>(maker.between(1, 60)), maker.oneIn(2));
        ASSERT_EQ(leastLength(task), length) << "round " << round;
    }
}
