// SPDX-License-Identifier: GPL-3.0-or-later
// On decals of a shop, where waste cannot be avoided, no plain way of filling a strip is shorter than the
// search.

#include "tests/core/plain_fills.h"
#include "tests/core/strip_builders.h"

#include <gtest/gtest.h>

using namespace holdfast;
using namespace holdfast::strips;

TEST(StripPlainFills, NoneIsShorterThanTheSearch) {
    StripMaker maker{61};
    int shorter = 0;
    for (int round = 0; round < 40; ++round) {
        StripTask task{maker.between(300, 600), std::nullopt, {}};
        for (std::int64_t piece = maker.between(3, 25); piece > 0; --piece) {
            const std::int64_t across = maker.between(20, 300);
            task.pieces.push_back({across, maker.between(20, 300), false, std::nullopt});
        }
        const std::int64_t plain = plainestOf(task, false);
        const std::int64_t length = packWithin(task, rounds(600)).value().length;
        EXPECT_LE(length, plain) << "round " << round;
        shorter += length < plain;
        for (StripPiece& piece : task.pieces)
            piece.mayTurn = true;
        EXPECT_LE(packWithin(task, rounds(600)).value().length, plainestOf(task, true))
            << "with turns, round " << round;
    }
    EXPECT_GT(shorter, 20); // of 40
}
