// SPDX-License-Identifier: GPL-3.0-or-later
// "This is the shortest layout possible" is said only of what lies there now: after each thing that a hand
// can change it is proved again or not said. What is said is looked at by trying every place.
#include "app/widgets/stepper.h"
#include "db/actions/film_actions.h"
#include "tests/app/cutting_bench_fixture.h"
#include "tests/core/nest_as_strip.h"
#include "tests/core/shortest_by_trying.h"

namespace holdfast::app::test {

namespace {

class CuttingBenchProof : public CuttingBenchFixture {
protected:
    RollId receiveNarrowRoll(const UsualShop& usual, Millimetres width) {
        db::RollReceived roll;
        roll.film = usual.film;
        roll.width = width;
        roll.length = 5000_mm;
        roll.receivedOn = now().today();
        roll.place = usual.place;
        return valueOf(db::receiveRoll(file(), roll, now())).id;
    }

    void setGap(int millimetres) {
        auto* gap = part<Stepper>(QStringLiteral("gap"));
        gap->setFocus();
        while (nest().gap.value != millimetres)
            key(nest().gap.value < millimetres ? Qt::Key_Plus : Qt::Key_Minus);
        bench()->setFocus(Qt::TabFocusReason);
    }

    // What is said of the length is true; whether it is said to be the shortest.
    bool saysShortest() {
        waitForSearch();
        const std::string words = label("lengthWords");
        const bool isSaid = words.starts_with("This is the shortest layout possible");
        if (isSaid) {
            EXPECT_FALSE(strips::fitsOn(strips::asStrip(nest()), nest().length.value - 1)) << words;
            EXPECT_TRUE(model().isShortest() || model().nests().size() > 1) << words;
            EXPECT_EQ(words.find("with the pin") != std::string::npos, model().hasPins()) << words;
        }
        return isSaid;
    }
};

} // namespace

TEST_F(CuttingBenchProof, PinnedMovedAndLetGo) {
    const UsualShop usual = stockUsualShop();
    takeOrder({withDecal(usual, 180_mm, 228_mm), withDecal(usual, 120_mm, 60_mm)});
    open();
    EXPECT_TRUE(saysShortest());
    const Millimetres shortest = nest().length;
    const DecalId decal = *model().chosen();
    drag(decal, {300, 0});
    ASSERT_GT(nest().length, shortest);
    saysShortest();
    key(Qt::Key_P); // let go, it still lies where it was pinned
    EXPECT_FALSE(saysShortest());
    key(Qt::Key_N);
    EXPECT_TRUE(saysShortest());
    EXPECT_EQ(nest().length, shortest);
}

TEST_F(CuttingBenchProof, AnotherDecalAndOneLeftOut) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)});
    open();
    EXPECT_TRUE(saysShortest());
    takeOrder({aGarment(usual)}, "Teodor Wick");
    ASSERT_EQ(nest().decals.size(), 2U);
    EXPECT_TRUE(saysShortest());
    bench()->setFocus(Qt::TabFocusReason);
    key(Qt::Key_Delete);
    ASSERT_EQ(nest().decals.size(), 1U);
    EXPECT_TRUE(saysShortest());
    button("leftOut-0")->click();
    ASSERT_EQ(nest().decals.size(), 2U);
    EXPECT_TRUE(saysShortest());
}

// Two of 230 mm lie across 480 mm of film with 8 mm between them, and not with 30.
TEST_F(CuttingBenchProof, AnotherGap) {
    const UsualShop usual = stockUsualShop();
    takeOrder({withDecal(usual, 230_mm, 230_mm), withDecal(usual, 230_mm, 230_mm)});
    open();
    EXPECT_TRUE(saysShortest());
    EXPECT_EQ(nest().length, 238_mm);
    setGap(30);
    EXPECT_GT(nest().length, 460_mm);
    EXPECT_TRUE(saysShortest()) << "neither fits beside the other: proved again";
    setGap(12);
    EXPECT_EQ(nest().length, 242_mm);
    EXPECT_TRUE(saysShortest());
}

TEST_F(CuttingBenchProof, AnotherRollOfAnotherWidth) {
    const UsualShop usual = stockUsualShop();
    time().pass(48h);
    const RollId narrow = receiveNarrowRoll(usual, 300_mm);
    takeOrder(
        {withDecal(usual, 230_mm, 230_mm), withDecal(usual, 230_mm, 230_mm), withDecal(usual, 60_mm, 90_mm)});
    open();
    saysShortest();
    const Millimetres wide = nest().length;
    cutFirstFrom(narrow);
    ASSERT_EQ(nest().roll, narrow);
    EXPECT_GT(nest().length, wide);
    saysShortest();
    cutFirstFrom(usual.roll);
    ASSERT_EQ(nest().length, wide);
    saysShortest();
}

// Turned, 100 × 300 mm takes 108 mm of the roll; the grain forbids it.
TEST_F(CuttingBenchProof, TurnedOrNot) {
    const UsualShop usual = stockUsualShop();
    takeOrder({withDecal(usual, 100_mm, 300_mm)});
    open();
    EXPECT_TRUE(saysShortest());
    EXPECT_EQ(nest().length, 108_mm);
    Film film = desk().shop()->facts.films.at(usual.film);
    film.hasGrain = true;
    ASSERT_TRUE(db::changeFilmSheet(file(), film).ok());
    EXPECT_EQ(nest().length, 308_mm);
    EXPECT_TRUE(saysShortest());
    film.hasGrain = false;
    ASSERT_TRUE(db::changeFilmSheet(file(), film).ok());
    EXPECT_EQ(nest().length, 108_mm);
    EXPECT_TRUE(saysShortest());
}

} // namespace holdfast::app::test
