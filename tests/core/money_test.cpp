// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/money.h"

#include <gtest/gtest.h>

#include <limits>
#include <random>

namespace holdfast {
namespace {

const Currency kPounds{};
const Currency kYen{.code = "JPY", .sign = "¥", .exponent = 0};
const Currency kTenths{
    .code = "XTS", .sign = "", .exponent = 1}; // ISO 4217's code for tests; no money of today has one
const Currency kDinar{.code = "KWD", .sign = "KD ", .exponent = 3};

std::int64_t minorOf(const char* text, const Currency& currency = kPounds) {
    const auto amount = parseAmount(text, currency);
    return amount ? amount->minor : std::numeric_limits<std::int64_t>::min();
}

TEST(Money, IsSpokenWithItsSignAndAllItsDecimals) {
    EXPECT_EQ(spokenAmount({2650}, kPounds), "£26.50");
    EXPECT_EQ(spokenAmount({5}, kPounds), "£0.05");
    EXPECT_EQ(spokenAmount({0}, kPounds), "£0.00");
    EXPECT_EQ(spokenAmount({-300}, kPounds), "-£3.00");
    EXPECT_EQ(plainAmount({-5}, kPounds), "-0.05");
    EXPECT_EQ(spokenAmount({1200}, kYen), "¥1,200");
    EXPECT_EQ(spokenAmount({145150}, kPounds), "£1,451.50");
    EXPECT_EQ(spokenAmount({-123456789}, kPounds), "-£1,234,567.89");
    EXPECT_EQ(groupedAmount({99999}, kPounds), "999.99");
    EXPECT_EQ(plainAmount({145150}, kPounds), "1451.50"); // for files
    EXPECT_EQ(spokenAmount({1234}, kDinar), "KD 1.234");
}

TEST(Money, IsReadAsPeopleWriteIt) {
    EXPECT_EQ(minorOf("26.5"), 2650);
    EXPECT_EQ(minorOf("26,50"), 2650);
    EXPECT_EQ(minorOf("£26.50"), 2650);
    EXPECT_EQ(minorOf(" £ 26 "), 2600);
    EXPECT_EQ(minorOf("26.50 GBP"), 2650);
    EXPECT_EQ(minorOf("-£3.00"), -300);
    EXPECT_EQ(minorOf("£-3.00"), -300);
    EXPECT_EQ(minorOf("\u22123"), -300);
    EXPECT_EQ(minorOf(".5"), 50);
    for (const char* grouped : {"1,234.50", "1.234,50", "1 234.50", "1 234,5", "£1,234.50"})
        EXPECT_EQ(minorOf(grouped), 123450) << grouped;
    EXPECT_EQ(minorOf("1,234,567"), 123456700);
    EXPECT_EQ(minorOf("1,200", kYen), 1200);
    EXPECT_EQ(minorOf("1200", kYen), 1200);
    EXPECT_EQ(minorOf("1.234", kDinar), 1234);
}

TEST(Money, OneDecimalIsReadWhereTheCurrencyHasOne) {
    EXPECT_EQ(minorOf("1.5", kTenths), 15);
    EXPECT_EQ(minorOf("1451", kTenths), 14510);
}

TEST(Money, IsNotGuessedFromWhatIsNoAmount) {
    for (const char* text : {"",
                             " ",
                             "£",
                             "-",
                             ".",
                             "26.",
                             "1.005",
                             "1,234",
                             "12,34.50",
                             "1.234.50",
                             "1,2345.50",
                             "1,234 567.00",
                             "1234,567.00",
                             ",123.00",
                             "12a",
                             "1 2",
                             "--3",
                             "1e3",
                             "nan",
                             "£3£",
                             "99999999999999999999",
                             "92233720368547758.08"})
        EXPECT_FALSE(parseAmount(text, kPounds)) << text;
    EXPECT_FALSE(parseAmount("12.5", kYen));
}

TEST(Money, ReadsBackWhatItWrote) {
    std::mt19937_64 random{7};
    for (int turn = 0; turn < 2000; ++turn) {
        const Money amount{static_cast<std::int64_t>(random()) / (1LL << (random() % 60))};
        for (const Currency& currency : {kPounds, kYen, kDinar}) {
            EXPECT_EQ(parseAmount(plainAmount(amount, currency), currency), amount);
            EXPECT_EQ(parseAmount(groupedAmount(amount, currency), currency), amount);
            EXPECT_EQ(parseAmount(spokenAmount(amount, currency), currency), amount);
        }
    }
}

TEST(Money, TheSmallestAndLargestAmountsAreWrittenWhole) {
    EXPECT_EQ(plainAmount({std::numeric_limits<std::int64_t>::min()}, kPounds), "-92233720368547758.08");
    EXPECT_EQ(plainAmount({std::numeric_limits<std::int64_t>::max()}, kPounds), "92233720368547758.07");
}

TEST(Money, DividesWithoutOverflowOnTheWay) {
    const Money much{std::numeric_limits<std::int64_t>::max()};
    EXPECT_EQ(divided(much, 1'000'000, 1'000'000, Rounding::HalfEven), much);
}

TEST(Money, RoundingIsTheSameOnBothSidesOfNothing) {
    std::mt19937 random{11};
    for (int turn = 0; turn < 5000; ++turn) {
        const Money amount{std::uniform_int_distribution<std::int64_t>{0, 100'000}(random)};
        const auto numerator = std::uniform_int_distribution<std::int64_t>{0, 50}(random);
        const auto denominator = std::uniform_int_distribution<std::int64_t>{1, 50}(random);
        for (const Rounding rounding : {Rounding::HalfUp, Rounding::HalfEven}) {
            const Money whole = divided(amount, numerator, denominator, rounding);
            EXPECT_EQ(divided(-amount, numerator, denominator, rounding), -whole);
            // Never further than half a unit from the exact share.
            const auto twiceOff = 2 * (whole.minor * denominator - amount.minor * numerator);
            EXPECT_LE(std::abs(twiceOff), denominator);
        }
    }
}

} // namespace
} // namespace holdfast
