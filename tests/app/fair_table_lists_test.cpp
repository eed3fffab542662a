// SPDX-License-Identifier: GPL-3.0-or-later
// The lists that open at the fair table, films and known customers: what is typed into them goes no further.

#include "app/places/fair_table/customer_list.h"
#include "app/widgets/choice.h"
#include "db/actions/blank_actions.h"
#include "db/actions/film_actions.h"
#include "tests/app/fair_table_fixture.h"

#include <QListView>
#include <QPushButton>

namespace holdfast::app::test {

namespace {

class FairTableLists : public FairTable {
protected:
    // A tee with a heron on it, and the list of four films open.
    void openFilms() {
        const UsualShop usual = stockUsualShop();
        m_kelp = addFilm("Kelp");
        m_dune = addFilm("Dune");
        m_film = addFilm("Dulse", [](Film& film) { film.finish = "Skerry Hard"; });
        receiveRoll(m_dune, usual.place, 2'900_mm);
        receiveRoll(m_dune, usual.place, 9'800_mm);
        open();
        chooseHeronOnMossTee();
        m_before = draft();
        keys("f");
    }
    QListView& films() { return child<QListView>("films"); }
    bool isListOpen() { return films().isVisibleTo(m_place.get()); }
    QString filmAtHand() { return films().currentIndex().data(Qt::EditRole).toString(); }
    FilmId chosenFilm() { return draft().decal()->decal.film; }

    FilmId m_kelp;
    FilmId m_dune;
    FilmId m_film;
    TableDraft m_before;
};

} // namespace

TEST_F(FairTableLists, WhatIsTypedFindsAFilmByAnyWordOfItsNameAndActsOnNothing) {
    openFilms();
    keys("dusk"); // D, S and K are letters of the table: decal, size, quote
    EXPECT_TRUE(filmAtHand().contains(QStringLiteral("Dusk")));
    EXPECT_EQ(QApplication::focusWidget(), &films());
    EXPECT_EQ(draft(), m_before);
    EXPECT_TRUE(orders().empty());
    QTest::qWait(QApplication::keyboardInputInterval() + 50);
    keys("sk"); // the finish
    EXPECT_TRUE(filmAtHand().contains(QStringLiteral("Dulse")));
    key(Qt::Key_Return);
    EXPECT_EQ(chosenFilm(), m_film);
    EXPECT_FALSE(isListOpen());
    EXPECT_EQ(draft().garment().style, m_before.garment().style);
}

TEST_F(FairTableLists, EveryLetterAndDigitStaysInTheListOfFilms) {
    openFilms();
    for (const char* letter = "abcdefghijklmnopqrstuvwxyz0123456789+-"; *letter; ++letter) {
        keys(std::string(1, *letter).c_str());
        ASSERT_EQ(QApplication::focusWidget(), &films()) << *letter;
        ASSERT_TRUE(isListOpen()) << *letter;
        ASSERT_EQ(draft(), m_before) << *letter;
    }
    EXPECT_TRUE(orders().empty());
}

TEST_F(FairTableLists, DigitsGoToTheFirstNine) {
    openFilms();
    ASSERT_EQ(films().model()->rowCount(), 4);
    keys("3");
    EXPECT_EQ(films().currentIndex().row(), 2);
    keys("9"); // there is no ninth
    EXPECT_EQ(films().currentIndex().row(), 2);
}

TEST_F(FairTableLists, EscapeClosesTheFilmsAndTheKeyboardGoesBack) {
    openFilms();
    key(Qt::Key_Escape);
    EXPECT_FALSE(isListOpen());
    EXPECT_TRUE(child<QWidget>("artwork-1").hasFocus()); // the heron, where it was
    keys("f");
    key(Qt::Key_Down);
    key(Qt::Key_Return);
    EXPECT_TRUE(child<QWidget>("artwork-1").hasFocus());
    EXPECT_NE(chosenFilm(), m_before.decal()->decal.film);
}

TEST_F(FairTableLists, TheFilmsAreOpenOnlyWhileTheyHaveTheKeyboard) {
    openFilms();
    child<Field>("customerName").editor()->setFocus();
    EXPECT_FALSE(isListOpen());
    keys("Odile");
    key(Qt::Key_Escape);
    keys("f");
    EXPECT_TRUE(isListOpen());
    EXPECT_EQ(QApplication::focusWidget(), &films());
    QTest::mouseClick(&child<QPushButton>("takeOrder"), Qt::LeftButton);
    ASSERT_EQ(orders().size(), 1u);
    EXPECT_FALSE(isListOpen()); // with the order it was for
}

TEST_F(FairTableLists, MetresOnSeveralRollsSayOnHowManyAndWhichIsFirst) {
    openFilms();
    keys("dun");
    const QString line = films().currentIndex().data().toString();
    EXPECT_TRUE(line.contains(QStringLiteral("12.7 m on 2 rolls"))) << line.toStdString();
    EXPECT_TRUE(line.contains(QStringLiteral(" first"))) << line.toStdString();
    keys("9");
    films().setCurrentIndex(films().model()->index(0, 0));
    QTest::qWait(QApplication::keyboardInputInterval() + 50);
    keys("dusk");
    const QString alone = films().currentIndex().data().toString();
    EXPECT_FALSE(alone.contains(QStringLiteral("first"))) << alone.toStdString();
}

TEST_F(FairTableLists, AKnownCustomerIsFoundByNameOrNumberAndChosenByKeys) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Odile Farrant");
    takeOrder({aGarment(usual)}, "Odo Whelan");
    open();
    chooseHeronOnMossTee();
    keys("oOd");
    auto& list = child<CustomerList>("customers");
    ASSERT_TRUE(list.isVisible());
    key(Qt::Key_Down);
    key(Qt::Key_Return); // chooses; takes no order
    EXPECT_FALSE(list.isVisible());
    EXPECT_EQ(orders().size(), 2u);
    EXPECT_EQ(child<Field>("customerName").text(), QStringLiteral("Odile Farrant"));
    EXPECT_EQ(child<Field>("customerPhone").text(), QStringLiteral("07700 900418"));
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 3u);
    EXPECT_EQ(desk().shop()->facts.customers.size(), 2u);

    typeInto("customerName", QStringLiteral("9004"));
    EXPECT_TRUE(list.isVisible());
    key(Qt::Key_Escape);
    EXPECT_FALSE(list.isVisible());
    EXPECT_EQ(child<Field>("customerName").text(), QStringLiteral("9004"));
}

TEST_F(FairTableLists, EnterOnANumberThatOneCustomerHasTakesThatCustomer) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Odile Farrant"); // 07700 900418
    open();
    chooseHeronOnMossTee();
    keys("o900418");
    auto& list = child<CustomerList>("customers");
    ASSERT_TRUE(list.isVisible());
    key(Qt::Key_Return);
    EXPECT_FALSE(list.isVisible());
    EXPECT_EQ(orders().size(), 1u); // chooses; takes no order
    EXPECT_EQ(child<Field>("customerName").text(), QStringLiteral("Odile Farrant"));
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 2u);
    EXPECT_EQ(desk().shop()->facts.customers.size(), 1u);
}

TEST_F(FairTableLists, ANameOrANewCustomersNumberTakesNobody) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Odile Farrant");
    open();
    chooseHeronOnMossTee();
    keys("oOdile"); // one customer is shown, but it is a name: another Odile
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 2u);
    EXPECT_EQ(desk().shop()->facts.customers.size(), 2u);

    chooseHeronOnMossTee();
    keys("oSam");
    typeInto("customerPhone", QStringLiteral("900418")); // a name is typed: the number is Sam's
    key(Qt::Key_Return);
    ASSERT_EQ(orders().size(), 3u);
    EXPECT_EQ(orders()[0].customer, "Sam");
}

TEST_F(FairTableLists, EscapeClosesTheCustomersAndLettersGoOnIntoTheName) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Odile Farrant");
    open();
    chooseHeronOnMossTee();
    const TableDraft before = draft();
    keys("oOd");
    key(Qt::Key_Escape);
    EXPECT_FALSE(child<CustomerList>("customers").isVisible());
    EXPECT_EQ(QApplication::focusWidget(), child<Field>("customerName").editor());
    keys("ks");
    EXPECT_EQ(child<Field>("customerName").text(), QStringLiteral("Odks"));
    EXPECT_EQ(draft().garments, before.garments);
    EXPECT_EQ(orders().size(), 1u);
}

TEST_F(FairTableLists, WhatIsRetiredIsNotOfferedAndAGarmentThatHasItKeepsIt) {
    const UsualShop usual = stockUsualShop();
    addStyle("Tote");
    addFilm("Kelp");
    addFilm("Oyster", [](Film& film) { film.isRetired = true; });
    open();
    chooseHeronOnMossTee();
    const TableDraft before = draft();
    const auto tiles = [this](const char* name) { return child<Choice>(name).items().size(); };
    EXPECT_EQ(tiles("style"), 2);
    const auto colours = tiles("colour");
    BlankStyle style = desk().shop()->facts.styles.at(usual.style);
    style.isRetired = true;
    for (Colour& colour : style.colours)
        colour.isRetired = true;
    valueOf(db::changeStyle(file(), style));
    Film film = desk().shop()->facts.films.at(usual.film);
    film.isRetired = true;
    valueOf(db::changeFilmSheet(file(), film));
    EXPECT_EQ(tiles("style"), 2) << "the garment at hand is of it";
    EXPECT_EQ(tiles("colour"), 1) << "of " << colours << " its own alone";
    EXPECT_EQ(draft(), before);
    keys("f");
    EXPECT_EQ(films().model()->rowCount(), 2) << "its own film, and one that is offered";
    key(Qt::Key_Escape);
    keys("+");
    EXPECT_EQ(tiles("style"), 1) << "the next garment is of another";
    keys("g1");
    EXPECT_EQ(desk().shop()->facts.styles.at(draft().garment().style).name, "Tote");
}

TEST_F(FairTableLists, TheCustomersLeaveTheFieldAndItsRingFree) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)}, "Odile Farrant");
    open();
    for (const char* field : {"customerName", "customerPhone"}) {
        typeInto("customerName", QString());
        typeInto(field, field == std::string("customerName") ? QStringLiteral("Od") : QStringLiteral("900"));
        auto& list = child<CustomerList>("customers");
        ASSERT_TRUE(list.isVisible()) << field;
        const auto inWindow = [this](QWidget& widget) {
            return QRect(widget.mapTo(m_place->window(), QPoint(0, 0)), widget.size());
        };
        const QRect ring = inWindow(child<Field>(field)).adjusted(-5, -5, 5, 5);
        EXPECT_FALSE(ring.intersects(inWindow(list))) << field;
        EXPECT_TRUE(m_place->window()->rect().contains(inWindow(list))) << field;
    }
}

} // namespace holdfast::app::test
