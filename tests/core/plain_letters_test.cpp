// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/folded.h"
#include "core/trade/plain_letters.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

TEST(PlainLetters, AreThoseOfAKeyboardWithoutTheOthers) {
    EXPECT_EQ(withPlainLetters(folded("Sørensen")), "sorensen");
    EXPECT_EQ(withPlainLetters(folded("Łukasz")), "lukasz");
    EXPECT_EQ(withPlainLetters(folded("Großmann")), "grossmann");
    EXPECT_EQ(withPlainLetters(folded("Ærø")), "aero");
    EXPECT_EQ(withPlainLetters(folded("Þórður")), "thordur");
    EXPECT_EQ(withPlainLetters(folded("ışık")), "isik");
    EXPECT_EQ(withPlainLetters("plain"), "plain");
    EXPECT_EQ(withPlainLetters("ольга"), "ольга");
    EXPECT_EQ(withPlainLetters(""), "");
}

} // namespace
} // namespace holdfast
