// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/films_to_cut.h"
#include "tests/core/builders.h"

#include <gtest/gtest.h>

namespace holdfast::test {
namespace {

ReckonedShop reckonedOf(const TestShop& shop) {
    ReckonedShop reckoned;
    reckoned.now = shop.now;
    reckoned.facts = shop.facts;
    reckoned.conditions = shop.conditions;
    reckoned.allotment = shop.allotment;
    reckoned.assessments = assessAll(shop.around());
    return reckoned;
}

std::vector<FilmToCut> filmsOf(const TestShop& shop) {
    return filmsToCut(reckonedOf(shop));
}

std::string whyNotYet(const TestShop& shop) {
    const std::vector<FilmToCut> films = filmsOf(shop);
    return films.empty() || films.front().notYet.empty() ? ""
                                                         : films.front().notYet.begin()->second.english();
}

TEST(NotYetCut, AnUncutDecalWaits) {
    const TestShop shop = aShop().with(aGarment().uncut()).build();
    ASSERT_EQ(filmsOf(shop).size(), 1U);
    EXPECT_EQ(filmsOf(shop).front().waiting.size(), 1U);
    EXPECT_EQ(whyNotYet(shop), "");
}

TEST(NotYetCut, ABlankThatIsStillToBeWashedDoesNotKeepItsDecalWaiting) {
    const TestShop shop = aShop().with(aGarment().onUnwashedTee().uncut()).build();
    EXPECT_EQ(filmsOf(shop).front().waiting.size(), 1U);
}

TEST(NotYetCut, UnconfirmedArtworkIsNotCut) {
    const TestShop shop =
        aShop().with(aGarment().uncut().decal([](Decal& decal) { decal.confirmedBy.clear(); })).build();
    EXPECT_TRUE(filmsOf(shop).front().waiting.empty());
    EXPECT_EQ(decalsToCut(reckonedOf(shop)), 0U);
    EXPECT_TRUE(whyNotYet(shop).starts_with("Artwork not confirmed: Heron")) << whyNotYet(shop);
}

TEST(NotYetCut, NothingIsCutForClothOfWhichNobodyReadTheLabel) {
    const TestShop shop =
        aShop().with(aGarment().uncut().style([](BlankStyle& style) { style.label.reset(); })).build();
    EXPECT_TRUE(filmsOf(shop).front().waiting.empty());
    EXPECT_TRUE(whyNotYet(shop).starts_with("Label not read: Tee")) << whyNotYet(shop);
}

TEST(NotYetCut, AWaiverLetsItBeCut) {
    const TestShop shop = aShop()
                              .with(aGarment()
                                        .uncut()
                                        .decal([](Decal& decal) { decal.confirmedBy.clear(); })
                                        .waived(Rule::WordingUnconfirmed))
                              .build();
    EXPECT_EQ(filmsOf(shop).front().waiting.size(), 1U);
    EXPECT_EQ(whyNotYet(shop), "");
}

TEST(NotYetCut, FilmThatDoesNotSuitTheClothIsNotCut) {
    const TestShop shop = aShop()
                              .with(aGarment()
                                        .uncut()
                                        .label([](FabricLabel& label) { label.stretch = Stretch::High; })
                                        .film([](Film& film) { film.follows = Stretch::None; }))
                              .build();
    EXPECT_TRUE(filmsOf(shop).front().waiting.empty());
    EXPECT_NE(whyNotYet(shop), "");
}

} // namespace
} // namespace holdfast::test
