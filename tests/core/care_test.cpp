// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/care/care_card.h"

#include "tests/core/shelf_builders.h"

#include "tests/core/english.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>

namespace holdfast::test {
namespace {

// Every label there is, on a coarse ladder of temperatures.
std::vector<CareLimits> allLimits() {
    std::vector<CareLimits> all;
    for (const int wash : {0, 30, 60})
        for (const Agitation agitation :
             {Agitation::ByHand, Agitation::VeryMild, Agitation::Mild, Agitation::Normal})
            for (const Tumble tumble : {Tumble::No, Tumble::Low, Tumble::Normal})
                for (const int iron : {0, 110, 200})
                    for (const Bleach bleach : {Bleach::No, Bleach::OxygenOnly, Bleach::Any})
                        for (const Cleaning cleaning : {Cleaning::None, Cleaning::P, Cleaning::F,
                                                        Cleaning::PW, Cleaning::FW, Cleaning::All})
                            all.push_back({wash, agitation, tumble, iron, bleach, cleaning});
    return all;
}

// What a cleaner may use: P is perchloroethylene and hydrocarbons, F hydrocarbons alone.
unsigned cleanersOf(Cleaning named) {
    const auto set = static_cast<unsigned>(named);
    return (set & 1U) != 0 ? set | 2U : set;
}

bool isMilder(const CareLimits& one, const CareLimits& other) {
    return one.washCelsius > other.washCelsius || one.agitation > other.agitation ||
           one.tumble > other.tumble || one.ironCelsius > other.ironCelsius || one.bleach > other.bleach ||
           (cleanersOf(one.cleaning) & ~cleanersOf(other.cleaning)) != 0;
}

TEST(Care, TheStricterOfTwoIsNeverMilderThanEitherAndAlikeBothWays) {
    const std::vector<CareLimits> all = allLimits();
    for (const CareLimits& one : all) {
        EXPECT_EQ(stricter(one, one), one);
        for (std::size_t other = 0; other < all.size(); other += 7) {
            const CareLimits both = stricter(one, all[other]);
            ASSERT_EQ(both, stricter(all[other], one));
            ASSERT_FALSE(isMilder(both, one));
            ASSERT_FALSE(isMilder(both, all[other]));
        }
    }
}

TEST(Care, TheStricterOfThreeDoesNotDependOnTheOrder) {
    const std::vector<CareLimits> all = allLimits();
    for (std::size_t one = 0; one < all.size(); one += 11)
        for (std::size_t other = 0; other < all.size(); other += 17)
            for (std::size_t third = 0; third < all.size(); third += 23)
                ASSERT_EQ(stricter(stricter(all[one], all[other]), all[third]),
                          stricter(all[one], stricter(all[other], all[third])));
}

TEST(Care, SaysEachAxisInWords) {
    EXPECT_EQ(english(careWords({40, Agitation::Normal, Tumble::Low, 110, Bleach::No, Cleaning::None})),
              (std::vector<std::string>{"Machine wash at 40 °C", "Tumble dry low",
                                        "Iron at up to 110 °C, without steam", "Do not bleach",
                                        "Do not dry-clean"}));
    EXPECT_EQ(english(careWords({30, Agitation::VeryMild, Tumble::No, 0, Bleach::OxygenOnly, Cleaning::PW})),
              (std::vector<std::string>{"Machine wash at 30 °C, very mild cycle", "Do not tumble dry",
                                        "Do not iron", "Bleach with oxygen only",
                                        "Dry-clean with solvent P, or professional wet cleaning"}));
    EXPECT_EQ(
        english(careWords({60, Agitation::ByHand, Tumble::Normal, 200, Bleach::Any, Cleaning::W})),
        (std::vector<std::string>{"Wash by hand at up to 40 °C", "Tumble dry at normal heat",
                                  "Iron at up to 200 °C", "Any bleach", "Professional wet cleaning only"}));
    EXPECT_EQ(careWords({0, Agitation::Normal, Tumble::No, 0, Bleach::No, Cleaning::P}).front(),
              "Do not wash");
}

bool hasLine(const CareCard& card, std::string_view part) {
    return std::ranges::any_of(card.lines, [&](const CareLine& line) {
        return line.words.english().find(part) != std::string::npos;
    });
}

std::vector<std::string> wordsOf(const CareCard& card) {
    std::vector<std::string> words;
    for (const CareLine& line : card.lines)
        words.push_back(line.words.english());
    return words;
}

const LocalTime kFriday = LocalTime{nov(13)} + Hours{10} + Minutes{30};

CareCard cardOf(std::optional<CareLimits> blank, const CareLimits& film) {
    Film dusk = aShelfFilm();
    dusk.care = film;
    const std::array<const Film*, 1> films{&dusk};
    return careCard(blank, films, kFriday, kFriday + Hours{48});
}

TEST(CareCard, SaysTheFirstWash) {
    EXPECT_EQ(cardOf(CareLimits{}, {}).firstWash,
              "Do not wash before Fri 13 Nov 10:30; better from Sun 15 Nov.");
    const Film film = aShelfFilm();
    const std::array<const Film*, 1> films{&film};
    EXPECT_EQ(careCard(CareLimits{}, films, kFriday, std::nullopt).firstWash,
              "Do not wash before Fri 13 Nov 10:30.");
    EXPECT_EQ(careCard(CareLimits{}, films, kFriday, kFriday).firstWash,
              "Do not wash before Fri 13 Nov 10:30.");
    EXPECT_EQ(careCard(CareLimits{}, films, kFriday, kFriday + Hours{6}).firstWash,
              "Do not wash before Fri 13 Nov 10:30; better from 16:30.");
    EXPECT_EQ(careCard(CareLimits{}, films, std::nullopt, std::nullopt).firstWash,
              "Let it rest before its first wash; the day is known once it is pressed.");
}

TEST(CareCard, ReadsInTheOrderOfTheWash) {
    const CareLimits usual{40, Agitation::Normal, Tumble::Low, 150, Bleach::No, Cleaning::None};
    EXPECT_EQ(wordsOf(cardOf(usual, usual)),
              (std::vector<std::string>{
                  "Turn it inside out.", "Wash cold or warm, at most 40 °C.",
                  "Mild detergent. No bleach, no softener.", "Dry on a line, or tumble dry low.",
                  "Do not iron on the decal; if it must be, through a cloth at low heat. The "
                  "cloth around it: at most 150 °C.",
                  "Do not dry-clean the decal."}));
}

TEST(CareCard, TheStricterOfBlankAndFilmStands) {
    const CareLimits tough{95, Agitation::Normal, Tumble::Normal, 200, Bleach::Any, Cleaning::All};
    const CareLimits delicate{30, Agitation::Mild, Tumble::No, 0, Bleach::No, Cleaning::None};
    EXPECT_TRUE(hasLine(cardOf(tough, delicate), "Wash cold, at most 30 °C, on a mild cycle."));
    EXPECT_TRUE(hasLine(cardOf(delicate, tough), "Wash cold, at most 30 °C, on a mild cycle."));
    EXPECT_TRUE(hasLine(cardOf(tough, delicate), "do not tumble dry"));
    EXPECT_TRUE(
        hasLine(cardOf(tough, delicate), "Never iron the decal. The cloth around it: at most 200 °C."));
    EXPECT_TRUE(hasLine(cardOf(delicate, tough), "Do not iron."));
}

TEST(CareCard, TheTradesAdviceIsTheCeilingWhereLabelsAllowMore) {
    const CareLimits tough{95, Agitation::Normal, Tumble::Normal, 200, Bleach::Any, Cleaning::All};
    const CareCard card = cardOf(tough, tough);
    EXPECT_TRUE(hasLine(card, "at most 40 °C"));
    EXPECT_TRUE(hasLine(card, "tumble dry low"));
    EXPECT_TRUE(hasLine(card, "No bleach, no softener"));
    EXPECT_TRUE(hasLine(card, "Do not dry-clean"));
}

TEST(CareCard, EveryFilmOnTheGarmentCounts) {
    Film mild = aShelfFilm();
    mild.care.washCelsius = 60;
    Film strict = aShelfFilm();
    strict.care.washCelsius = 30;
    const std::array<const Film*, 2> films{&mild, &strict};
    EXPECT_TRUE(
        hasLine(careCard(CareLimits{.washCelsius = 60}, films, kFriday, std::nullopt), "at most 30 °C"));
}

TEST(CareCard, AnUnreadLabelStillRules) {
    EXPECT_TRUE(hasLine(cardOf(std::nullopt, {}), "follow the label"));
    EXPECT_FALSE(hasLine(cardOf(CareLimits{}, {}), "follow the label"));
}

TEST(CareCard, WhatMayNotBeWashedIsNotToldWhen) {
    const CareCard card = cardOf(CareLimits{.washCelsius = 0}, {});
    EXPECT_TRUE(hasLine(card, "Do not wash."));
    EXPECT_TRUE(card.firstWash.empty());
    EXPECT_FALSE(hasLine(card, "inside out"));
}

TEST(CareCard, AGarmentWithoutADecalKeepsItsOwnLabel) {
    const CareCard card = careCard(CareLimits{.washCelsius = 60}, {}, kFriday, std::nullopt);
    EXPECT_TRUE(hasLine(card, "Machine wash at 60 °C."));
    EXPECT_FALSE(hasLine(card, "decal"));
    EXPECT_TRUE(hasLine(careCard(std::nullopt, {}, std::nullopt, std::nullopt), "Follow the label"));
}

TEST(CareCard, EachLineKnowsWhatItIsAbout) {
    const auto aboutOf = [](const CareCard& card) {
        std::vector<CareMatter> about;
        for (const CareLine& line : card.lines)
            about.push_back(line.about);
        return about;
    };
    using enum CareMatter;
    EXPECT_EQ(aboutOf(cardOf(std::nullopt, {})),
              (std::vector{InsideOut, Wash, Detergent, Dry, Iron, DryClean, Label}));
    EXPECT_EQ(aboutOf(cardOf(CareLimits{.washCelsius = 0}, {})),
              (std::vector{Wash, Detergent, Dry, Iron, DryClean}));
    const CareCard plain = careCard(CareLimits{.washCelsius = 60}, {}, kFriday, std::nullopt);
    EXPECT_EQ(aboutOf(plain), (std::vector{Wash, Dry, Iron, Detergent, DryClean}));
    EXPECT_EQ(plain.lines[3].words, "Do not bleach.");
}

TEST(CareCard, IsWordsOnly) {
    for (const CareLimits& film : allLimits()) {
        for (const std::string& line : wordsOf(cardOf(CareLimits{}, film))) {
            // Nothing beyond plain letters but the degree sign: no glyph that could stand for a care symbol.
            std::string rest = line;
            while (rest.find("°") != std::string::npos)
                rest.replace(rest.find("°"), std::string_view{"°"}.size(), "");
            EXPECT_TRUE(std::ranges::all_of(rest, [](char letter) { return letter >= ' ' && letter < 0x7f; }))
                << line;
        }
    }
}

} // namespace
} // namespace holdfast::test
