// SPDX-License-Identifier: GPL-3.0-or-later
// The keyboard on the film shelf: where it is after each act, what is typed into lists, what a scan does.
#include "app/places/film_shelf/film_shelf_place.h"
#include "app/slips/pick_list.h"
#include "app/widgets/button.h"
#include "app/widgets/type_ahead.h"
#include "tests/app/film_shelf_fixture.h"

#include <QTest>

namespace holdfast::app::test {

namespace {

class FilmShelfKeys : public FilmShelf {
protected:
    QString current() { return shelf()->currentIndex().data().toString(); }
};

} // namespace

TEST_F(FilmShelfKeys, AfterEachActItIsWithTheRolls) {
    const UsualShop usual = stockUsualShop();
    receiveRoll(usual.film, usual.place);
    takeOrder({aGarment(usual)});
    open();
    for (const Qt::Key act : {Qt::Key_R, Qt::Key_I, Qt::Key_T, Qt::Key_M, Qt::Key_U, Qt::Key_E, Qt::Key_P,
                              Qt::Key_L, Qt::Key_L, Qt::Key_D, Qt::Key_N}) {
        key(act);
        EXPECT_TRUE(shelf()->hasFocus()) << "after " << act;
    }
    key(Qt::Key_W);
    EXPECT_TRUE(part<QListView>("rollWork")->hasFocus()) << "what if is answered by ticks";
    key(Qt::Key_W);
    EXPECT_TRUE(shelf()->hasFocus());
    key(Qt::Key_A);
    EXPECT_TRUE(shelf()->hasFocus());
}

TEST_F(FilmShelfKeys, EscapeGoesBackFromWhatIfAndTheLedgerWhereverItIs) {
    stockUsualShop(); // no work waits, so that the keyboard stays with the rolls
    open();
    for (const Qt::Key page : {Qt::Key_W, Qt::Key_L}) {
        key(page);
        EXPECT_FALSE(part<QWidget>("aboutRoll")->isVisible());
        EXPECT_TRUE(shelf()->hasFocus());
        key(Qt::Key_Escape);
        EXPECT_TRUE(part<QWidget>("aboutRoll")->isVisible());
        EXPECT_TRUE(shelf()->hasFocus());
    }
}

TEST_F(FilmShelfKeys, AClickLeavesItWithTheRolls) {
    const UsualShop usual = stockUsualShop();
    receiveRoll(usual.film, usual.place);
    takeOrder({aGarment(usual)});
    open();
    for (const char* button : {"recordReading", "testStrip", "ledgerPage", "ledgerPage", "printLabel"}) {
        QTest::mouseClick(part<Button>(button), Qt::LeftButton);
        EXPECT_TRUE(shelf()->hasFocus()) << button;
    }
    auto* work = part<QListView>("rollWork");
    const auto row = work->visualRect(work->model()->index(0, 0));
    QTest::mouseClick(work->viewport(), Qt::LeftButton, Qt::NoModifier, row.center());
    EXPECT_EQ(work->model()->index(0, 0).data(Qt::CheckStateRole).toInt(), Qt::Unchecked);
    EXPECT_TRUE(shelf()->hasFocus());
}

TEST_F(FilmShelfKeys, LettersTypedIntoTheFilmChoiceFindAFilmAndDoNothingElse) {
    const PlaceId drawer = addPlace("Film drawer");
    receiveRoll(addFilm("Dusk"), drawer);
    receiveRoll(addFilm("Chalk"), drawer);
    receiveRoll(addFilm("Tern grey"), drawer);
    open();
    const std::size_t entries = file().recent(100).size();
    key(Qt::Key_F);
    auto* films = part<PickList>("filmChoice");
    ASSERT_TRUE(films->hasFocus());
    QTest::keyClicks(films, QStringLiteral("ter"));
    EXPECT_TRUE(films->currentText().contains(QStringLiteral("Tern grey")))
        << films->currentText().toStdString();
    EXPECT_TRUE(films->hasFocus()) << "more may be typed";
    EXPECT_TRUE(asked.empty());
    EXPECT_EQ(shelf()->model()->rowCount(), 1);
    key(Qt::Key_Return);
    EXPECT_TRUE(shelf()->hasFocus());
    EXPECT_EQ(file().recent(100).size(), entries);
}

TEST_F(FilmShelfKeys, DigitsFindARollByItsNumber) {
    const UsualShop usual = stockUsualShop();
    for (int more = 0; more < 11; ++more)
        receiveRoll(usual.film, usual.place);
    open();
    key(Qt::Key_9);
    EXPECT_TRUE(current().startsWith(QStringLiteral("R-09"))) << current().toStdString();
    QTest::qWait(QApplication::keyboardInputInterval() + 50);
    QTest::keyClicks(shelf(), QStringLiteral("12"));
    EXPECT_TRUE(current().startsWith(QStringLiteral("R-12"))) << current().toStdString();
}

TEST_F(FilmShelfKeys, AScannedLabelTurnsToItsRoll) {
    const UsualShop usual = stockUsualShop();
    const RollId away = receiveRoll(addFilm("Gorse"), usual.place);
    const RollId usedUp = receiveRoll(usual.film, usual.place);
    valueOf(db::putRollAway(file(), away, true));
    valueOf(db::useUpRoll(file(), usedUp, "all cut"));
    open();
    QStringList said;
    QObject::connect(&desk(), &ShopDesk::said, place.get(), [&](const QString& words) { said << words; });
    const auto scan = [&](RollId id) {
        SlipTarget matter;
        matter.roll = id;
        return place->takeScan(matter);
    };
    EXPECT_TRUE(scan(away));
    EXPECT_TRUE(current().contains(QStringLiteral("Gorse"))) << current().toStdString();
    EXPECT_TRUE(scan(usual.roll));
    EXPECT_TRUE(current().startsWith(QStringLiteral("R-01"))) << current().toStdString();
    EXPECT_TRUE(said.isEmpty());
    EXPECT_TRUE(scan(usedUp));
    ASSERT_EQ(said.size(), 1);
    EXPECT_TRUE(said.front().contains(QStringLiteral("is used up"))) << said.front().toStdString();
    EXPECT_TRUE(shelf()->hasFocus());
    EXPECT_FALSE(place->takeScan(SlipTarget{})) << "an order or a garment is not the shelf’s";
}

TEST_F(FilmShelfKeys, ARollThatIsReceivedIsTheOneShown) {
    const UsualShop usual = stockUsualShop();
    rollReceived(usual.film, usual.place, now().today() - Days{300});
    open();
    EXPECT_TRUE(current().startsWith(QStringLiteral("R-02"))) << "the oldest is on top";
    receiveRoll(usual.film, usual.place);
    EXPECT_TRUE(current().startsWith(QStringLiteral("R-03"))) << current().toStdString();
    EXPECT_TRUE(shelf()->hasFocus());
}

TEST_F(FilmShelfKeys, AHealthyRollHasNoBlueButton) {
    stockUsualShop();
    open();
    for (const Button* button : part<QWidget>("rollPanel")->findChildren<Button*>())
        EXPECT_NE(button->kind(), Button::Kind::Primary) << button->objectName().toStdString();
}

TEST(TypeAhead, AnyWordIsFoundAndNumbersWithoutTheirZeros) {
    EXPECT_TRUE(hasWordLike(QStringLiteral("Satin soft, Chalk"), QStringLiteral("chalk")));
    EXPECT_TRUE(hasWordLike(QStringLiteral("Satin soft, Chalk"), QStringLiteral("soft, c")));
    EXPECT_TRUE(hasWordLike(QStringLiteral("Åre sand"), QStringLiteral("åre")));
    EXPECT_TRUE(hasWordLike(QStringLiteral("R-09 Dusk"), QStringLiteral("9")));
    EXPECT_TRUE(hasWordLike(QStringLiteral("R-09 Dusk"), QStringLiteral("09")));
    EXPECT_FALSE(hasWordLike(QStringLiteral("R-19 Dusk"), QStringLiteral("9")));
    EXPECT_FALSE(hasWordLike(QStringLiteral("Satin soft, Chalk"), QStringLiteral("halk")));
}

TEST(PickLists, FindAnyWordOfAName) {
    PickList list(QStringLiteral("Film"));
    list.setItems({{QStringLiteral("Satin soft, Moss")},
                   {QStringLiteral("Satin soft, Chalk")},
                   {QStringLiteral("Chalk line, Moss")}});
    showWindow(list, {300, 60});
    list.setFocus();
    QTest::keyClicks(&list, QStringLiteral("chalk"));
    EXPECT_EQ(list.currentIndex(), 1);
    QTest::qWait(QApplication::keyboardInputInterval() + 50);
    QTest::keyClicks(&list, QStringLiteral("chalk l"));
    EXPECT_EQ(list.currentIndex(), 2) << "a space belongs to what is typed";
}

} // namespace holdfast::app::test
