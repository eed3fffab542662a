// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/stage.h"

#include "tests/core/builders.h"

#include <gtest/gtest.h>

#include <set>

namespace holdfast::test {
namespace {

Stage stageOf(const GarmentBuilder& garment) {
    return aShop().with(garment).build().stage();
}

void notConfirmed(Decal& decal) {
    decal.confirmedBy.clear();
}

TEST(Stage, FollowsTheGarmentThroughTheWorkshop) {
    EXPECT_EQ(stageOf(aGarment().decal(notConfirmed)), Stage::ToConfirm);
    EXPECT_EQ(stageOf(aGarment().onNoBlank()), Stage::ToBuy);
    EXPECT_EQ(stageOf(aGarment().onUnwashedTee()), Stage::ToWash);
    EXPECT_EQ(stageOf(aGarment().onDampTee()), Stage::Drying);
    EXPECT_EQ(stageOf(aGarment().uncut()), Stage::ToCut);
    EXPECT_EQ(stageOf(aGarment()), Stage::ToPress);
    EXPECT_EQ(stageOf(aGarment().underway("read-tag-1")), Stage::OnPress);
    EXPECT_EQ(stageOf(aGarment().doneThrough("place-1").underway("press-1")), Stage::OnPress);
    EXPECT_EQ(stageOf(aGarment().doneThrough("press-1").underway("cool-1")), Stage::Cooling);
    EXPECT_EQ(stageOf(aGarment().pressed(hoursAgo(23))), Stage::Resting);
    EXPECT_EQ(stageOf(aGarment().pressed(hoursAgo(24))), Stage::Ready);
    EXPECT_EQ(stageOf(aGarment().pressed(hoursAgo(30)).garment([](Garment& garment) {
                  garment.handedOverAt = hoursAgo(1);
              })),
              Stage::HandedOver);
}

TEST(Stage, OrderDecidesBeforeTheGarment) {
    const auto inState = [](OrderState state) {
        return aGarment().pressed(hoursAgo(1)).order([state](Order& order) { order.state = state; });
    };
    EXPECT_EQ(stageOf(inState(OrderState::Cancelled)), Stage::Cancelled);
    EXPECT_EQ(stageOf(inState(OrderState::HandedOver)), Stage::HandedOver);
    EXPECT_EQ(stageOf(aGarment().order([](Order& order) { order.state = OrderState::Quoted; })),
              Stage::ToConfirm);
}

TEST(Stage, EarlierQuestionsAreAskedFirst) {
    EXPECT_EQ(stageOf(aGarment().onUnwashedTee().uncut().decal(notConfirmed)), Stage::ToConfirm);
    EXPECT_EQ(stageOf(aGarment().onNoBlank().uncut()), Stage::ToBuy);
    EXPECT_EQ(stageOf(aGarment().onUnwashedTee().uncut()), Stage::ToWash);
    EXPECT_EQ(stageOf(aGarment().onDampTee().uncut()), Stage::Drying);
}

TEST(Stage, StyleThatIsNotWashedFirstGoesOnUnwashed) {
    const auto notWashed = [](BlankStyle& style) {
        style.notPrewashedBecause = "canvas, shrinks out of shape";
    };
    EXPECT_EQ(stageOf(aGarment().onUnwashedTee().style(notWashed)), Stage::ToPress);
    EXPECT_EQ(stageOf(aGarment().onDampTee().style(notWashed)), Stage::Drying) << "wet all the same";
}

TEST(Stage, WhatAPersonLetThroughIsNotAskedForAgain) {
    EXPECT_EQ(stageOf(aGarment().onUnwashedTee().waived(Rule::BlankUnwashed)), Stage::ToPress);
    EXPECT_EQ(stageOf(aGarment().onDampTee().waived(Rule::BlankDamp)), Stage::ToPress);
    EXPECT_EQ(stageOf(aGarment().decal(notConfirmed).waived(Rule::WordingUnconfirmed)), Stage::ToPress);
    EXPECT_EQ(stageOf(aGarment().onUnwashedTee().waived(Rule::BlankDamp)), Stage::ToWash) << "another rule";
    EXPECT_EQ(stageOf(aGarment().onUnwashedTee().waived(Rule::BlankUnwashed, 2)), Stage::ToWash)
        << "another attempt";
}

TEST(Stage, OneUncutDecalIsEnoughToWaitForTheKnife) {
    EXPECT_EQ(stageOf(aGarment().withDecal([](Decal& decal) { decal.cutAt.reset(); })), Stage::ToCut);
}

TEST(Stage, LotThatIsNotKnownAnyMoreIsNoBlank) {
    EXPECT_EQ(stageOf(aGarment().garment([](Garment& garment) { garment.lot = BlankLotId{99}; })),
              Stage::ToBuy);
}

TEST(Stage, BegunGarmentBetweenTwoStepsIsStillToPress) {
    // Its lot went back to unwashed on paper; it lies at the press all the same.
    EXPECT_EQ(stageOf(aGarment().onUnwashedTee().doneThrough("preheat-1")), Stage::ToPress);
}

TEST(Stage, RestIsTheShopsOwn) {
    const auto shop = aShop()
                          .with(aGarment().pressed(hoursAgo(30)))
                          .settings([](ShopSettings& settings) { settings.restBeforeWash = Hours{48}; })
                          .build();
    EXPECT_EQ(shop.stage(), Stage::Resting);
    EXPECT_EQ(restUntil(shop.facts, shop.progress()), hoursAgo(30) + Hours{48});
    EXPECT_EQ(restUntil(shop.facts, Progress{}), std::nullopt);
}

TEST(Stage, CodesAndWordsAreOneToOne) {
    std::set<std::string_view> codes, words;
    for (int stage = 0; stage <= static_cast<int>(Stage::Cancelled); ++stage) {
        EXPECT_TRUE(codes.insert(stageCode(static_cast<Stage>(stage))).second);
        EXPECT_TRUE(words.insert(stageWords(static_cast<Stage>(stage)).english).second);
    }
    EXPECT_EQ(stageCode(Stage::ToWash), "to-wash");
    EXPECT_EQ(stageWords(Stage::ToWash), "To wash");
}

// ── progress ────────────────────────────────────────────────────────────────────────────────────────────

TEST(Progress, NothingDoneIsNothingBegun) {
    const auto progress = aShop().with(aGarment()).build().progress();
    EXPECT_FALSE(progress.hasBegun());
    EXPECT_FALSE(progress.isPressed());
}

TEST(Progress, CountsFinishedStepsAndKnowsTheOpenOne) {
    const auto shop = aShop().with(aGarment().doneThrough("place-1").underway("press-1")).build();
    const auto progress = shop.progress();
    EXPECT_EQ(progress.finished, 4u);
    ASSERT_TRUE(progress.underway.has_value());
    EXPECT_EQ(shop.route().steps[*progress.underway].key, "press-1");
    EXPECT_EQ(progress.underwaySince, theMoment().instant);
    EXPECT_FALSE(progress.isPressed());
}

TEST(Progress, PressedOnceTheLastStepIsFinished) {
    const auto beforeLook = aShop().with(aGarment().doneThrough("finish-back-1")).build();
    EXPECT_FALSE(beforeLook.progress().isPressed()) << "nobody has looked at it";
    const auto looking = aShop().with(aGarment().doneThrough("finish-back-1").underway("look-1")).build();
    EXPECT_FALSE(looking.progress().isPressed());
    const auto looked = aShop().with(aGarment().pressed(hoursAgo(2))).build();
    EXPECT_EQ(looked.progress().pressedAt, hoursAgo(2));
}

TEST(Progress, OnlyThePresentAttemptCounts) {
    auto shop = aShop().with(aGarment().pressed(hoursAgo(2))).build();
    Garment again = shop.garment();
    again.attempt = 2;
    EXPECT_FALSE(progressOf(shop.facts, again, shop.route()).hasBegun());
}

TEST(Progress, LooksOnlyAtItsOwnGarment) {
    const auto shop = aShop().with(aGarment()).with(aGarment().pressed(hoursAgo(2))).build();
    EXPECT_FALSE(shop.progress().hasBegun());
}

TEST(Progress, RecipeChangedUnderWayPassesOverStepsThatAreGone) {
    auto shop = aShop().with(aGarment().doneThrough("press-1").underway("cool-1")).build();
    Film hot = aFilm();
    hot.recipe->peel = Peel::Hot; // no cooling any more
    shop.facts.films = Roster<Film>({hot});
    const auto progress = shop.progress();
    EXPECT_EQ(progress.underway, std::nullopt);
    ASSERT_LT(progress.finished, shop.route().steps.size());
    EXPECT_EQ(shop.route().steps[progress.finished].key, "peel-1");
    EXPECT_EQ(shop.stage(), Stage::ToPress);
}

TEST(Progress, NewStepBehindThePresentOneIsNotGoneBackFor) {
    const auto without = [](Recipe& recipe) { recipe.preheat = Seconds{0}; };
    auto shop = aShop().with(aGarment().recipe(without).doneThrough("press-1")).build();
    shop.facts.films = Roster<Film>({aFilm()}); // preheats
    EXPECT_EQ(shop.route().steps[shop.progress().finished].key, "cool-1");
}

TEST(Progress, PressedGarmentStaysPressedWhenItsRecipeChanges) {
    const auto without = [](Recipe& recipe) { recipe.finishFront = recipe.finishBack = Seconds{0}; };
    auto shop = aShop().with(aGarment().recipe(without).pressed(hoursAgo(2))).build();
    shop.facts.films = Roster<Film>({aFilm()}); // with a finishing press
    EXPECT_TRUE(shop.progress().isPressed());
    EXPECT_EQ(shop.stage(), Stage::Resting);
}

TEST(Progress, LookedAtWithoutAnyHeatIsNotPressed) {
    auto shop = aShop().with(aGarment()).build();
    StepRecord looked;
    looked.garment = shop.garment().id;
    looked.key = "look-1";
    looked.startedAt = hoursAgo(2);
    looked.finishedAt = hoursAgo(1);
    shop.facts.steps = {looked};
    EXPECT_FALSE(shop.progress().isPressed());
}

TEST(Progress, FirstHeatAndLastPressAreToldApart) {
    const auto behind = [](const char* key) {
        const auto shop = aShop()
                              .with(aGarment()
                                        .withDecal([](Decal& decal) { decal.placement = Placement::Back; })
                                        .doneThrough(key))
                              .build();
        return std::pair(firstHeatIsBehind(shop.route(), shop.progress()),
                         lastPressIsBehind(shop.route(), shop.progress()));
    };
    EXPECT_EQ(behind("lint-roll-1"), std::pair(false, false));
    EXPECT_EQ(behind("preheat-1"), std::pair(true, false));
    EXPECT_EQ(behind("press-1"), std::pair(true, false));
    EXPECT_EQ(behind("press-2"), std::pair(true, true));
    EXPECT_EQ(behind("look-1"), std::pair(true, true));
}

TEST(Progress, RouteWithoutPressStepsHasNoPressBehind) {
    const auto shop =
        aShop()
            .with(aGarment().film([](Film& film) { film.recipe.reset(); }).doneThrough("lint-roll-1"))
            .build();
    EXPECT_FALSE(lastPressIsBehind(shop.route(), shop.progress()));
    EXPECT_TRUE(shop.raises(Rule::RecipeMissing));
}

} // namespace
} // namespace holdfast::test
