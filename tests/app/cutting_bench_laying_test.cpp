// SPDX-License-Identifier: GPL-3.0-or-later
// Decals that take long to lay are laid in the background. Here every layout is, as if it took long.
#include "app/places/cutting_bench/first_layout.h"
#include "app/widgets/stepper.h"
#include "tests/app/cutting_bench_fixture.h"

#include <QSignalSpy>

namespace holdfast::app::test {

namespace {

class CuttingBenchLaying : public CuttingBenchFixture {
protected:
    void SetUp() override {
        CuttingBenchFixture::SetUp();
        setNothingIsSoonLaid(true);
    }
    void TearDown() override {
        setNothingIsSoonLaid(false);
        CuttingBenchFixture::TearDown();
    }

    void takeSixDecals() {
        const UsualShop usual = stockUsualShop();
        std::vector<GarmentDraft> garments;
        for (int at = 0; at < 6; ++at)
            garments.push_back(withDecal(usual, {80 + 20 * at}, {60 + 15 * at}));
        takeOrder(garments);
    }
    void widenGap() {
        part<Stepper>(QStringLiteral("gap"))->setFocus();
        key(Qt::Key_Plus);
    }
    void waitUntilLaid() { QTRY_VERIFY_WITH_TIMEOUT(!model().isBeingLaid(), 20'000); }
    std::size_t lying() {
        std::size_t count = 0;
        for (const Nest& each : model().nests())
            count += each.decals.size();
        return count;
    }
    std::string hint() { return bench()->accessibleDescription().toStdString(); }
};

const std::string kBeingLaid = "The decals are being laid out. That takes a moment.";

} // namespace

TEST_F(CuttingBenchLaying, ManyDecalsOrManyPinsTakeLong) {
    setNothingIsSoonLaid(false);
    EXPECT_TRUE(isSoonLaid(30, 30));
    EXPECT_TRUE(isSoonLaid(3000, 0));
    EXPECT_FALSE(isSoonLaid(3001, 0));
    EXPECT_TRUE(isSoonLaid(1000, 200));
    EXPECT_FALSE(isSoonLaid(4500, 1000));
}

TEST_F(CuttingBenchLaying, TheBenchSaysSoUntilTheyLieAndThenAsLaidAtOnce) {
    takeSixDecals();
    open();
    ASSERT_TRUE(model().isBeingLaid());
    EXPECT_EQ(lying(), 0U);
    EXPECT_EQ(hint(), kBeingLaid);
    EXPECT_EQ(label("lengthWords"), kBeingLaid);
    EXPECT_FALSE(button("saveCutFile")->isEnabled());
    EXPECT_EQ(button("saveCutFile")->toolTip().toStdString(), kBeingLaid);
    EXPECT_FALSE(place->isSearching());
    Millimetres length; // before a search finds a shorter one
    QObject::connect(&model(), &BenchModel::nested, place.get(), [&] { length = nest().length; });
    waitUntilLaid();
    const auto atOnce = nestFilm(*desk().shop(), *model().film(), model().onBench().wish);
    ASSERT_TRUE(atOnce.ok());
    EXPECT_EQ(lying(), 6U);
    EXPECT_EQ(length, atOnce->nests.front().length);
    EXPECT_TRUE(button("saveCutFile")->isEnabled());
    EXPECT_NE(label("lengthWords"), kBeingLaid);
}

TEST_F(CuttingBenchLaying, WhatLayThereBeforeIsShownAndNeitherMovedNorCut) {
    takeSixDecals();
    open();
    waitUntilLaid();
    waitForSearch();
    const Nest before = nest();
    const DecalId decal = before.decals.front().decal;
    widenGap();
    ASSERT_TRUE(model().isBeingLaid());
    EXPECT_EQ(lying(), 6U);
    EXPECT_EQ(nest().length, before.length);
    EXPECT_EQ(label("lengthWords"), kBeingLaid);
    const QPoint on = bench()->rectOf(decal).center().toPoint();
    QTest::mousePress(bench()->viewport(), Qt::LeftButton, {}, on);
    QTest::mouseRelease(bench()->viewport(), Qt::LeftButton, {}, on + QPoint(60, 20));
    EXPECT_EQ(said.toStdString(), kBeingLaid);
    bench()->setFocus();
    said.clear();
    key(Qt::Key_Right);
    EXPECT_EQ(said.toStdString(), kBeingLaid);
    key(Qt::Key_P);
    EXPECT_TRUE(model().onBench().wish.pins.empty());
    EXPECT_EQ(nest().decals.front().lies, before.decals.front().lies);
    place->markCut();
    EXPECT_EQ(desk().shop()->facts.rolls.at(nest().roll).left, before.rollLeft);
    waitUntilLaid();
    EXPECT_EQ(nest().gap, before.gap + 1_mm);
    EXPECT_EQ(faultIn(nest()), "");
}

TEST_F(CuttingBenchLaying, AnotherWishStopsItAndBeginsAgain) {
    takeSixDecals();
    open();
    waitUntilLaid();
    waitForSearch();
    ASSERT_TRUE(model().chosen()) << "the keyboard waited on the bench for them";
    const DecalId first = *model().chosen();
    QSignalSpy laid(&model(), &BenchModel::nested);
    key(Qt::Key_Delete);
    ASSERT_TRUE(model().isBeingLaid());
    EXPECT_EQ(model().lying(first), nullptr) << "gone from sight at once";
    EXPECT_EQ(lying(), 5U);
    key(Qt::Key_Delete);
    widenGap();
    ASSERT_TRUE(model().isBeingLaid());
    EXPECT_EQ(lying(), 4U);
    waitUntilLaid();
    EXPECT_EQ(laid.count(), 1) << "only the last wish was laid";
    EXPECT_EQ(lying(), 4U);
    EXPECT_EQ(model().onBench().wish.leftOut.size(), 2U);
    EXPECT_EQ(faultIn(nest()), "");
}

TEST_F(CuttingBenchLaying, OfAFilmThatWasLeftItBeginsAgainOnReturn) {
    const UsualShop usual = stockUsualShop();
    const FilmId gorse = addFilm("Gorse");
    receiveRoll(gorse, usual.place);
    GarmentDraft other = aGarment(usual);
    other.decals.front().film = gorse;
    takeOrder({aGarment(usual), aGarment(usual)});
    takeOrder({other}, "Teodor Wick");
    open();
    ASSERT_TRUE(model().isBeingLaid());
    const FilmId first = model().film()->film;
    films()->setFocus();
    key(Qt::Key_Right);
    ASSERT_NE(model().film()->film, first);
    waitUntilLaid();
    EXPECT_EQ(lying(), 1U);
    key(Qt::Key_Left);
    ASSERT_EQ(model().film()->film, first);
    EXPECT_TRUE(model().isBeingLaid()) << "it was not laid when it was left";
    waitUntilLaid();
    EXPECT_EQ(lying(), 2U);
    key(Qt::Key_Right);
    EXPECT_FALSE(model().isBeingLaid()) << "laid before, and nothing has changed";
    EXPECT_EQ(lying(), 1U);
}

} // namespace holdfast::app::test
