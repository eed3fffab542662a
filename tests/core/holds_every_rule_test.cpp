// SPDX-License-Identifier: GPL-3.0-or-later
// Every rule once: a shop that raises it, with its grade and the act that frees it, and the same shop after
// that act, where the rule is silent.

#include "core/holds/finding.h"
#include "tests/core/builders.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace holdfast::test {
namespace {

struct RuleCase {
    Rule rule;
    Grade grade;
    std::optional<FreeingAct> act; // the likeliest; none where nothing is needed
    ShopBuilder raised;
    ShopBuilder freed;
};

ShopBuilder shopWith(const GarmentBuilder& garment) {
    return aShop().with(garment);
}

ShopBuilder usualShop() {
    return shopWith(aGarment());
}

BlankLot aFurtherLot() {
    BlankLot lot;
    lot.id = BlankLotId{7};
    lot.style = kTee;
    lot.size = "M";
    lot.colour = kMoss;
    lot.receivedOn = localDate(2026, 11, 20);
    lot.unitsLeft = 3;
    return lot;
}

// Beside the zip, as it is decorated.
GarmentBuilder onZipHoodie(std::optional<WayRound> way) {
    GarmentBuilder garment = aGarment().onZipHoodie(way);
    return garment.decal([](Decal& decal) {
        decal.placement = Placement::LeftChest;
        decal.below = 70_mm;
        decal.aside = 105_mm;
        decal.width = 90_mm;
        decal.height = 90_mm;
    });
}

GarmentBuilder twoLayers(const GarmentBuilder::Change<Film>& lower,
                         const GarmentBuilder::Change<Film>& upper) {
    return aGarment().film(lower).withOtherFilm(upper).withDecal([](Decal& decal) {
        decal.film = kOtherFilm;
        decal.cutFrom = kOtherRoll;
    });
}

std::vector<RuleCase> blankCases() {
    return {
        {Rule::BlankUnwashed, Grade::Hold, FreeingAct::WashBlank, shopWith(aGarment().onUnwashedTee()),
         usualShop()},
        {Rule::BlankDamp, Grade::Hold, FreeingAct::MarkDry, shopWith(aGarment().onDampTee()), usualShop()},
        {Rule::SoftenerLeft, Grade::Hold, FreeingAct::WashBlank, shopWith(aGarment().onSoftenedTee()),
         usualShop()},
        {Rule::LabelUnread, Grade::Hold, FreeingAct::ReadLabel, shopWith(aGarment().onUnreadLabel()),
         usualShop()},
        {Rule::BlankOutOfStock, Grade::Hold, FreeingAct::ReceiveBlanks, shopWith(aGarment().onNoBlank()),
         usualShop()},
        {Rule::BlankOutOfStock, Grade::Hold, FreeingAct::ChooseBlank,
         shopWith(aGarment().onNoBlank()).withLot(aFurtherLot()),
         shopWith(aGarment().garment([](Garment& garment) {
             garment.lot = BlankLotId{7};
         })).withLot(aFurtherLot())},
        {Rule::BlankShrank, Grade::Caution, FreeingAct::ChooseBlank,
         shopWith(aGarment().lot(
             [](BlankLot& lot) { lot.shrinkage = Shrinkage{500_mm, 474_mm, 350_mm, 350_mm}; })),
         usualShop()},
        {Rule::ObstacleUnsolved, Grade::Hold, FreeingAct::ChooseWayRound, shopWith(onZipHoodie(std::nullopt)),
         shopWith(onZipHoodie(WayRound::Pillow))},
        {Rule::ObstacleUnsolved, Grade::Hold, FreeingAct::ChooseWayRound,
         shopWith(onZipHoodie(WayRound::SmallPlaten)),
         shopWith(onZipHoodie(WayRound::SmallPlaten)).press([](Press& press) {
             press.hasSmallPlaten = true;
         })},
        {Rule::ObstacleSolved, Grade::StepAdded, FreeingAct::ChooseWayRound,
         shopWith(onZipHoodie(WayRound::Pillow)), usualShop()},
    };
}

std::vector<RuleCase> filmCases() {
    return {
        {Rule::FilmUnfitStretch, Grade::Hold, FreeingAct::ChooseFilm,
         shopWith(aGarment().label([](FabricLabel& label) { label.stretch = Stretch::High; })),
         shopWith(
             aGarment().label([](FabricLabel& label) { label.stretch = Stretch::High; }).film([](Film& film) {
                 film.follows = Stretch::High;
             }))},
        {Rule::FilmUnfitCoating, Grade::Hold, FreeingAct::ChooseFilm,
         shopWith(aGarment().label([](FabricLabel& label) { label.coating = Coating::Waxed; })),
         shopWith(aGarment()
                      .label([](FabricLabel& label) { label.coating = Coating::Waxed; })
                      .film([](Film& film) { film.gripsCoated = true; }))},
        {Rule::FilmUnfitHeat, Grade::Hold, FreeingAct::ChooseFilm,
         shopWith(aGarment().label([](FabricLabel& label) { label.highestSafe = 149_C; })),
         shopWith(aGarment()
                      .label([](FabricLabel& label) { label.highestSafe = 149_C; })
                      .recipe([](Recipe& recipe) { recipe.temperature = 149_C; }))},
        {Rule::FilmUnfitHeat, Grade::Hold, FreeingAct::ChooseFilm,
         shopWith(aGarment().label([](FabricLabel& label) {
             label.highestSafe.reset();
             label.care.ironCelsius = 0;
         })),
         shopWith(aGarment().label([](FabricLabel& label) {
             label.highestSafe.reset();
             label.care.ironCelsius = 150;
         }))},
        {Rule::FilmUnfitFibre, Grade::Hold, FreeingAct::ChooseFilm,
         shopWith(aGarment().film([](Film& film) { film.notFor = {Fibre::Silk, Fibre::Cotton}; })),
         shopWith(aGarment().film([](Film& film) { film.notFor = {Fibre::Silk}; }))},
        {Rule::RecipeMissing, Grade::Hold, FreeingAct::EnterRecipe,
         shopWith(aGarment().film([](Film& film) { film.recipe.reset(); })), usualShop()},
        {Rule::RecipeUnconfirmed, Grade::Caution, FreeingAct::ConfirmRecipe,
         shopWith(aGarment().recipe([](Recipe& recipe) { recipe.confirmedBy.clear(); })), usualShop()},
        {Rule::LayersNotAllowed, Grade::Hold, FreeingAct::ReorderLayers,
         shopWith(twoLayers([](Film& lower) { lower.mayLieUnder = false; }, [](Film&) {})),
         // Turned over, the other film lies below.
         shopWith(twoLayers([](Film&) {}, [](Film& upper) { upper.mayLieUnder = false; }))},
        {Rule::FilmsDisagree, Grade::Hold, FreeingAct::ChooseFilm,
         shopWith(twoLayers([](Film&) {}, [](Film& upper) { upper.recipe->temperature = 161_C; })),
         shopWith(twoLayers([](Film&) {}, [](Film& upper) { upper.recipe->temperature = 160_C; }))},
    };
}

std::vector<RuleCase> rollCases() {
    return {
        {Rule::NoRollFits, Grade::Hold, FreeingAct::ReceiveRoll,
         shopWith(aGarment().lacking("No roll of Marram Soft, Dusk on the shelf.")),
         shopWith(aGarment().uncut())},
        {Rule::RollPastAge, Grade::Hold, FreeingAct::TestStrip,
         shopWith(aGarment().condition([](RollCondition& roll) { roll.useBy = localDate(2026, 11, 24); })),
         // The passed strip moves the use-by.
         shopWith(aGarment().condition([](RollCondition& roll) {
             roll.useBy = localDate(2026, 12, 25);
             roll.extendedByStrip = true;
         }))},
        {Rule::RollBadlyKept, Grade::Hold, FreeingAct::TestStrip,
         shopWith(aGarment().condition([](RollCondition& roll) { roll.humidityHoursOutside = 73; })),
         shopWith(aGarment().condition([](RollCondition& roll) { roll.humidityHoursOutside = 0; }))},
        {Rule::RollBadlyKept, Grade::Hold, FreeingAct::MoveRoll,
         shopWith(aGarment().uncut().condition([](RollCondition& roll) {
             roll.latest->humidity = 58_rh;
             roll.humidityOutsideNow = true;
         })),
         shopWith(aGarment().uncut())},
        {Rule::StripFailed, Grade::Hold, FreeingAct::ReceiveRoll,
         shopWith(aGarment().roll([](FilmRoll& roll) {
             roll.testStrips = {{daysAgo(9), true, Days{30}, ""}, {daysAgo(1), false, Days{0}, ""}};
         })),
         shopWith(aGarment().roll([](FilmRoll& roll) {
             roll.testStrips = {{daysAgo(9), false, Days{0}, ""}, {daysAgo(1), true, Days{30}, ""}};
         }))},
        {Rule::RollUnplaced, Grade::Caution, FreeingAct::MoveRoll,
         shopWith(aGarment().condition([](RollCondition& roll) { roll.hasPlace = false; })), usualShop()},
        {Rule::ReadingsStale, Grade::Caution, FreeingAct::RecordReading,
         shopWith(aGarment().condition([](RollCondition& roll) { roll.readingIsStale = true; })),
         usualShop()},
    };
}

// Capitals of the serif face: 0.12 × 16 mm is less than 2 mm, 0.12 × 17 mm is more.
ShopBuilder lettersHigh(Millimetres high) {
    return shopWith(aGarment()
                        .decal([high](Decal& decal) {
                            decal.content = Wording{"HILT", Face::BookSerif};
                            decal.width = {3 * high.value};
                            decal.height = high;
                        })
                        .uncut());
}

std::vector<RuleCase> pressCases() {
    return {
        {Rule::NoPress, Grade::Hold, FreeingAct::AddPress, usualShop().withoutPress(), usualShop()},
        {Rule::PressCheckOverdue, Grade::Caution, FreeingAct::CheckPress, usualShop().withoutCheck(),
         usualShop()},
        {Rule::PressCheckOverdue, Grade::Caution, FreeingAct::CheckPress,
         usualShop().check([](PressCheck& check) { check.at = daysAgo(30) - Seconds{1}; }),
         usualShop().check([](PressCheck& check) { check.at = daysAgo(30); })},
        {Rule::PressOff, Grade::Hold, FreeingAct::CheckPress,
         usualShop().check([](PressCheck& check) { check.readings = {146.5_C, 147_C, 146_C}; }),
         usualShop().check([](PressCheck& check) { check.readings = {147_C, 147_C, 147_C}; })},
        {Rule::PressUneven, Grade::Hold, FreeingAct::CheckPress,
         usualShop().check([](PressCheck& check) { check.readings = {150_C, 147_C, 153.5_C}; }),
         usualShop().check([](PressCheck& check) { check.readings = {150_C, 147_C, 153_C}; })},
        {Rule::DecalBeyondPlaten, Grade::StepAdded, std::nullopt,
         shopWith(aGarment().decal([](Decal& decal) { decal.width = 400_mm; })),
         shopWith(aGarment().decal([](Decal& decal) { decal.width = 380_mm; }))},
        {Rule::DecalOffCloth, Grade::Caution, std::nullopt,
         shopWith(aGarment().decal([](Decal& decal) { decal.aside = 500_mm; })), usualShop()},
        {Rule::LetteringTooSmall, Grade::Caution, std::nullopt, lettersHigh(16_mm), lettersHigh(17_mm)},
    };
}

std::vector<RuleCase> orderCases() {
    const auto childrensTee = [](BlankStyle& style) { style.forChild = true; };
    const auto depositOf = [](std::int64_t paid) {
        return aGarment().order([paid](Order& order) { order.paid = {paid}; });
    };
    const auto halfFirst = [](bool holds) {
        return [holds](ShopSettings& settings) {
            settings.depositPercent = 50;
            settings.depositHolds = holds;
        };
    };
    return {
        {Rule::WordingUnconfirmed, Grade::Hold, FreeingAct::ConfirmWording,
         shopWith(aGarment().decal([](Decal& decal) { decal.confirmedBy.clear(); })), usualShop()},
        {Rule::DepositShort, Grade::Hold, FreeingAct::TakePayment,
         shopWith(depositOf(1324)).settings(halfFirst(true)),
         shopWith(depositOf(1350)).settings(halfFirst(true))},
        {Rule::DepositShort, Grade::Caution, FreeingAct::TakePayment,
         shopWith(depositOf(0)).settings(halfFirst(false)), shopWith(depositOf(0))},
        {Rule::LocalLaw, Grade::Caution, FreeingAct::NoteLawChecked, shopWith(aGarment().style(childrensTee)),
         shopWith(aGarment().style(childrensTee).style([](BlankStyle& style) {
             style.lawCheckedBy = "maker, 2 Nov";
         }))},
    };
}

std::vector<RuleCase> allCases() {
    std::vector<RuleCase> all;
    for (auto cases : {blankCases(), filmCases(), rollCases(), pressCases(), orderCases()})
        std::ranges::move(cases, std::back_inserter(all));
    return all;
}

TEST(HoldsEveryRule, UsualGarmentHasNothingToSay) {
    const TestShop shop = usualShop().build();
    EXPECT_TRUE(shop.findings().empty());
}

TEST(HoldsEveryRule, EachIsRaisedWithItsGradeAndTheActThatFreesIt) {
    for (const RuleCase& each : allCases()) {
        SCOPED_TRACE(ruleCode(each.rule));
        const TestShop shop = each.raised.build();
        const auto finding = shop.finding(each.rule);
        ASSERT_TRUE(finding.has_value());
        EXPECT_EQ(finding->grade, each.grade);
        EXPECT_FALSE(finding->isWaived);
        if (each.act)
            EXPECT_TRUE(!finding->frees.empty() && finding->frees.front() == *each.act)
                << (finding->frees.empty() ? phrase("nothing") : freeingWords(finding->frees.front()));
        else
            EXPECT_TRUE(finding->frees.empty());
    }
}

TEST(HoldsEveryRule, EachIsSilentOnceFreed) {
    for (const RuleCase& each : allCases()) {
        SCOPED_TRACE(ruleCode(each.rule));
        const TestShop shop = each.freed.build();
        EXPECT_FALSE(shop.raises(each.rule));
    }
}

TEST(HoldsEveryRule, RaisedRulesAreTheOnlyOnesRaised) {
    for (const RuleCase& each : allCases()) {
        SCOPED_TRACE(ruleCode(each.rule));
        const TestShop shop = each.raised.build();
        for (const Finding& finding : shop.findings())
            EXPECT_EQ(ruleCode(finding.rule), ruleCode(each.rule));
    }
}

TEST(HoldsEveryRule, NoRuleIsForgotten) {
    std::set<Rule> raised;
    for (const RuleCase& each : allCases())
        raised.insert(each.rule);
    for (int rule = 0; rule <= static_cast<int>(Rule::LetteringTooSmall); ++rule)
        EXPECT_TRUE(raised.contains(static_cast<Rule>(rule))) << ruleCode(static_cast<Rule>(rule));
}

std::size_t wordsIn(const std::string& text) {
    return static_cast<std::size_t>(std::ranges::count(text, ' ')) + 1;
}

TEST(HoldsEveryRule, WhatIsShortAndWhyIsASentence) {
    for (const RuleCase& each : allCases()) {
        const TestShop shop = each.raised.build();
        for (const Finding& finding : shop.findings()) {
            SCOPED_TRACE(finding.what.english() + " | " + finding.why.english());
            EXPECT_FALSE(finding.what.empty());
            EXPECT_LE(wordsIn(finding.what.english()), 6u);
            EXPECT_FALSE(finding.what.english().ends_with('.'));
            EXPECT_TRUE(finding.why.english().ends_with('.'));
            EXPECT_EQ(finding.why.english().find('!'), std::string::npos);
        }
    }
}

TEST(HoldsEveryRule, CodesAreOneToOneAndReadBack) {
    std::set<std::string_view> codes;
    for (int number = 0; number <= static_cast<int>(Rule::LetteringTooSmall); ++number) {
        const Rule rule = static_cast<Rule>(number);
        EXPECT_TRUE(codes.insert(ruleCode(rule)).second) << ruleCode(rule);
        EXPECT_EQ(ruleFromCode(ruleCode(rule)), rule);
    }
    EXPECT_EQ(ruleFromCode("blank unwashed"), std::nullopt);
    EXPECT_EQ(ruleFromCode(""), std::nullopt);
}

TEST(HoldsEveryRule, EachActHasItsWords) {
    std::set<std::string_view> words;
    for (int act = 0; act <= static_cast<int>(FreeingAct::NoteLawChecked); ++act)
        EXPECT_TRUE(words.insert(freeingWords(static_cast<FreeingAct>(act)).english).second) << act;
    EXPECT_FALSE(words.contains(""));
}

} // namespace
} // namespace holdfast::test
