// SPDX-License-Identifier: GPL-3.0-or-later
// A sentence is read again as it was kept, and nothing else is read as one.

#include "core/trade/kept_sentence.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

const LocalDate kDay = localDate(2026, 11, 25);
const LocalTime kMoment = LocalTime{kDay} + Hours{15} + Minutes{30};

void expectKept(const Sentence& sentence) {
    const std::string text = keptForm(sentence);
    ASSERT_NE(text, "") << sentence;
    const auto again = sentenceKept(text);
    ASSERT_TRUE(again) << text;
    EXPECT_EQ(*again, sentence) << text;
}

TEST(KeptSentence, IsReadAgainWithEachKindOfValue) {
    for (const Value& value :
         {Value{"Maren \"M\" Holt \\ {n}|\n"}, Value{12}, Value{Numeral{427}}, Value{Decimal{4.25}},
          Value{Decimal{-4, 2}}, Value{kDay}, Value{DateWithYear{kDay}}, Value{Weekday{kDay}},
          Value{DayOfMonth{kDay}}, Value{DaySpan{kDay, kDay + Days{9}}},
          Value{NearSpan{{kDay, kDay + Days{9}}}}, Value{kMoment}, Value{TimeOfDay{kMoment}},
          Value{Amount{Money{-2650}, Currency{"EUR", "€", 2}}}, Value{Millimetres{280}},
          Value{InMetres{Millimetres{3400}}}, Value{Extent{Millimetres{280}, Millimetres{300}}},
          Value{Celsius{152.5}}, Value{Seconds{12}}}) {
        expectKept(said("It is {value}.", {{"value", value}}));
        EXPECT_EQ(sentenceKept(keptForm(said("It is {value}.", {{"value", value}})))->english(),
                  said("It is {value}.", {{"value", value}}).english());
    }
}

TEST(KeptSentence, IsReadAgainWithItsParts) {
    expectKept(said("Settings changed"));
    expectKept(said("Undone: {title}", {{"title", asAlone(said("Took order {order}", {{"order", 426}}))}}));
    expectKept(said("then {step}", {{"step", withinLine(said("Peel warm"))}}));
    expectKept(said("{list}", {{"list", std::vector<Sentence>{said("seams"), asItIs("as typed"), {}}}}));
}

TEST(KeptSentence, IsJson) {
    EXPECT_EQ(keptForm(said("Took order {order} at {place}",
                            {{"order", Numeral{426}}, {"place", "The \"Creek\"\tFair"}})),
              "[\"Took order {order} at {place}\",[\"order\",\"number\",426],"
              "[\"place\",\"name\",\"The \\\"Creek\\\"\\u0009Fair\"]]");
}

TEST(KeptSentence, NothingIsKeptOfWordsAsTheyAre) {
    EXPECT_EQ(keptForm(asItIs("as typed")), "");
    EXPECT_EQ(keptForm(Sentence{}), "");
}

TEST(KeptSentence, WhatIsNoneIsNotReadAsOne) {
    for (const char* text : {"",
                             "[",
                             "]",
                             "\"as typed\"",
                             "[\"a\"",
                             "[\"a\"]]",
                             "[\"a\",]",
                             "[1]",
                             "[[\"a\"]]",
                             "[\"a\",1]",
                             "[\"{a}\",[\"a\"]]",
                             "[\"{a}\",[\"a\",\"colour\",1]]",
                             "[\"{a}\",[\"a\",\"count\",\"1\"]]",
                             "[\"{a}\",[\"a\",\"count\",2000000000000000]]",
                             "[\"{a}\",[\"a\",\"day\",-1]]",
                             "[\"{a}\",[\"a\",\"decimal\",\"inf\"]]",
                             "[\"{a}\",[\"a\",\"decimal\",\"4x\"]]",
                             "[\"{a}\",[\"a\",\"decimal\",\"4\",10]]",
                             "[\"{a}\",[\"a\",\"amount\",1,\"EUR\",\"€\",5]]",
                             "[\"{a}\",[\"a\",\"parts\",3]]",
                             "[\"\\u0041\"]",
                             "[\"\\n\"]",
                             "[\"a\"] "})
        EXPECT_FALSE(sentenceKept(text)) << text;
}

TEST(KeptSentence, WhatWouldTakeLongToSayIsNotRead) {
    EXPECT_TRUE(sentenceKept("[\"{a} {a}\",[\"a\",\"count\",1]]"));
    EXPECT_FALSE(sentenceKept("[\"{a} {a} {a}\",[\"a\",\"count\",1]]"));
    std::string deep = "[\"end\"]";
    for (int depth = 0; depth < 7; ++depth)
        deep = "[\"{a}\",[\"a\",\"parts\",0," + deep + "]]";
    EXPECT_TRUE(sentenceKept(deep));
    EXPECT_FALSE(sentenceKept("[\"{a}\",[\"a\",\"parts\",0," + deep + "]]"));
    EXPECT_FALSE(sentenceKept(std::string(1'000, '[')));
    EXPECT_FALSE(sentenceKept("[\"" + std::string(8'000, 'a') + "\"]"));
}

TEST(KeptSentence, OneOfTooManyPartsInOneAnotherIsNotKept) {
    Sentence sentence = said("end");
    for (int depth = 0; depth < 8; ++depth)
        sentence = said("{part}", {{"part", std::move(sentence)}});
    EXPECT_EQ(keptForm(sentence), "");
}

} // namespace
} // namespace holdfast
