// SPDX-License-Identifier: GPL-3.0-or-later
// The fair table by pointer alone, and by finger: whatever has a key can be pressed, and what can be pressed
// is large enough.

#include "app/places/fair_table/garment_stage.h"
#include "app/places/fair_table/order_lines.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/stepper.h"
#include "tests/app/fair_table_fixture.h"

#include <QAbstractButton>
#include <QListView>
#include <QPushButton>

namespace holdfast::app::test {

namespace {

constexpr int kFinger = 44; // px

class FairTablePointer : public FairTable {
protected:
    void click(const char* name) {
        QTest::mouseClick(&child<QAbstractButton>(name), Qt::LeftButton);
        QCoreApplication::processEvents();
    }
    void resizeTo(QSize size) {
        m_place->resize(size);
        QCoreApplication::processEvents();
        m_place->resize(size); // the first step makes the table as small as the window lets it be
        QCoreApplication::processEvents();
    }

    // Pressing the name of a section only moves the keyboard to its tiles, each of which a finger meets
    // itself.
    static bool isNameOfSection(const QWidget& widget) {
        const auto* hint = qobject_cast<const KeyHint*>(&widget);
        return hint && !hint->parentWidget()->findChild<QListView*>(QStringLiteral("films"));
    }

    void expectLargeEnough(const char* when) {
        QWidget* window = m_place->window();
        for (const QWidget* widget : window->findChildren<QWidget*>()) {
            const bool isPressed = qobject_cast<const QAbstractButton*>(widget) ||
                                   qobject_cast<const Field*>(widget) || qobject_cast<const Stepper*>(widget);
            if (!isPressed || !widget->isVisible() || isNameOfSection(*widget))
                continue;
            EXPECT_GE(widget->width(), kFinger) << when << " " << widget->objectName().toStdString();
            EXPECT_GE(widget->height(), kFinger) << when << " " << widget->objectName().toStdString();
        }
        for (const QListView* list : window->findChildren<QListView*>())
            if (list->isVisible() && list->model()->rowCount() > 0) {
                EXPECT_GE(list->sizeHintForRow(0), kFinger)
                    << when << " " << list->objectName().toStdString();
            }
    }

    void layWordsOverTheHeron() {
        chooseHeronOnMossTee();
        keys("nJuno");
        key(Qt::Key_Escape);
        table().edit(Step::Choice, [](TableDraft& draft) {
            const DecalDraft& heron = draft.garment().decals[0].decal;
            draft.decalAt = 1;
            moveDecal(draft, heron.below + Millimetres{20}, heron.aside);
        });
        QCoreApplication::processEvents();
    }
    bool isHeronLowest() {
        return std::holds_alternative<Artwork>(draft().garment().decals[0].decal.content);
    }
};

} // namespace

TEST_F(FairTablePointer, WhatAFingerMeetsIsLargeEnoughAtEachSize) {
    stockUsualShop();
    addFilm("Kelp", [](Film& film) { film.notFor = {Fibre::Cotton}; });
    open();
    // 1366 by 768, 1024 by 600, 800 by 1280, 1366 by 768 at 150 %; less rail, header and foot.
    for (const QSize size : {QSize(1270, 668), QSize(928, 500), QSize(704, 1180), QSize(814, 412)}) {
        SCOPED_TRACE(std::to_string(size.width()) + " wide");
        resizeTo(size);
        layWordsOverTheHeron();
        keys("e5"); // how it was paid is asked
        QTest::mouseClick(child<Field>("paidNow").editor(), Qt::LeftButton);
        QCoreApplication::processEvents();
        expectLargeEnough("with an amount");
        m_place->setFocus();
        table().edit(Step::Choice, [](TableDraft& draft) { moveDecal(draft, 690_mm, 0_mm); });
        table().edit(Step::Choice, [](TableDraft& draft) {
            draft.garment().copies = 60; // more than hang there
            draft.paidHow = PaidHow::Cash;
        });
        QCoreApplication::processEvents();
        EXPECT_NE(m_place->findChild<QPushButton*>(QStringLiteral("bannerAction")), nullptr);
        expectLargeEnough("with what is in the way");
        keys("f");
        expectLargeEnough("with the films");
        key(Qt::Key_Escape);
        takeItFor("Odile");
        ASSERT_TRUE(table().taken().has_value());
        expectLargeEnough("once it is taken");
    }
}

TEST_F(FairTablePointer, WhatLiesOverWhatIsChangedByAButtonOnTheGarment) {
    stockUsualShop();
    open();
    layWordsOverTheHeron();
    ASSERT_TRUE(isHeronLowest());
    auto& layer = child<QPushButton>("layOver");
    EXPECT_EQ(layer.text(), QStringLiteral("Lay under Heron"));
    click("layOver");
    EXPECT_FALSE(isHeronLowest());
    EXPECT_EQ(draft().decalAt, std::optional<std::size_t>(0)); // the words are still at hand
    EXPECT_EQ(layer.text(), QStringLiteral("Lay over Heron"));
    place().undoOwn();
    EXPECT_TRUE(isHeronLowest());
    // Where decals share no cloth there is nothing to lay over anything.
    table().edit(Step::Choice, [](TableDraft& draft) { moveDecal(draft, 600_mm, 0_mm); });
    QCoreApplication::processEvents();
    EXPECT_FALSE(layer.isVisible());
}

TEST_F(FairTablePointer, OfThreeDecalsOneIsLaidOverTheNextThatItOverlaps) {
    stockUsualShop();
    open();
    layWordsOverTheHeron();
    click("anotherDecal");
    keys("3");
    ASSERT_EQ(draft().garment().decals.size(), 3u);
    // The third is away from both; the heron goes over the words and under nothing else.
    table().edit(Step::Choice, [](TableDraft& draft) {
        moveDecal(draft, 690_mm, 0_mm);
        draft.decalAt = 0;
    });
    QCoreApplication::processEvents();
    click("layOver");
    EXPECT_TRUE(std::holds_alternative<Wording>(draft().garment().decals[0].decal.content));
    EXPECT_EQ(draft().decalAt, std::optional<std::size_t>(1));
}

TEST_F(FairTablePointer, AnAmountOfOnesOwnIsPressedInDigits) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    keys("e");
    EXPECT_EQ(m_place->window()->findChild<QWidget*>(QStringLiteral("amountPad")), nullptr); // by key: none
    m_place->setFocus();
    QTest::mouseClick(child<Field>("paidNow").editor(), Qt::LeftButton);
    auto& pad = child<QWidget>("amountPad");
    ASSERT_TRUE(pad.isVisible());
    for (const char* digit : {"amountPad-6", "amountPad-9", "amountPad-4"}) // 7 . 5
        click(digit);
    EXPECT_EQ(draft().paidNow, "7.5");
    EXPECT_EQ(table().sums().deposit.minor, 750);
    click("amountPad-11");
    EXPECT_EQ(draft().paidNow, "");
    click("amountPad-0");
    click("paidInCash");
    EXPECT_EQ(draft().paidHow, PaidHow::Cash);
    EXPECT_EQ(table().sums().deposit.minor, 100);
    m_place->setFocus();
    EXPECT_FALSE(pad.isVisible());
}

TEST_F(FairTablePointer, ALineOfTheOrderIsRemovedByPointer) {
    stockUsualShop();
    open();
    chooseHeronOnMossTee();
    key(Qt::Key_Plus);
    keys("1s3c1d1");
    key(Qt::Key_Escape);
    ASSERT_EQ(draft().garments.size(), 2u);
    auto& lines = child<OrderLines>("orderLines");
    QStringList said;
    QObject::connect(&desk(), &ShopDesk::said, m_place.get(),
                     [&](const QString& words) { said.append(words); });
    const auto pressAt = [&](int row, int x) {
        lines.scrollTo(lines.model()->index(row, 0));
        QTest::mouseClick(lines.viewport(), Qt::LeftButton, Qt::NoModifier,
                          QPoint(x, lines.visualRect(lines.model()->index(row, 0)).center().y()));
        QCoreApplication::processEvents();
    };
    pressAt(0, 20); // only chooses what was not at hand
    QTRY_COMPARE(draft().garmentAt, 0u);
    EXPECT_EQ(draft().garments.size(), 2u);
    pressAt(0, 20); // its cap
    EXPECT_EQ(draft().garments.size(), 1u);
    ASSERT_EQ(said.size(), 1);
    EXPECT_TRUE(said[0].startsWith(QStringLiteral("Removed: ")));
    table().undo();
    EXPECT_EQ(draft().garments.size(), 2u);
}

} // namespace holdfast::app::test
