// SPDX-License-Identifier: GPL-3.0-or-later
// The room of the fair table: nothing is cut, nothing moves under a finger, all is in reach on a small
// screen.

#include "app/places/fair_table/garment_stage.h"
#include "app/theme/type.h"
#include "app/widgets/vertical_scroll.h"
#include "tests/app/fair_table_fixture.h"

#include <QAbstractButton>
#include <QLayout>
#include <QListView>
#include <QPushButton>
#include <QScrollBar>

namespace holdfast::app::test {

namespace {

class FairTableRoom : public FairTable {
protected:
    // The first step makes the table as small as the window lets it be.
    void resizeTo(QSize size) {
        const auto resized = [&] {
            m_place->resize(size);
            return m_place->size();
        };
        QTRY_COMPARE(resized(), size);
        QCoreApplication::processEvents();
    }

    QRect inPlace(const QWidget& widget) {
        return {widget.mapTo(m_place.get(), QPoint(0, 0)), widget.size()};
    }

    // Each column shows its children whole from side to side.
    void expectNothingCutAtTheSides() {
        EXPECT_LE(m_place->layout()->minimumSize().width(), m_place->width());
        for (VerticalScroll* scroll : m_place->findChildren<VerticalScroll*>())
            if (scroll->isVisible()) { // what is not has not been laid out
                EXPECT_LE(scroll->widget()->width(), scroll->viewport()->width())
                    << scroll->parentWidget()->metaObject()->className();
            }
        for (QAbstractButton* button : shownButtons())
            EXPECT_TRUE(inPlace(*button).left() >= 0 && inPlace(*button).right() <= m_place->width())
                << button->objectName().toStdString();
    }

    std::vector<QAbstractButton*> shownButtons() {
        std::vector<QAbstractButton*> shown;
        for (QAbstractButton* button : m_place->findChildren<QAbstractButton*>())
            if (button->isVisibleTo(m_place.get()))
                shown.push_back(button);
        return shown;
    }

    // The keyboard brings each section into view.
    void expectAllInReach() {
        for (const char* letter : {"g", "s", "c", "p", "d", "f", "n", "o", "e", "l", "q"}) {
            m_place->setFocus();
            keys(letter);
            QCoreApplication::processEvents();
            QWidget* focused = QApplication::focusWidget();
            ASSERT_NE(focused, nullptr) << letter;
            EXPECT_NE(focused, m_place.get()) << letter;
            // A list is seen in what it shows its rows on.
            if (auto* list = qobject_cast<QAbstractScrollArea*>(focused))
                focused = list->viewport();
            const QRect seen = focused->visibleRegion().boundingRect();
            EXPECT_GE(seen.width(), focused->width() - 1) << letter;
            EXPECT_GE(seen.height(), std::min(focused->height(), 60) - 1) << letter;
        }
    }

    void chooseMuch() {
        keys("1s2c1d2nJuno");
        key(Qt::Key_Escape);
        key(Qt::Key_Plus);
        keys("1s3c1d1");
        key(Qt::Key_Escape);
    }
};

} // namespace

TEST_F(FairTableRoom, TheTableFitsTheLowestWindow) {
    const UsualShop usual = stockUsualShop();
    wash(receiveBlanks(usual.style, "L", usual.chalk, 3), 3);
    open();
    resizeTo({1184, 626}); // 1280 by 700, less rail, header and foot
    keys("1s3c1d2nJuno");
    key(Qt::Key_Escape);
    key(Qt::Key_Plus);
    keys("1s3c1d1");
    QCoreApplication::processEvents();
    EXPECT_LE(m_place->minimumSizeHint().width(), 1184);
    EXPECT_LE(m_place->minimumSizeHint().height(), 626);
    EXPECT_EQ(m_place->size(), QSize(1184, 626));
}

TEST_F(FairTableRoom, SmallScreensHaveAllInReach) {
    stockUsualShop();
    addFilm("Kelp");
    open();
    // 1024 by 600; 800 by 1280; 1366 by 768 at 150 %; less rail, header and foot.
    for (const QSize size : {QSize(928, 500), QSize(704, 1180), QSize(814, 412)}) {
        SCOPED_TRACE(std::to_string(size.width()) + " wide");
        resizeTo(size);
        expectNothingCutAtTheSides();
        chooseMuch();
        expectNothingCutAtTheSides();
        expectAllInReach();
        EXPECT_TRUE(m_place->rect().contains(inPlace(child<QPushButton>("takeOrder"))));
        m_place->setFocus();
        keys("x");
    }
}

TEST_F(FairTableRoom, OnTheNarrowestWindowTheBillIsInTheColumnThatScrolls) {
    stockUsualShop();
    addFilm("Kelp");
    open();
    resizeTo({571, 270}); // 1366 by 768 at 200 %, less rail, header and foot
    expectNothingCutAtTheSides();
    chooseMuch();
    expectNothingCutAtTheSides();
    expectAllInReach();
    const auto& take = child<QPushButton>("takeOrder");
    EXPECT_LE(inPlace(take).right(), m_place->width());
    typeInto("customerName", QStringLiteral("Odile"));
    key(Qt::Key_Escape);
    m_place->setFocus();
    key(Qt::Key_Return); // takes it from anywhere
    EXPECT_TRUE(table().taken().has_value());
    resizeTo({1270, 668}); // and back
    QTest::qWait(50);
    EXPECT_EQ(take.visibleRegion().boundingRect(), take.rect());
    expectNothingCutAtTheSides();
}

TEST_F(FairTableRoom, NoColumnIsWiderThanItsCardBeforeASizeIsChosen) {
    stockUsualShop();
    const BlankStyleId style = addStyle("Tunic", [](BlankStyle& tunic) {
        tunic.sizes = {"XS", "S", "M", "L", "XL", "2XL", "3XL"};
        tunic.colours.clear();
        for (const char* name : {"Saltmarsh grey", "Samphire green", "Ink", "Chalk", "Rosehip", "Gorse"})
            tunic.colours.push_back({{}, name, 0x66754c});
    });
    for (const Colour& colour : coloursOf(style))
        for (const char* size : {"M", "L", "3XL"})
            wash(receiveBlanks(style, size, colour.id, 140), 70);
    open();
    keys("2");
    QTRY_VERIFY(child<QWidget>("size-6").isVisible());
    expectNothingCutAtTheSides();
    keys("s1");
    expectNothingCutAtTheSides();
}

TEST_F(FairTableRoom, NothingMovesWhenWordsComeAndGo) {
    stockUsualShop();
    const FilmId kelp = addFilm("A film of a long name", [](Film& film) { film.notFor = {Fibre::Cotton}; });
    open();
    chooseHeronOnMossTee();
    QCoreApplication::processEvents();
    const auto places = [this] {
        std::vector<QRect> found;
        for (const char* name : {"artwork-0", "film", "words", "garmentStage", "customerName", "paidNow",
                                 "total", "promise", "anotherGarment", "takeOrder"})
            found.push_back(inPlace(child<QWidget>(name)));
        return found;
    };
    const auto before = places();
    table().edit(Step::Choice, [&](TableDraft& draft) { chooseFilm(draft, kelp, false); });
    QCoreApplication::processEvents();
    EXPECT_TRUE(isSaid(QStringLiteral("Film not for cotton.")));
    EXPECT_EQ(places(), before);
    typeInto("customerName", QString(81, u'é'));
    key(Qt::Key_Return); // says that it is too long
    QCoreApplication::processEvents();
    EXPECT_EQ(places(), before);
    typeInto("customerName", QString());
    key(Qt::Key_Return); // who is it for?
    QCoreApplication::processEvents();
    EXPECT_EQ(places(), before);
}

TEST_F(FairTableRoom, TilesCountWhatTheOtherGarmentsOfTheOrderTake) {
    stockUsualShop(); // six Moss tees in M
    open();
    chooseHeronOnMossTee();
    keys("q");
    for (int more = 0; more < 3; ++more)
        key(Qt::Key_Up); // four of them
    key(Qt::Key_Plus);
    key(Qt::Key_Escape);
    m_place->setFocus();
    key(Qt::Key_Plus);
    keys("1c1");
    const std::int64_t others = draft().garments.front().copies;
    EXPECT_GE(others, 4);
    QString shown; // tiles that go away are still children for a while
    for (const QWidget* tile : m_place->findChildren<QWidget*>(QStringLiteral("size-1")))
        if (tile->isVisible())
            shown = tile->accessibleDescription();
    EXPECT_EQ(shown, QStringLiteral("%1 left").arg(6 - others));
}

TEST_F(FairTableRoom, ArrowsFromNowhereChangeNothingOfAnOrderUnderWay) {
    stockUsualShop();
    addStyle("Tote");
    open();
    chooseHeronOnMossTee();
    const TableDraft before = draft();
    m_place->setFocus();
    key(Qt::Key_Down);
    keys("2");
    EXPECT_EQ(draft(), before);
}

TEST_F(FairTableRoom, TheBillShowsCustomerAmountAndTotalOnALowWindowWhileChoosing) {
    stockUsualShop();
    open();
    resizeTo({928, 500}); // 1024 by 600, less rail, header and foot
    const auto expectSeen = [this](const char* when) {
        for (const char* name : {"customerName", "customerPhone", "paidNow", "total", "takeOrder"}) {
            const auto& widget = child<QWidget>(name);
            EXPECT_EQ(widget.visibleRegion().boundingRect(), widget.rect()) << name << ", " << when;
        }
        const auto& promise = child<QWidget>("promise");
        EXPECT_GE(promise.visibleRegion().boundingRect().height(), promise.height() - 4) << when;
    };
    expectSeen("at first");
    chooseMuch();
    expectSeen("with two garments");
    keys("f");
    QCoreApplication::processEvents();
    expectSeen("in the list of films");
    key(Qt::Key_Escape);
    takeItFor("Odile");
    ASSERT_TRUE(table().taken().has_value());
    const auto& ticket = child<QWidget>("printTicket");
    EXPECT_EQ(ticket.visibleRegion().boundingRect(), ticket.rect());
    EXPECT_GE(child<QWidget>("taken").visibleRegion().boundingRect().height(), 140); // to what is owed
}

TEST_F(FairTableRoom, TheDayIsSeenWithTheTotalAtALargerScale) {
    stockUsualShop();
    open();
    resizeTo({814, 404}); // 1366 by 768 at 150 %, less rail, header and foot
    chooseHeronOnMossTee();
    QTest::qWait(20);
    for (const char* name : {"promise", "total", "customerName", "paidNow", "takeOrder"}) {
        const auto& widget = child<QWidget>(name);
        EXPECT_EQ(widget.visibleRegion().boundingRect(), widget.rect()) << name;
    }
    EXPECT_TRUE(child<QWidget>("promise").accessibleName().startsWith(QStringLiteral("Ready")));
    // Why there is no day yet is read whole as well.
    const FilmId kelp = addFilm("Kelp", [](Film& film) { film.notFor = {Fibre::Cotton}; });
    table().edit(Step::Choice, [&](TableDraft& draft) { chooseFilm(draft, kelp, false); });
    QTest::qWait(20);
    const auto& promise = child<QWidget>("promise");
    EXPECT_TRUE(promise.accessibleName().startsWith(QStringLiteral("No day yet")))
        << promise.accessibleName().toStdString();
    EXPECT_EQ(promise.visibleRegion().boundingRect(), promise.rect());
}

// While little is said the garment has the room; what is said more takes it, and gives none back before the
// next order, since what is chosen would move under the hand.
TEST_F(FairTableRoom, WhatIsSaidBelowTheColumnTakesNoMoreRoomThanItNeeds) {
    const UsualShop usual = stockUsualShop();
    const FilmId kelp = addFilm("Kelp", [](Film& film) { film.notFor = {Fibre::Cotton}; });
    receiveRoll(kelp, usual.place);
    open();
    resizeTo({928, 500}); // 1024 by 600, less rail, header and foot
    const auto& messages = child<QWidget>("messages");
    chooseHeronOnMossTee();
    QTest::qWait(20);
    const int little = messages.height();
    EXPECT_LE(little, 60);
    const FilmId fits = draft().garment().decals.front().decal.film;
    table().edit(Step::Choice, [&](TableDraft& draft) {
        chooseFilm(draft, kelp, false);
        draft.decalAt = 0;
        moveDecal(draft, 600_mm, 0_mm);
    });
    QTest::qWait(20);
    const int much = messages.height();
    EXPECT_GT(much, little);
    table().edit(Step::Choice, [&](TableDraft& draft) { chooseFilm(draft, fits, false); });
    QTest::qWait(20);
    EXPECT_EQ(messages.height(), much);
    m_place->setFocus();
    keys("x");
    QTest::qWait(20);
    EXPECT_LE(messages.height(), little);
}

TEST_F(FairTableRoom, ReasonsAreReadWholeOnALowWindow) {
    const UsualShop usual = stockUsualShop();
    const FilmId kelp = addFilm("Kelp", [](Film& film) { film.notFor = {Fibre::Cotton}; });
    receiveRoll(kelp, usual.place);
    open();
    for (const QSize size : {QSize(928, 500), QSize(704, 1180), QSize(1270, 668)}) {
        SCOPED_TRACE(std::to_string(size.width()) + " wide");
        resizeTo(size);
        chooseHeronOnMossTee();
        // A film that does not suit, and a heron that runs over the lower edge.
        table().edit(Step::Choice, [&](TableDraft& draft) {
            chooseFilm(draft, kelp, false);
            draft.decalAt = 0;
            moveDecal(draft, 600_mm, 0_mm);
        });
        QTest::qWait(20);
        ASSERT_TRUE(isSaid(QStringLiteral("Film not for cotton.")));
        ASSERT_TRUE(isSaid(QStringLiteral("Heron is off the cloth.")));
        for (const Banner* banner : m_place->findChildren<Banner*>())
            if (banner->isVisibleTo(m_place.get()) &&
                !banner->accessibleName().contains(QStringLiteral("fits"))) {
                EXPECT_EQ(banner->visibleRegion().boundingRect(), banner->rect())
                    << banner->accessibleName().toStdString();
            }
        m_place->setFocus();
        keys("x");
    }
}

TEST_F(FairTableRoom, TheGarmentIsLargeWithFourPlacementsAtItsSide) {
    stockUsualShop();
    open();
    resizeTo({1270, 668}); // 1366 by 768, less rail, header and foot
    chooseHeronOnMossTee();
    QCoreApplication::processEvents();
    const auto& stage = child<GarmentStage>("garmentStage");
    EXPECT_GE(stage.height(), 320);
    const QRect onStage(stage.mapTo(m_place.get(), QPoint(0, 0)), stage.size());
    int left = -1;
    for (int at = 0; at < 4; ++at) {
        const QRect tile = inPlace(child<QWidget>(qPrintable(QStringLiteral("placement-%1").arg(at))));
        EXPECT_TRUE(onStage.contains(tile)) << at;
        EXPECT_TRUE(left < 0 || tile.left() == left) << at; // in one column
        left = tile.left();
        // Clear of the decal on the garment.
        EXPECT_LT(tile.right(), onStage.left() + stage.rectOf(0).left()) << at;
    }
    EXPECT_GE(stage.rectOf(0).height(), 90); // 360 mm
}

TEST_F(FairTableRoom, NothingIsCutInTheNarrowColumn) {
    stockUsualShop();
    addFilm("Marram of a long name");
    open();
    resizeTo({704, 1180}); // 800 by 1280, less rail, header and foot
    chooseHeronOnMossTee();
    QCoreApplication::processEvents();
    for (const char* name : {"film", "anotherDecal", "takeOrder", "quotation"}) {
        const auto& button = child<QPushButton>(name);
        EXPECT_GE(button.width(), button.sizeHint().width()) << name;
    }
    // Both signs of what is washed have their words whole.
    const auto& legend = child<QWidget>("dropLegend");
    EXPECT_GE(legend.height(), 2 * lineHeight(Type::Small));
    EXPECT_EQ(legend.accessibleName(), QStringLiteral("washed, can press today; needs a wash first"));
}

} // namespace holdfast::app::test
