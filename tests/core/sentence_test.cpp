// SPDX-License-Identifier: GPL-3.0-or-later
// A sentence is a pattern and its values; English comes out of it, and so does any other language.

#include "core/trade/sentence.h"

#include "core/trade/language.h"

#include <gtest/gtest.h>

namespace holdfast {
namespace {

TEST(Sentence, PutsItsValuesInTheirPlaces) {
    const Sentence sentence = said(
        "{lot}: in the wash since {washed}; dry from about {dry}.",
        {{"lot", "Tee, M"}, {"washed", localDate(2026, 11, 26)}, {"dry", TimeOfDay{LocalTime{} + Hours{8}}}});
    EXPECT_EQ(sentence.english(), "Tee, M: in the wash since Thu 26 Nov; dry from about 08:00.");
}

TEST(Sentence, WritesEachKindOfValueInItsWay) {
    const LocalTime morning = LocalTime{localDate(2026, 11, 30)} + Minutes{8 * 60 + 30};
    const Currency pounds;
    const std::vector<std::pair<Value, std::string>> kinds = {
        {"R-09", "R-09"},
        {1200, "1,200"},
        {Numeral{10427}, "10427"},
        {Decimal{4.25}, "4.3"},
        {Decimal{4}, "4"},
        {Decimal{4, 1}, "4.0"},
        {dateOf(morning), "Mon 30 Nov"},
        {DateWithYear{dateOf(morning)}, "30 Nov 2026"},
        {morning, "Mon 30 Nov 08:30"},
        {TimeOfDay{morning}, "08:30"},
        {Amount{Money{2650}, pounds}, "£26.50"},
        {Millimetres{70}, "70 mm"},
        {InMetres{Millimetres{3400}}, "3.40 m"},
        {Extent{Millimetres{280}, Millimetres{300}}, "280 × 300 mm"},
        {Celsius{150}, "150 °C"},
        {Seconds{12}, "12 s"},
        {said("seams"), "seams"},
        {std::vector{said("seams"), said("a zip")}, "seams, a zip"},
    };
    for (const auto& [value, english] : kinds)
        EXPECT_EQ(said("It is {it}.", {{"it", value}}).english(), "It is " + english + ".");
}

TEST(Sentence, SaysOneOfOneOnly) {
    const auto washed = [](int count) {
        return said("Washed {n} blank|Washed {n} blanks", {{"n", count}}).english();
    };
    EXPECT_EQ(washed(0), "Washed 0 blanks");
    EXPECT_EQ(washed(1), "Washed 1 blank");
    EXPECT_EQ(washed(1200), "Washed 1,200 blanks");
}

TEST(Sentence, APartThatComesFirstHasACapitalAndANameHasNot) {
    EXPECT_EQ(said("{what} in the way", {{"what", said("seams")}}).english(), "Seams in the way");
    EXPECT_EQ(said("No {what}", {{"what", said("seams")}}).english(), "No seams");
    const Sentence fault = said("{fault}, not washed yet", {{"fault", said("cracked")}});
    EXPECT_EQ(fault.english(), "Cracked, not washed yet");
    EXPECT_EQ(said("It is {fault}", {{"fault", fault}}).english(), "It is cracked, not washed yet");
    EXPECT_EQ(said("then {step}", {{"step", withinLine(said("Peel warm"))}}).english(), "then peel warm");
    EXPECT_EQ(said("{who} confirmed it", {{"who", "rosa"}}).english(), "rosa confirmed it");
}

TEST(Sentence, WhatAPersonTypedIsNeverTakenForAPattern) {
    EXPECT_EQ(said("Note: {note}", {{"note", "{note} | 100 %"}}).english(), "Note: {note} | 100 %");
    EXPECT_EQ(asItIs("{n} or {m}|that").english(), "{n} or {m}|that");
}

// As a translation has it: the values in another order, three forms, a comma in numbers.
class Upside : public Language {
public:
    std::string pattern(std::string_view english, std::optional<std::int64_t> count) const override {
        if (english == "{who} pressed {n} tee|{who} pressed {n} tees")
            return count == 2 ? "Zwei Stück, gepresst von {who}" : "{n} Stück, gepresst von {who}";
        return Language::pattern(english, count);
    }
    std::string written(const Value& value) const override {
        const auto* number = std::get_if<Decimal>(&value.held());
        return number ? std::to_string(static_cast<int>(number->value)) + ",5" : Language::written(value);
    }
};

TEST(Sentence, IsSaidInAnotherLanguage) {
    const auto pressed = [](int count) {
        return said("{who} pressed {n} tee|{who} pressed {n} tees", {{"who", "Rosa"}, {"n", count}})
            .in(Upside{});
    };
    EXPECT_EQ(pressed(2), "Zwei Stück, gepresst von Rosa");
    EXPECT_EQ(pressed(3), "3 Stück, gepresst von Rosa");
    EXPECT_EQ(said("{a} %", {{"a", Decimal{3.5}}}).in(Upside{}), "3,5 %");
}

TEST(Sentence, IsTheSameWhereItSaysTheSame) {
    EXPECT_EQ(said("{n} left", {{"n", 2}}), said("{n} left", {{"n", 2}}));
    EXPECT_NE(said("{n} left", {{"n", 2}}), said("{n} left", {{"n", 3}}));
    EXPECT_NE(said("2 left"), said("{n} left", {{"n", 2}}));
    EXPECT_TRUE(said("{n} left", {{"n", 2}}) == std::string_view{"2 left"});
}

#ifndef NDEBUG
TEST(SentenceDeathTest, APlaceWithoutAValueIsAMistake) {
    EXPECT_DEATH(said("{lot} is damp"), "fits");
    EXPECT_DEATH(said("It is damp", {{"lot", "L"}}), "fits");
}
#endif

} // namespace
} // namespace holdfast
