// SPDX-License-Identifier: GPL-3.0-or-later
// What the bench shows and what hands and keys do on it.
#include "app/slips/option_list.h"
#include "app/widgets/empty_state.h"
#include "app/widgets/stepper.h"
#include "db/actions/film_actions.h"
#include "tests/app/cutting_bench_fixture.h"

namespace holdfast::app::test {

namespace {

class CuttingBench : public CuttingBenchFixture {};

} // namespace

TEST_F(CuttingBench, WithNothingToCutOffersToTakeAnOrder) {
    stockUsualShop();
    open();
    std::optional<PlaceName> led;
    QObject::connect(&desk(), &ShopDesk::placeAsked, place.get(), [&](PlaceName to) { led = to; });
    part<EmptyState>(QStringLiteral("emptyBench"))->button()->click();
    EXPECT_EQ(led, PlaceName::FairTable);
    EXPECT_FALSE(part<QWidget>(QStringLiteral("benchPanel"))->isVisible());
}

TEST_F(CuttingBench, ShowsTheNestItsRollItsLengthAndItsShares) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual), aGarment(usual)});
    open();
    ASSERT_EQ(model().nests().size(), 1U);
    EXPECT_EQ(nest().decals.size(), 2U);
    EXPECT_EQ(faultIn(nest()), "");
    // Two of 200 × 280 mm stand beside each other on 500 mm; the gap of 8 mm goes with the row.
    EXPECT_EQ(nest().length, 288_mm);
    EXPECT_EQ(fact("lengthUsed"), "Length used: 288 mm");
    EXPECT_EQ(fact("leftOnRoll"), "Left on R-01 after: 4.7 m");
    // (2 × 200 × 280 mm at the least) ÷ (500 × 288 mm).
    EXPECT_GE(nest().shares().decals, 0.777);
    EXPECT_TRUE(films()->accessibleName().contains(QStringLiteral("Dusk")));
    EXPECT_EQ(films()->accessibleDescription().toStdString(), "2 to cut");
    EXPECT_EQ(label("decalsToCut"), "<b>2</b> decals to cut");
    // Turned, one of 288 × 208 mm lies behind the other: 416 mm.
    EXPECT_EQ(nest().leastLength, 288_mm);
    EXPECT_EQ(label("lengthWords"), "This is the shortest layout possible");
    EXPECT_EQ(sentence()->words().toStdString(), "Cut mirrored, a frame round each decal, parted at 288 mm.");
    // Two decals that are cut alike, on one line, and the only roll is not asked about.
    EXPECT_TRUE(part<QWidget>(QStringLiteral("onThisFilm"))
                    ->accessibleDescription()
                    .endsWith(QStringLiteral("2 alike")));
    EXPECT_FALSE(part<OptionList>(QStringLiteral("rolls"))->isVisible());
}

TEST_F(CuttingBench, TabGoesFromDecalToDecalAndBehindTheLastOn) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual), aGarment(usual)});
    open();
    ASSERT_TRUE(bench()->hasFocus());
    EXPECT_EQ(model().chosen(), nest().decals[0].decal);
    EXPECT_TRUE(bench()->accessibleDescription().contains(QStringLiteral("Heron")));
    key(Qt::Key_Tab);
    EXPECT_EQ(model().chosen(), nest().decals[1].decal);
    EXPECT_TRUE(bench()->hasFocus());
    key(Qt::Key_Tab);
    EXPECT_FALSE(bench()->hasFocus());
    bench()->setFocus(Qt::BacktabFocusReason);
    key(Qt::Key_Backtab, Qt::ShiftModifier);
    EXPECT_EQ(model().chosen(), nest().decals[0].decal);
    key(Qt::Key_Backtab, Qt::ShiftModifier);
    EXPECT_FALSE(bench()->hasFocus());
}

TEST_F(CuttingBench, ArrowsNudgeByOneAndByTenMillimetresAndPin) {
    const UsualShop usual = stockUsualShop();
    takeOrder({withDecal(usual, 100_mm, 120_mm)});
    open();
    const FilmArea before = nest().decals.front().lies;
    key(Qt::Key_Right);
    EXPECT_EQ(nest().decals.front().lies.along, before.along + 1_mm);
    key(Qt::Key_Down, Qt::ShiftModifier);
    EXPECT_EQ(nest().decals.front().lies.across, before.across + 10_mm);
    EXPECT_TRUE(nest().decals.front().isPinned);
    EXPECT_NE(label("chosenPlace").find("pinned"), std::string::npos);
    EXPECT_EQ(faultIn(nest()), "");
    for (int step = 0; step < 3; ++step)
        key(Qt::Key_Left, Qt::ShiftModifier);
    EXPECT_GE(nest().decals.front().lies.along, 0_mm);
}

TEST_F(CuttingBench, ADragLandsOnlyWhereTheNestStaysLegal) {
    const UsualShop usual = stockUsualShop();
    takeOrder({withDecal(usual, 120_mm, 150_mm), withDecal(usual, 120_mm, 150_mm),
               withDecal(usual, 90_mm, 60_mm), withDecal(usual, 200_mm, 100_mm)});
    open();
    waitForSearch();
    const DecalId dragged = nest().decals.front().decal;
    const QPointF onto = bench()->rectOf(nest().decals.back().decal).center();
    const FilmArea before = nest().find(dragged)->lies;
    drag(dragged, (onto - bench()->rectOf(dragged).center()).toPoint());
    EXPECT_EQ(faultIn(nest()), "");
    drag(dragged, {320, 0}); // behind all the others
    EXPECT_EQ(faultIn(nest()), "");
    EXPECT_NE(nest().find(dragged)->lies, before);
    EXPECT_TRUE(nest().find(dragged)->isPinned);
    EXPECT_EQ(model().onBench().wish.pins.size(), 1U);
    // Far over the edge of the roll: as near as it may lie.
    drag(dragged, {0, -2000});
    EXPECT_EQ(faultIn(nest()), "");
    EXPECT_EQ(nest().decals.size(), 4U);
}

TEST_F(CuttingBench, APinHoldsWhenItIsNestedAgain) {
    const UsualShop usual = stockUsualShop();
    takeOrder({withDecal(usual, 120_mm, 150_mm), withDecal(usual, 130_mm, 80_mm),
               withDecal(usual, 90_mm, 60_mm), withDecal(usual, 200_mm, 100_mm)});
    open();
    waitForSearch();
    const DecalId pinned = nest().decals.front().decal;
    drag(pinned, {260, 40});
    const DecalPin at = placeOf(*nest().find(pinned));
    key(Qt::Key_N);
    waitForSearch();
    EXPECT_EQ(placeOf(*nest().find(pinned)), at);
    auto* gap = part<Stepper>(QStringLiteral("gap"));
    gap->setFocus();
    key(Qt::Key_Plus); // a wider gap lays all the others anew
    waitForSearch();
    EXPECT_EQ(nest().gap, 9_mm);
    EXPECT_EQ(placeOf(*nest().find(pinned)), at);
    EXPECT_EQ(faultIn(nest()), "");
    // P lets it go.
    bench()->setFocus();
    key(Qt::Key_P);
    EXPECT_TRUE(model().onBench().wish.pins.empty());
}

TEST_F(CuttingBench, PinsAndLeftOutOutliveAChangeOfTheShop) {
    const UsualShop usual = stockUsualShop();
    takeOrder({withDecal(usual, 120_mm, 150_mm), withDecal(usual, 130_mm, 80_mm)});
    open();
    waitForSearch();
    const DecalId pinned = nest().decals.front().decal;
    drag(pinned, {200, 0});
    const DecalPin at = placeOf(*nest().find(pinned));
    const DecalId out = nest().decals[nest().decals.front().decal == pinned ? 1 : 0].decal;
    QTest::mouseClick(bench()->viewport(), Qt::LeftButton, {}, bench()->rectOf(out).center().toPoint());
    key(Qt::Key_Delete);
    takeOrder({withDecal(usual, 60_mm, 60_mm)}, "Teodor Wick");
    EXPECT_EQ(nest().decals.size(), 2U);
    EXPECT_EQ(placeOf(*nest().find(pinned)), at);
    EXPECT_EQ(nest().find(out), nullptr);
    EXPECT_EQ(rows("leftOut")->rows().size(), 1);
}

TEST_F(CuttingBench, TurnLaysADecalTheOtherWayUnlessTheFilmHasAGrain) {
    const UsualShop usual = stockUsualShop();
    takeOrder({withDecal(usual, 100_mm, 160_mm)});
    open();
    const bool before = nest().decals.front().isTurned;
    key(Qt::Key_R);
    EXPECT_EQ(nest().decals.front().isTurned, !before);
    EXPECT_EQ(faultIn(nest()), "");

    const FilmId grained = addFilm("Gorse", [](Film& film) { film.hasGrain = true; });
    receiveRoll(grained, usual.place);
    GarmentDraft garment = withDecal(usual, 100_mm, 160_mm);
    garment.decals.front().film = grained;
    takeOrder({garment}, "Teodor Wick");
    SlipTarget matter;
    matter.film = grained;
    place->turnTo(matter);
    EXPECT_FALSE(button("turnDecal")->isEnabled());
    EXPECT_TRUE(button("turnDecal")->toolTip().contains(QStringLiteral("grain")));
}

TEST_F(CuttingBench, DeleteLeavesADecalOutAndItIsPutBack) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual), aGarment(usual), aGarment(usual)});
    open();
    EXPECT_GT(nest().length, 288_mm);
    const DecalId out = *model().chosen();
    key(Qt::Key_Delete);
    EXPECT_EQ(nest().decals.size(), 2U);
    EXPECT_EQ(nest().length, 288_mm);
    ASSERT_EQ(rows("leftOut")->rows().size(), 1);
    EXPECT_TRUE(rows("leftOut")->rows().front().text.contains(QStringLiteral("Heron")));
    EXPECT_TRUE(bench()->hasFocus());
    ASSERT_TRUE(model().chosen());
    button("leftOut-0")->click();
    EXPECT_EQ(nest().decals.size(), 3U);
    EXPECT_NE(nest().find(out), nullptr);
    EXPECT_FALSE(rows("leftOut")->isVisible());

    for (int each = 0; each < 3; ++each) {
        bench()->setFocus(Qt::TabFocusReason);
        key(Qt::Key_Delete);
    }
    EXPECT_TRUE(model().nests().empty());
    EXPECT_FALSE(button("markCut")->isEnabled());
    button("leftOutAll")->click();
    EXPECT_EQ(nest().decals.size(), 3U);
}

TEST_F(CuttingBench, AnotherRollMayComeFirst) {
    const UsualShop usual = stockUsualShop();
    time().pass(48h);
    const RollId newer = receiveRoll(usual.film, usual.place);
    takeOrder({aGarment(usual)});
    open();
    auto* rolls = part<OptionList>(QStringLiteral("rolls"));
    ASSERT_EQ(rolls->model()->rowCount(), 2);
    EXPECT_EQ(nest().roll, usual.roll); // the older first
    EXPECT_TRUE(rolls->model()
                    ->index(0, 0)
                    .data(Qt::AccessibleDescriptionRole)
                    .toString()
                    .contains(QStringLiteral("left")));
    key(Qt::Key_L);
    ASSERT_TRUE(rolls->hasFocus());
    key(Qt::Key_Down);
    EXPECT_EQ(nest().roll, newer);
    EXPECT_EQ(rolls->chosenAt(), 1);
    EXPECT_TRUE(rolls->hasFocus());
    EXPECT_EQ(films()->accessibleDescription().toStdString(), "1 to cut");
    key(Qt::Key_Up);
    EXPECT_EQ(nest().roll, usual.roll);
}

TEST_F(CuttingBench, LinksLeadToTheRollsAndToWhatIsCutBelowManyDecals) {
    const UsualShop usual = stockUsualShop();
    const auto done = takeOrder({aGarment(usual)}, "Teodor Wick");
    cut(garmentsOf(done.id).front(), usual.roll);
    time().pass(48h);
    receiveRoll(usual.film, usual.place); // so that there is a choice
    std::vector<GarmentDraft> garments;
    for (int at = 0; at < 30; ++at)
        garments.push_back(withDecal(usual, {60 + at}, {45}));
    takeOrder(garments);
    open();
    waitForSearch(); // what it finds moves what is below
    auto* decals = part<QWidget>(QStringLiteral("onThisFilm"));
    EXPECT_LE(decals->height(), 8 * 52) << "30 lines of decals";
    // Several of them are in view, above how it is cut.
    const int top = decals->mapTo(place.get(), QPoint()).y();
    EXPECT_GE(sentence()->mapTo(place.get(), QPoint()).y() - top, 4 * 48);
    const auto leadsTo = [&](const char* link, const char* words, const char* list) {
        EXPECT_EQ(button(link)->text().toStdString(), words);
        QCoreApplication::processEvents(); // the column is laid out
        button(link)->click();
        QCoreApplication::processEvents();
        EXPECT_TRUE(part<OptionList>(QLatin1String(list))->hasFocus()) << list;
        const auto* lines = part<OptionList>(QLatin1String(list));
        EXPECT_FALSE(lines->viewport()->visibleRegion().isEmpty()) << list;
    };
    leadsTo("toRolls", "2 rolls", "rolls");
    leadsTo("toCut", "1 cut", "cutDecals");
    ASSERT_TRUE(button("moreOnThisFilm")->isVisible());
    EXPECT_EQ(button("moreOnThisFilm")->text().toStdString(), "Show 22 more");
    button("moreOnThisFilm")->click();
    EXPECT_FALSE(button("moreOnThisFilm")->isVisible());
    EXPECT_GE(decals->sizeHint().height(), 30 * 40);
}

TEST_F(CuttingBench, AFilmWithNoRollOffersToReceiveOne) {
    const UsualShop usual = stockUsualShop();
    const FilmId gorse = addFilm("Gorse");
    GarmentDraft garment = aGarment(usual);
    garment.decals.front().film = gorse;
    takeOrder({garment});
    open();
    EXPECT_TRUE(model().nests().empty());
    EXPECT_FALSE(part<OptionList>(QStringLiteral("rolls"))->isVisible());
    ASSERT_TRUE(rows("noRoll")->isVisible());
    button("noRoll-0")->click();
    ASSERT_EQ(asked.size(), 1U);
    EXPECT_EQ(asked.front(), SlipName::ReceiveRoll);
    EXPECT_EQ(askedFor.film, gorse);
    receiveRoll(gorse, usual.place);
    EXPECT_FALSE(rows("noRoll")->isVisible());
    EXPECT_EQ(nest().decals.size(), 1U);
}

TEST_F(CuttingBench, ARollPastItsUseByIsNotCutFrom) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)});
    time().setWall(now().instant + Days{400});
    open();
    EXPECT_TRUE(model().nests().empty());
    auto* rolls = part<OptionList>(QStringLiteral("rolls"));
    EXPECT_TRUE(rolls->model()
                    ->index(0, 0)
                    .data(Qt::AccessibleDescriptionRole)
                    .toString()
                    .contains(QStringLiteral("test strip")));
    EXPECT_FALSE(bench()->accessibleDescription().isEmpty());
    EXPECT_FALSE(button("saveCutFile")->isEnabled());
    key(Qt::Key_C);
    EXPECT_EQ(roll(usual.roll).left, 5000_mm);
}

TEST_F(CuttingBench, ADecalWiderThanEveryRollIsNamedWithItsSize) {
    const UsualShop usual = stockUsualShop();
    takeOrder({withDecal(usual, 590_mm, 600_mm), aGarment(usual)});
    open();
    EXPECT_EQ(nest().decals.size(), 1U);
    ASSERT_EQ(rows("lacking")->rows().size(), 1);
    const BenchRow& row = rows("lacking")->rows().front();
    EXPECT_TRUE(row.text.contains(QStringLiteral("Heron"))) << row.text.toStdString();
    EXPECT_TRUE(row.second.contains(QStringLiteral("590"))) << row.second.toStdString();
    EXPECT_TRUE(rows("lacking")->isVisible());
}

TEST_F(CuttingBench, WhatMayNotBeCutYetSaysWhyAndWhatFreesIt) {
    const UsualShop usual = stockUsualShop();
    OrderDraft unsure = anOrder({withDecal(usual, 100_mm, 30_mm, Wording{"Juno", Face::Plain})});
    unsure.isConfirmed = false;
    valueOf(db::takeOrder(file(), unsure, now()));
    takeOrder({aGarment(usual)}, "Teodor Wick");
    open();
    EXPECT_EQ(nest().decals.size(), 1U);
    ASSERT_EQ(rows("notYet")->rows().size(), 1);
    EXPECT_FALSE(rows("notYet")->rows().front().second.isEmpty());
    button("notYet-0")->click();
    ASSERT_EQ(asked.size(), 1U);
    EXPECT_EQ(asked.front(), SlipName::ConfirmWording);
    EXPECT_TRUE(askedFor.decal.has_value());
}

TEST_F(CuttingBench, TurnsToTheFilmOfWhatItIsAskedFor) {
    const UsualShop usual = stockUsualShop();
    const FilmId gorse = addFilm("Gorse");
    const RollId gorseRoll = receiveRoll(gorse, usual.place);
    takeOrder({aGarment(usual)});
    GarmentDraft other = aGarment(usual);
    other.decals.front().film = gorse;
    const auto taken = takeOrder({other}, "Teodor Wick");
    open();
    EXPECT_EQ(model().film()->film, usual.film);
    SlipTarget matter;
    matter.roll = gorseRoll;
    place->turnTo(matter);
    EXPECT_EQ(model().film()->film, gorse);
    key(Qt::Key_F);
    ASSERT_TRUE(films()->hasFocus());
    const auto entries = [this] { return file().connection().number("SELECT COUNT(*) FROM journal_entry"); };
    const auto written = entries();
    QTest::keyClicks(films(), QStringLiteral("c")); // begins no film here, and cuts nothing
    EXPECT_EQ(entries(), written);
    key(Qt::Key_Left);
    EXPECT_EQ(model().film()->film, usual.film);
    matter = {};
    matter.garment = garmentsOf(taken.id).front();
    place->turnTo(matter);
    EXPECT_EQ(model().film()->film, gorse);
    EXPECT_TRUE(model().chosen().has_value());
}

TEST_F(CuttingBench, AThousandDecalsLieOnTheBenchAndScroll) {
    const UsualShop usual = stockUsualShop();
    const RollId longer = receiveRoll(usual.film, usual.place, 60'000_mm);
    const auto order = [&](int from) {
        std::vector<GarmentDraft> garments;
        for (int at = 0; at < 50; ++at)
            garments.push_back(withDecal(usual, {60 + (from + at) % 50}, {70 + (from + at) % 30}));
        takeOrder(garments);
    };
    for (int at = 0; at < 20; ++at)
        order(at * 50);
    open();
    std::size_t laid = 0;
    for (const Nest& each : model().nests()) {
        laid += each.decals.size();
        EXPECT_EQ(faultIn(each), "");
    }
    EXPECT_EQ(laid, 1000U);
    EXPECT_EQ(model().nests().back().roll, longer);
    // The last decal comes into view when the keyboard gets there.
    bench()->setFocus();
    const DecalId last = model().nests().back().decals.back().decal;
    SlipTarget matter;
    matter.decal = last;
    place->turnTo(matter);
    EXPECT_TRUE(QRectF(bench()->viewport()->rect()).intersects(bench()->rectOf(last)));
    EXPECT_FALSE(bench()->viewport()->grab().isNull());
}

} // namespace holdfast::app::test
