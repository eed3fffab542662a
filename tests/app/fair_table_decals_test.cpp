// SPDX-License-Identifier: GPL-3.0-or-later
// Decals at the fair table: where and how large, of which film, and what is said of them at once.

#include "app/desk/formats.h"
#include "app/places/fair_table/garment_stage.h"
#include "tests/app/fair_table_fixture.h"

#include <QLabel>
#include <QListView>
#include <QPushButton>

namespace holdfast::app::test {

TEST_F(FairTable, BlanksAreNoWordsAndTooManyLettersAreSaid) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    typeInto("words", QStringLiteral("   "));
    EXPECT_EQ(draft().garment().decals.size(), 1u);
    typeInto("customerName", QStringLiteral("Odile"));
    typeInto("words", QString(61, u'm'));
    key(Qt::Key_Return);
    EXPECT_TRUE(child<Field>("words").error().contains(QStringLiteral("60")));
    EXPECT_TRUE(orders().empty());
    typeInto("words", QString());
    EXPECT_EQ(draft().garment().decals.size(), 1u);
}

TEST_F(FairTable, AWidthThatCannotBeIsSaidAndChangesNothing) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    const DecalDraft before = draft().decal()->decal;
    for (const char* bad : {"-1", "0", "4", "2001", "99999999999", "wide"}) {
        typeInto("width", QString::fromLatin1(bad));
        EXPECT_FALSE(child<Field>("width").error().isEmpty()) << bad;
        EXPECT_EQ(draft().decal()->decal.height, before.height) << bad;
    }
    typeInto("width", QStringLiteral("140"));
    EXPECT_EQ(child<Field>("width").error(), QString());
    EXPECT_EQ(draft().decal()->decal.width, 140_mm);
    EXPECT_LT(draft().decal()->decal.height, before.height);
    EXPECT_EQ(draft().decal()->decal.below, before.below);
}

TEST_F(FairTable, ADecalWiderThanEveryRollIsSaidAtOnce) {
    stockUsualShop(); // rolls of 500 mm
    open();
    chooseHeronOnMossTee();
    EXPECT_FALSE(isSaid(QStringLiteral("fits no roll")));
    typeInto("width", QStringLiteral("620"));
    EXPECT_TRUE(isSaid(QStringLiteral("Heron, 620 mm wide, fits no roll.")));
    EXPECT_TRUE(isSaid(QStringLiteral("500 mm")));
}

TEST_F(FairTable, ARollThatIsTooShortIsSaidWithItsMetres) {
    const UsualShop usual = stockUsualShop();
    const FilmId film = addFilm("Gorse");
    receiveRoll(film, usual.place, 200_mm);
    open();
    chooseHeronOnMossTee();
    table().edit(Step::Choice, [&](TableDraft& draft) { chooseFilm(draft, film, false); });
    EXPECT_TRUE(isSaid(QStringLiteral("too short")));
    EXPECT_TRUE(isSaid(metres(200_mm)));
}

TEST_F(FairTable, AFilmThatDoesNotSuitTheClothIsSaidAtOnceAndInTheList) {
    stockUsualShop();
    addFilm("Kelp", [](Film& film) { film.notFor = {Fibre::Cotton}; });
    open();
    chooseHeronOnMossTee();
    EXPECT_TRUE(isSaid(QStringLiteral("fits.")));
    keys("f");
    auto& films = child<QListView>("films");
    ASSERT_EQ(QApplication::focusWidget(), &films);
    ASSERT_EQ(films.model()->rowCount(), 2);
    EXPECT_TRUE(films.model()->index(1, 0).data().toString().contains(QStringLiteral("is not made for")));
    key(Qt::Key_Down);
    key(Qt::Key_Return);
    EXPECT_TRUE(isSaid(QStringLiteral("Film not for cotton.")));
    EXPECT_TRUE(isSaid(QStringLiteral("No roll of Marram Soft, Kelp")));
    EXPECT_EQ(QApplication::focusWidget(), &child<QWidget>("artwork-1")); // where it was
}

TEST_F(FairTable, EscapeLeavesTheFilmsAsTheyWere) {
    stockUsualShop();
    addFilm("Kelp");
    open();
    chooseHeronOnMossTee();
    const FilmId before = draft().decal()->decal.film;
    keys("f");
    key(Qt::Key_Down);
    key(Qt::Key_Escape);
    EXPECT_EQ(draft().decal()->decal.film, before);
    EXPECT_FALSE(child<QListView>("films").isVisibleTo(m_place.get()));
}

TEST_F(FairTable, AFilmIsChosenForBothDecalsOrForOneAlone) {
    stockUsualShop();
    const FilmId kelp = addFilm("Kelp");
    open();
    chooseHeronOnMossTee();
    keys("nJo");
    key(Qt::Key_Escape);
    keys("f");
    key(Qt::Key_Down);
    key(Qt::Key_Return, Qt::ShiftModifier);
    EXPECT_NE(draft().garment().decals[0].decal.film, kelp);
    EXPECT_EQ(draft().garment().decals[1].decal.film, kelp);
    table().undo();
    keys("f");
    key(Qt::Key_Down);
    key(Qt::Key_Return);
    EXPECT_EQ(draft().garment().decals[0].decal.film, kelp);
    EXPECT_EQ(draft().garment().decals[1].decal.film, kelp);
}

TEST_F(FairTable, ABlankThatIsNotOnTheRailIsSaidAtOnce) {
    stockUsualShop();
    open();
    keys("1s4c1"); // XL
    EXPECT_TRUE(isSaid(QStringLiteral("No Tee, XL, Moss on the rail.")));
    keys("s2");
    EXPECT_TRUE(said().empty());
    keys("q");
    for (int more = 0; more < 7; ++more)
        key(Qt::Key_Up);
    EXPECT_TRUE(isSaid(QStringLiteral("Only 6 of 8 Tee, M, Moss on the rail.")));
}

TEST_F(FairTable, WhatStandsInThePlatensWayAndWearForChildrenIsSaidAtOnce) {
    stockUsualShop();
    addStyle("Small hoodie", [](BlankStyle& style) {
        style.obstacles = {{Obstacle::Zip, std::nullopt}};
        style.forChild = true;
    });
    open();
    keys("2");
    EXPECT_TRUE(isSaid(QStringLiteral("zip")));
    EXPECT_TRUE(isSaid(QStringLiteral("check local law")));
    keys("g1");
    EXPECT_FALSE(isSaid(QStringLiteral("zip")));
}

TEST_F(FairTable, ALabelThatIsNotReadIsSaidOnceAndItsFormIsAKeyAway) {
    stockUsualShop();
    const FilmId kelp = addFilm("Kelp");
    const BlankStyleId unread = addStyle("Smock", [](BlankStyle& style) { style.label.reset(); });
    open();
    keys("2d1nJo");
    table().edit(Step::Choice, [&](TableDraft& draft) { chooseFilm(draft, kelp, true); });
    const auto lines = said();
    EXPECT_EQ(std::ranges::count_if(
                  lines, [](const QString& line) { return line.contains(QStringLiteral("label")); }),
              1);
    std::optional<SlipTarget> asked;
    QObject::connect(&desk(), &ShopDesk::slipAsked, m_place.get(),
                     [&](SlipName slip, const SlipTarget& matter) {
                         EXPECT_EQ(slip, SlipName::ReadLabel);
                         asked = matter;
                     });
    auto* action = child<Banner>("message-0").findChild<QPushButton*>(QStringLiteral("bannerAction"));
    ASSERT_NE(action, nullptr);
    action->setFocus();
    key(Qt::Key_Return);
    ASSERT_TRUE(asked.has_value());
    EXPECT_EQ(asked->style, unread);
}

TEST_F(FairTable, ThinStrokesAreCalledAnEstimate) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    typeInto("words", QStringLiteral("Juno"));
    typeInto("width", QStringLiteral("30"));
    EXPECT_TRUE(isSaid(QStringLiteral("Letters too small to weed.")));
    EXPECT_TRUE(isSaid(QStringLiteral("an estimate")));
    typeInto("width", QStringLiteral("150"));
    EXPECT_FALSE(isSaid(QStringLiteral("Letters too small to weed.")));
}

TEST_F(FairTable, AWashedColourIsOfferedWhereItIsSooner) {
    const UsualShop usual = stockUsualShop();
    wash(receiveBlanks(usual.style, "L", usual.chalk, 3), 3);
    open();
    keys("1s3c1d2"); // L, Moss: unwashed
    auto& sooner = child<QPushButton>("sooner");
    ASSERT_TRUE(sooner.isVisibleTo(m_place.get()));
    EXPECT_TRUE(sooner.text().startsWith(QStringLiteral("Washed Chalk: ")));
    const LocalTime before = table().sums().promise->readyAt;
    sooner.setFocus();
    key(Qt::Key_Space);
    EXPECT_EQ(draft().garment().colour, usual.chalk);
    EXPECT_LT(table().sums().promise->readyAt, before);
    EXPECT_FALSE(sooner.isVisibleTo(m_place.get()));
}

TEST_F(FairTable, ASecondDecalIsAddedByItsKey) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    keys("a1");
    ASSERT_EQ(draft().garment().decals.size(), 2u);
    EXPECT_EQ(draft().garment().decals[1].decal.content, DecalContent{Artwork{"tern"}});
    keys("p3"); // the back
    EXPECT_EQ(draft().garment().decals[1].decal.placement, Placement::Back);
    EXPECT_EQ(draft().garment().decals[0].decal.placement, Placement::Chest);
}

TEST_F(FairTable, ArrowsNudgeFiveMillimetresAndShiftOne) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    auto& stage = child<GarmentStage>("garmentStage");
    stage.setFocus();
    const DecalDraft before = draft().decal()->decal;
    key(Qt::Key_Down);
    key(Qt::Key_Right);
    key(Qt::Key_Right, Qt::ShiftModifier);
    EXPECT_EQ(draft().decal()->decal.below, before.below + 5_mm);
    EXPECT_EQ(draft().decal()->decal.aside, before.aside + 6_mm); // to the wearer's left
    for (int up = 0; up < 40; ++up)
        key(Qt::Key_Up);
    EXPECT_EQ(draft().decal()->decal.below, 0_mm);
}

TEST_F(FairTable, AMouseMovesADecalAndSizesItByTheMiddleOfAnEdge) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    auto& stage = child<GarmentStage>("garmentStage");
    const DecalDraft before = draft().decal()->decal;
    const auto drag = [&](QPoint from, QPoint by) {
        QTest::mousePress(&stage, Qt::LeftButton, Qt::NoModifier, from);
        QTest::mouseMove(&stage, from + by / 2);
        QTest::mouseMove(&stage, from + by);
        QTest::mouseRelease(&stage, Qt::LeftButton, Qt::NoModifier, from + by);
    };
    drag(stage.rectOf(0).center().toPoint(), {20, 30});
    EXPECT_GT(draft().decal()->decal.below, before.below + 20_mm);
    EXPECT_GT(draft().decal()->decal.aside, before.aside + 15_mm);
    EXPECT_EQ(draft().decal()->decal.width, before.width);
    table().undo(); // the whole drag is one step
    EXPECT_EQ(draft().decal()->decal, before);
    const double was = static_cast<double>(before.width.value) / static_cast<double>(before.height.value);
    const auto expectSameShape = [&] {
        const DecalDraft& after = draft().decal()->decal;
        EXPECT_NEAR(static_cast<double>(after.width.value) / static_cast<double>(after.height.value), was,
                    0.02);
        EXPECT_EQ(after.aside, before.aside);
    };
    const QRectF box = stage.rectOf(0);
    const auto right = QPointF(box.right(), box.center().y()).toPoint();
    drag(right, {-15, 40}); // only how far across counts
    EXPECT_LT(draft().decal()->decal.width, before.width);
    EXPECT_EQ(draft().decal()->decal.below, before.below);
    expectSameShape();
    table().undo();
    drag(QPointF(box.center().x(), box.bottom()).toPoint(), {40, 12});
    EXPECT_GT(draft().decal()->decal.height, before.height);
    EXPECT_EQ(draft().decal()->decal.below, before.below);
    expectSameShape();
    table().undo();
    drag(QPointF(box.center().x(), box.top()).toPoint(), {0, 20});
    const DecalDraft& fromAbove = draft().decal()->decal;
    EXPECT_GT(fromAbove.below, before.below);
    EXPECT_NEAR(static_cast<double>((fromAbove.below + fromAbove.height).value),
                static_cast<double>((before.below + before.height).value), 2);
    expectSameShape();
}

} // namespace holdfast::app::test
