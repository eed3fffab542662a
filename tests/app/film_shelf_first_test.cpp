// SPDX-License-Identifier: GPL-3.0-or-later
// What if some waiting work goes first: asked and answered on the shelf, and nothing is changed by it.
#include "app/places/film_shelf/first_words.h"
#include "app/widgets/button.h"
#include "tests/app/film_shelf_fixture.h"

namespace holdfast::app::test {

TEST_F(FilmShelf, WhatIfSaysWhatIsWastedAndWhichPromisesSlip) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual), aGarment(usual)});
    takeOrder({aGarment(usual)}, "Teodor Wick");
    open();
    auto* work = part<QListView>("rollWork");
    key(Qt::Key_W);
    EXPECT_TRUE(work->hasFocus());
    ASSERT_EQ(work->model()->rowCount(), 2);
    EXPECT_EQ(work->model()->index(0, 0).data(Qt::CheckStateRole).toInt(), Qt::Unchecked);
    EXPECT_TRUE(text("spokenFor").contains(QStringLiteral("Tick what would be cut from R-")))
        << text("spokenFor").toStdString();
    EXPECT_FALSE(part<Button>("cutThese")->isVisible());
    key(Qt::Key_Space);
    EXPECT_EQ(work->model()->index(0, 0).data(Qt::CheckStateRole).toInt(), Qt::Checked);
    EXPECT_TRUE(text("spokenFor").contains(QStringLiteral("go out of date")))
        << text("spokenFor").toStdString();
    EXPECT_TRUE(text("spokenFor").contains(QStringLiteral("No promise slips")))
        << text("spokenFor").toStdString();

    key(Qt::Key_Escape);
    EXPECT_TRUE(part<Button>("cutThese")->isVisible());
    EXPECT_TRUE(text("spokenFor").contains(QStringLiteral("spoken for")));
    EXPECT_EQ(work->model()->index(0, 0).data(Qt::CheckStateRole).toInt(),
              Qt::Checked); // to be cut, as before
    EXPECT_EQ(roll(usual.roll).left, 5000_mm);
}

TEST_F(FilmShelf, WhatIfTicksWhatIsPromisedForAfterTheUseBy) {
    const UsualShop usual = stockUsualShop();
    const RollId old = rollReceived(usual.film, usual.place, now().today() - Days{360}); // five days left
    auto later = anOrder({aGarment(usual)});
    later.promised = LocalTime{now().today() + Days{20}} + Hours{15};
    valueOf(db::takeOrder(file(), later, now()));
    open();
    SlipTarget matter;
    matter.roll = old;
    place->turnTo(matter);
    EXPECT_TRUE(text("spokenFor").contains(QStringLiteral("1 decal is promised for after its use-by")))
        << text("spokenFor").toStdString();
    key(Qt::Key_W);
    auto* work = part<QListView>("rollWork");
    ASSERT_EQ(work->model()->rowCount(), 1);
    EXPECT_EQ(work->model()->index(0, 0).data(Qt::CheckStateRole).toInt(), Qt::Checked);
    EXPECT_TRUE(text("spokenFor").contains(QStringLiteral("instead of"))) << text("spokenFor").toStdString();
}

TEST_F(FilmShelf, WhatIfOfAFreshRollOffersTheWorkOfAnOtherRoll) {
    const UsualShop usual = stockUsualShop();
    const RollId old = rollReceived(usual.film, usual.place, now().today() - Days{300});
    takeOrder({aGarment(usual)});
    open();
    SlipTarget matter;
    matter.roll = usual.roll;
    place->turnTo(matter);
    auto* work = part<QListView>("rollWork");
    EXPECT_EQ(work->model()->rowCount(), 0); // all of it is allotted to the older roll
    key(Qt::Key_W);
    ASSERT_EQ(work->model()->rowCount(), 1);
    key(Qt::Key_Space);
    EXPECT_TRUE(text("spokenFor").contains(QString::fromStdString(roll(old).label())))
        << text("spokenFor").toStdString();
}

TEST_F(FilmShelf, WhatIfWordsNameTheLatestAndCountTheRest) {
    const UsualShop usual = stockUsualShop();
    const auto order =
        takeOrder({aGarment(usual), aGarment(usual), aGarment(usual), aGarment(usual), aGarment(usual)});
    PressedFirst first;
    first.length = 300_mm;
    first.rolls = {{usual.roll, 4000_mm, 1200_mm, 900_mm}};
    for (const GarmentId garment : garmentsOf(order.id))
        first.slipped.push_back({garment, Seconds{0}, Minutes{40}});
    first.notReady = {garmentsOf(order.id).front()};
    const auto plainly = [&] {
        return firstWords(*desk().shop(), usual.roll, first).replace(QChar(QChar::Nbsp), QLatin1Char(' '));
    };
    const QString said = plainly();
    EXPECT_TRUE(said.contains(QStringLiteral("by estimate 0.9 m will go out of date instead of 1.2 m")))
        << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("-a 40 min late, "))) << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("2 more late"))) << said.toStdString();
    EXPECT_TRUE(said.contains(QStringLiteral("Not ready for the press: "))) << said.toStdString();
    first.fits = false;
    EXPECT_TRUE(plainly().startsWith(QStringLiteral("It needs 0.3 m, R-")));
}

} // namespace holdfast::app::test
