// SPDX-License-Identifier: GPL-3.0-or-later
// How thin the strokes of a wording get.

#include "core/orders/lettering_strokes.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

using namespace literals;

TEST(LetteringStrokes, AreEstimatedFromTheLetterHeight) {
    EXPECT_NEAR(strokeEstimate({"Hilt", Face::BookSerif}, 20_mm), 2.4, 0.01);
    EXPECT_NEAR(strokeEstimate({"Hilt", Face::Plain}, 20_mm), 3.0, 0.01);
    // What hangs below the line is not letter height; small letters alone stand for taller capitals.
    EXPECT_LT(strokeEstimate({"Hilty", Face::BookSerif}, 20_mm), 2.0);
    EXPECT_GT(strokeEstimate({"nemo", Face::BookSerif}, 20_mm), 3.0);
}

TEST(LetteringStrokes, LettersOutsideAsciiAreAsTallAsTheyAre) {
    EXPECT_NEAR(strokeEstimate({"Éire", Face::BookSerif}, 20_mm), 2.4, 0.01);
    // A cedilla hangs below the line.
    EXPECT_NEAR(strokeEstimate({"Aç", Face::BookSerif}, 26_mm), 2.4, 0.01);
}

} // namespace
} // namespace holdfast::test
