// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/near_words.h"

#include <gtest/gtest.h>

#include <string>

namespace holdfast {
namespace {

TEST(NearWords, OneLetterIsForgiven) {
    EXPECT_TRUE(isNearlyBeginningOf("lindkvist", "lindqvist")) << "another letter";
    EXPECT_TRUE(isNearlyBeginningOf("farant", "farrant")) << "one missing";
    EXPECT_TRUE(isNearlyBeginningOf("farrrant", "farrant")) << "one too many";
    EXPECT_TRUE(isNearlyBeginningOf("frarant", "farrant")) << "two that changed places";
    EXPECT_TRUE(isNearlyBeginningOf("lindk", "lindqvist")) << "while it is typed";
    EXPECT_TRUE(isNearlyBeginningOf("lindqvist", "lindqvist"));
}

TEST(NearWords, TwoLettersAreAnotherWord) {
    EXPECT_FALSE(isNearlyBeginningOf("lindkwist", "lindqvist"));
    EXPECT_FALSE(isNearlyBeginningOf("farantx", "farrant"));
    EXPECT_FALSE(isNearlyBeginningOf("mast", "most")) << "too short to be sure";
    EXPECT_FALSE(isNearlyBeginningOf("farrant", "far"));
    EXPECT_FALSE(isNearlyBeginningOf("", ""));
}

// Every word that one slip of the hand makes of another is near it.
TEST(NearWords, EverySlipOfTheHand) {
    const std::string word = "saltmarsh";
    for (std::size_t at = 0; at < word.size(); ++at) {
        std::string slipped = word;
        slipped[at] = 'x';
        EXPECT_TRUE(isNearlyBeginningOf(slipped, word)) << slipped;
        slipped = word;
        slipped.erase(at, 1);
        EXPECT_TRUE(isNearlyBeginningOf(slipped, word)) << slipped;
        slipped = word;
        slipped.insert(at, 1, 'x');
        EXPECT_TRUE(isNearlyBeginningOf(slipped, word)) << slipped;
        if (at + 1 == word.size())
            continue;
        slipped = word;
        std::swap(slipped[at], slipped[at + 1]);
        EXPECT_TRUE(isNearlyBeginningOf(slipped, word)) << slipped;
    }
}

} // namespace
} // namespace holdfast
