// SPDX-License-Identifier: GPL-3.0-or-later
// When rules fall silent, what waivers lift, and how an assessment is put together.

#include "tests/core/builders.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace holdfast::test {
namespace {

// Held by its blank, its film's roll and its press, with a caution besides.
GarmentBuilder aTroubledGarment() {
    return aGarment()
        .onUnwashedTee()
        .recipe([](Recipe& recipe) { recipe.confirmedBy.clear(); })
        .condition([](RollCondition& roll) { roll.useBy = localDate(2026, 11, 1); });
}

ShopBuilder aTroubledShop(const GarmentBuilder& garment) {
    return aShop().with(garment).check([](PressCheck& check) { check.readings = {140_C, 140_C, 140_C}; });
}

TEST(HoldsWaiver, LiftsTheHoldAndStaysInSight) {
    const auto shop = aShop().with(aGarment().onUnwashedTee().waived(Rule::BlankUnwashed)).build();
    const auto finding = shop.finding(Rule::BlankUnwashed);
    ASSERT_TRUE(finding.has_value());
    EXPECT_TRUE(finding->isWaived);
    EXPECT_FALSE(finding->holds());
    EXPECT_FALSE(assess(shop.around(), shop.garment()).isHeld());
}

TEST(HoldsWaiver, LiftsOnlyItsOwnRule) {
    const auto shop = aTroubledShop(aTroubledGarment().waived(Rule::BlankUnwashed)).build();
    const auto assessment = assess(shop.around(), shop.garment());
    ASSERT_TRUE(assessment.isHeld());
    EXPECT_NE(assessment.firstHold()->rule, Rule::BlankUnwashed);
}

TEST(HoldsWaiver, CountsForItsAttemptOnly) {
    const auto second = [](Garment& garment) { garment.attempt = 2; };
    const auto shop =
        aShop().with(aGarment().onUnwashedTee().garment(second).waived(Rule::BlankUnwashed, 1)).build();
    EXPECT_FALSE(shop.finding(Rule::BlankUnwashed)->isWaived);
}

TEST(HoldsWaiver, NeverSilencesACautionOrAStep) {
    const auto shop = aShop()
                          .with(aGarment()
                                    .onZipHoodie(WayRound::Pillow)
                                    .recipe([](Recipe& recipe) { recipe.confirmedBy.clear(); })
                                    .waived(Rule::RecipeUnconfirmed)
                                    .waived(Rule::ObstacleSolved))
                          .build();
    EXPECT_FALSE(shop.finding(Rule::RecipeUnconfirmed)->isWaived);
    EXPECT_FALSE(shop.finding(Rule::ObstacleSolved)->isWaived);
}

TEST(HoldsWaiver, OfAnotherGarmentCountsForNothing) {
    const auto shop =
        aShop().with(aGarment().onUnwashedTee()).with(aGarment().waived(Rule::BlankUnwashed)).build();
    EXPECT_FALSE(shop.finding(Rule::BlankUnwashed)->isWaived);
}

TEST(HoldsOrder, HoldsStandBeforeCautionsBeforeSteps) {
    const auto shop = aTroubledShop(aTroubledGarment().style([](BlankStyle& style) {
                          style.obstacles = {{Obstacle::Seams, WayRound::Turn}};
                      })).build();
    const auto findings = shop.findings();
    ASSERT_EQ(findings.size(), 5u);
    EXPECT_TRUE(std::ranges::is_sorted(findings, {}, &Finding::grade));
    EXPECT_EQ(findings.front().rule, Rule::BlankUnwashed);
    EXPECT_EQ(findings.back().rule, Rule::ObstacleSolved);
}

TEST(HoldsBehind, BlankIsSilentOnceTheFirstHeatIsFinished) {
    const auto begun =
        aTroubledShop(aTroubledGarment().doneThrough("lint-roll-1").underway("preheat-1")).build();
    EXPECT_TRUE(begun.raises(Rule::BlankUnwashed));
    const auto heated = aTroubledShop(aTroubledGarment().doneThrough("preheat-1")).build();
    EXPECT_FALSE(heated.raises(Rule::BlankUnwashed));
    EXPECT_TRUE(heated.raises(Rule::RollPastAge));
}

TEST(HoldsBehind, FilmAndRollAreSilentOnceTheLastPressIsFinished) {
    const auto pressing =
        aTroubledShop(aTroubledGarment().doneThrough("place-1").underway("press-1")).build();
    EXPECT_TRUE(pressing.raises(Rule::RollPastAge));
    EXPECT_TRUE(pressing.raises(Rule::RecipeUnconfirmed));
    const auto cooling = aTroubledShop(aTroubledGarment().doneThrough("press-1").underway("cool-1")).build();
    EXPECT_FALSE(cooling.raises(Rule::RollPastAge));
    EXPECT_FALSE(cooling.raises(Rule::RecipeUnconfirmed));
    EXPECT_TRUE(cooling.raises(Rule::PressOff)) << "the finishing press is still to come";
}

TEST(HoldsBehind, SecondPassStillHoldsByItsFilm) {
    const auto backToo = [](Decal& decal) { decal.placement = Placement::Back; };
    const auto shop = aTroubledShop(aTroubledGarment().withDecal(backToo).doneThrough("press-1")).build();
    EXPECT_TRUE(shop.raises(Rule::RollPastAge));
}

TEST(HoldsBehind, NothingHoldsWhatIsPressed) {
    const auto shop = aTroubledShop(aTroubledGarment().pressed(hoursAgo(1))).build();
    EXPECT_TRUE(shop.progress().isPressed());
    EXPECT_TRUE(shop.findings().empty());
}

TEST(HoldsBehind, LawIsRememberedUntilHandingOver) {
    const auto forChild = [](BlankStyle& style) { style.forChild = true; };
    const auto resting = aShop().with(aGarment().style(forChild).pressed(hoursAgo(1))).build();
    EXPECT_TRUE(resting.raises(Rule::LocalLaw));
    const auto gone =
        aShop()
            .with(aGarment().style(forChild).pressed(hoursAgo(40)).garment([](Garment& garment) {
                garment.handedOverAt = hoursAgo(1);
            }))
            .build();
    EXPECT_TRUE(gone.findings().empty());
}

TEST(HoldsBehind, NothingHoldsWhatIsCancelledOrHandedOver) {
    for (const OrderState state : {OrderState::Cancelled, OrderState::HandedOver}) {
        const auto shop =
            aTroubledShop(aTroubledGarment().order([state](Order& order) { order.state = state; })).build();
        EXPECT_TRUE(shop.findings().empty());
    }
}

TEST(HoldsFitness, FilmThatFitsHasNothingToSay) {
    EXPECT_TRUE(fitness(aFilm(), aTee()).empty());
}

TEST(HoldsFitness, UnreadLabelAndMissingRecipeLeaveItOpen) {
    BlankStyle unread = aTee();
    unread.label.reset();
    Film without = aFilm();
    without.recipe.reset();
    const auto findings = fitness(without, unread);
    ASSERT_EQ(findings.size(), 2u);
    EXPECT_EQ(findings[0].rule, Rule::LabelUnread);
    EXPECT_EQ(findings[1].rule, Rule::RecipeMissing);
}

TEST(HoldsFitness, EverythingThatDoesNotFitIsSaid) {
    BlankStyle apron = aTee();
    apron.label->coating = Coating::Waxed;
    apron.label->stretch = Stretch::High;
    apron.label->highestSafe = 120_C;
    Film film = aFilm();
    film.notFor = {Fibre::Cotton};
    EXPECT_EQ(fitness(film, apron).size(), 4u);
}

TEST(HoldsAssessment, EveryGarmentIsAssessedAsItIsAlone) {
    const auto shop = aShop()
                          .with(aGarment())
                          .with(aGarment().onNoBlank())
                          .with(aGarment().pressed(hoursAgo(30)))
                          .with(aGarment().doneThrough("press-1").underway("cool-1"))
                          .build();
    const auto all = assessAll(shop.around());
    ASSERT_EQ(all.size(), 4u);
    std::vector<Stage> stages;
    for (const auto& [id, assessment] : all) {
        EXPECT_EQ(assessment.garment, id);
        EXPECT_EQ(assessment.findings.size(), findingsFor(shop.around(), shop.facts.garments.at(id)).size());
        stages.push_back(assessment.stage);
    }
    EXPECT_EQ(stages, (std::vector{Stage::ToPress, Stage::ToBuy, Stage::Ready, Stage::Cooling}));
}

} // namespace
} // namespace holdfast::test
