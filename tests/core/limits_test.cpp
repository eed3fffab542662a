// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/limits.h"

#include <gtest/gtest.h>

#include <limits>

namespace holdfast {
namespace {

constexpr TextLimits kName{.field = "name", .what = "The name", .least = 1, .most = 5};

TEST(Limits, TextIsTrimmedAndCountedInCharacters) {
    const auto text = typedText(" \t Žofie\n", kName);
    ASSERT_TRUE(text.ok());
    EXPECT_EQ(*text, "Žofie");
    EXPECT_TRUE(typedText("布布布布布", kName).ok());
    EXPECT_TRUE(typedText("🪡🪡🪡🪡🪡", kName).ok());
    EXPECT_FALSE(typedText("布布布布布布", kName).ok());
}

TEST(Limits, SpacesOfAnyKindAreNoText) {
    for (const char* blank : {"", " ", "\r\n", "\u00A0", "\u200B\u2003", "\u3000", "\uFEFF"}) {
        const auto text = typedText(blank, kName);
        ASSERT_FALSE(text.ok());
        EXPECT_EQ(text.error(), (Error{said("The name needs 1 to 5 characters, not 0."), "name"}));
    }
    EXPECT_EQ(trimmed("\u00A0 a b \u3000"), "a b");
}

TEST(Limits, EmptyTextFitsWhereNoneIsNeeded) {
    EXPECT_EQ(*typedText("  ", {.field = "phone", .what = "The phone", .least = 0, .most = 3}), "");
    EXPECT_EQ(typedText("1234", {.field = "phone", .what = "The phone", .least = 0, .most = 3})
                  .error()
                  .message.english(),
              "The phone may have up to 3 characters, not 4.");
}

TEST(Limits, ControlCharactersAreRefused) {
    using namespace std::string_view_literals;
    for (const std::string_view text : {"a\0b"sv, "a\x1b["sv, "a\x7fz"sv, "a\u0080b"sv, "a\u0085b"sv,
                                        "a\u009fb"sv, "a\u2028b"sv, "a\nb"sv, "a\tb"sv})
        EXPECT_FALSE(typedText(text, kName).ok());
    EXPECT_TRUE(
        typedText("a\nb", {.field = "note", .what = "The note", .most = 9, .mayBreakLines = true}).ok());
    EXPECT_FALSE(
        typedText("a\x01z", {.field = "note", .what = "The note", .most = 9, .mayBreakLines = true}).ok());
}

TEST(Limits, BytesThatAreNoUtf8AreRefused) {
    using namespace std::string_view_literals;
    for (const std::string_view text : {"a\xC3"sv, "\x80"sv, "\xC0\xAF"sv, "\xE0\x80\xAF"sv, "\xED\xA0\x80"sv,
                                        "\xF4\x90\x80\x80"sv, "\xFF"sv, "\xE2\x82"sv, "a\xC3 b"sv}) {
        EXPECT_FALSE(characterCount(text));
        EXPECT_EQ(typedText(text, kName).error().message.english(), "The name has bytes that are not text.");
    }
    EXPECT_EQ(characterCount("Zoë"), 3U);
    EXPECT_EQ(characterCount("\U0010FFFF"), 1U);
}

TEST(Limits, NumberMustLieBetweenItsEnds) {
    const NumberLimits width{
        .field = "width", .what = phrase("The width"), .least = 20, .most = 2000, .unit = " mm"};
    EXPECT_TRUE(within(20, width).ok());
    EXPECT_TRUE(within(2000, width).ok());
    EXPECT_EQ(within(19, width).error(),
              (Error{said("The width must be 20 to 2,000 mm, not 19 mm."), "width"}));
    EXPECT_EQ(within(INT64_MIN, width).error().message.english(),
              "The width must be 20 to 2,000 mm, not −9,223,372,036,854,775,808 mm.");
}

TEST(Limits, MeasureThatIsNoNumberIsRefused) {
    const NumberLimits warmth{
        .field = "warmth", .what = phrase("The warmth"), .least = -40, .most = 80, .unit = " °C"};
    EXPECT_TRUE(measuredWithin(-40, warmth).ok());
    EXPECT_TRUE(measuredWithin(80, warmth).ok());
    EXPECT_EQ(measuredWithin(80.5, warmth).error().message.english(),
              "The warmth must be −40 to 80 °C, not 80.5 °C.");
    for (const double odd :
         {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
          -std::numeric_limits<double>::infinity(), std::numeric_limits<double>::max()})
        EXPECT_FALSE(measuredWithin(odd, warmth).ok());
}

TEST(Limits, FirstErrorIsTheFirstCheckThatFailed) {
    EXPECT_FALSE(firstError({Done{}, Done{}}));
    EXPECT_EQ(firstError({Done{}, fieldError("a", said("one")), fieldError("b", said("two"))})->field, "a");
}

TEST(Limits, NumbersAreWrittenTheSameOnAnyMachine) {
    EXPECT_EQ(groupedNumber(0), "0");
    EXPECT_EQ(groupedNumber(999), "999");
    EXPECT_EQ(groupedNumber(1'000'000), "1,000,000");
    EXPECT_EQ(groupedNumber(-1200), "−1,200");
    EXPECT_EQ(decimalNumber(19, 1), "19.0");
    EXPECT_EQ(decimalNumber(-3.456, 2), "−3.46");
    EXPECT_EQ(decimalNumber(-0.01, 1), "0.0");
}

} // namespace
} // namespace holdfast
