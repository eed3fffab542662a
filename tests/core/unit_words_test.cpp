// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/unit_words.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

using namespace holdfast::literals;

TEST(UnitWords, NumbersHaveOneDecimalOrNone) {
    EXPECT_EQ(numberWords(4), "4");
    EXPECT_EQ(numberWords(4.25), "4.3");
    EXPECT_EQ(numberWords(3.96), "4");
    EXPECT_EQ(numberWords(-4.3), "-4.3");
    EXPECT_EQ(numberWords(-0.01), "0");
}

TEST(UnitWords, AbsurdNumbersAreNoCrash) {
    EXPECT_EQ(numberWords(1e300), "?");
}

TEST(UnitWords, UnitsStandBehindTheirNumbers) {
    EXPECT_EQ(temperatureWords(150_C), "150 °C");
    EXPECT_EQ(temperatureWords(152.5_C), "152.5 °C");
    EXPECT_EQ(lengthWords(70_mm), "70 mm");
    EXPECT_EQ(sizeWords(280_mm, 90_mm), "280 × 90 mm");
    EXPECT_EQ(secondsWords(Seconds{12}), "12 s");
    EXPECT_EQ(bandWords(30, 50, "%"), "30–50 %");
}

TEST(UnitWords, OneIsNoPlural) {
    EXPECT_EQ(countWords(0, "day"), "0 days");
    EXPECT_EQ(countWords(1, "day"), "1 day");
    EXPECT_EQ(countWords(6, "day"), "6 days");
}

TEST(UnitWords, CapitalIsGivenToPlainLettersOnly) {
    EXPECT_EQ(withCapital("seams"), "Seams");
    EXPECT_EQ(withCapital("Seams"), "Seams");
    EXPECT_EQ(withCapital("été"), "été");
    EXPECT_EQ(withCapital(""), "");
}

} // namespace
} // namespace holdfast::test
