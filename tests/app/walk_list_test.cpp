// SPDX-License-Identifier: GPL-3.0-or-later
// The list of the walk while it is scrolled: the head of its run stays on top and hides no chosen garment.
#include "app/places/press_walk/walk_list.h"
#include "app/places/press_walk/walk_model.h"
#include "app/theme/tokens.h"
#include "db/actions/film_actions.h"
#include "tests/app/press_walk_fixture.h"

#include <QScrollBar>

namespace holdfast::app::test {

namespace {

class WalkListTest : public PressWalkFixture {
protected:
    // One run of forty garments.
    WalkListTest() {
        wash(receiveBlanks(usual.style, "S", usual.moss, 40), 40);
        const RollId roll = receiveRoll(usual.film, usual.place, 100000_mm);
        std::vector<DecalId> decals;
        for (const GarmentId garment :
             garmentsOf(takeOrder(std::vector<GarmentDraft>(40, aGarment(usual, "S"))).id))
            for (const Decal& decal : desk().shop()->facts.garments.at(garment).decals)
                decals.push_back(decal.id);
        valueOf(db::cutDecals(file(), roll, decals, 12000_mm, desk().now()));
        open();
    }

    WalkList& list() { return part<WalkList>("walkList"); }
    // The dark plate of a run's head, at the place where it stands in a head at the top.
    bool hasHeadOnTop() {
        const QImage seen = list().viewport()->grab().toImage();
        return seen.pixelColor(14, 28) == tokens().ink;
    }
    int headHeight() { return list().sizeHintForIndex(list().model()->index(1, 0)).height(); }
};

} // namespace

TEST_F(WalkListTest, HeadOfTheRunStaysOnTop) {
    list().verticalScrollBar()->setValue(0);
    EXPECT_FALSE(hasHeadOnTop()) << "heating up comes first";
    for (const int scrolled : {200, 777, 1200, list().verticalScrollBar()->maximum()}) {
        list().verticalScrollBar()->setValue(scrolled);
        EXPECT_TRUE(hasHeadOnTop()) << "scrolled by " << scrolled;
    }
}

// Whether it is in hand or offered next: it is seen, with what was before it and what comes after it.
TEST_F(WalkListTest, WhatIsInHandIsInViewWithItsNeighbours) {
    const auto& model = static_cast<const WalkModel&>(*list().model());
    const QRect room = list().viewport()->rect();
    const auto expectInView = [&](const std::string& when) {
        const auto garment = desk().walk().onPress ? desk().walk().onPress : desk().walk().firstPlanned();
        ASSERT_TRUE(garment) << when;
        const QRect row = list().visualRect(model.indexOf(*garment));
        EXPECT_TRUE(room.contains(row.adjusted(0, 0, 0, row.height()))) << when;
        EXPECT_GT(row.top(), headHeight()) << when;
    };
    for (int pressed = 0; pressed < 8; ++pressed)
        press(*desk().walk().firstPlanned());
    key(Qt::Key_Space);
    expectInView("taken up");
    key(Qt::Key_H);
    key(Qt::Key_R);
    expectInView("put back on the walk");
    // What a hand scrolled to stays where it is while the same garment is shown.
    list().verticalScrollBar()->setValue(0);
    time().pass(61s);
    emit desk().minutePassed();
    QApplication::processEvents();
    EXPECT_EQ(list().verticalScrollBar()->value(), 0);
}

TEST_F(WalkListTest, ChosenGarmentIsNeverBeneathTheHead) {
    const int rows = list().model()->rowCount();
    list().setFocus();
    list().setCurrentIndex(list().model()->index(rows - 1, 0));
    for (int row = rows - 1; row > 3; --row) {
        QTest::keyClick(&list(), Qt::Key_Up);
        const QModelIndex current = list().currentIndex();
        ASSERT_EQ(current.row(), row - 1);
        EXPECT_GE(list().visualRect(current).top(), headHeight()) << "row " << current.row();
    }
}

TEST_F(WalkListTest, ClickOnTheHeadChoosesNoGarment) {
    list().verticalScrollBar()->setValue(900);
    const QModelIndex before = list().currentIndex();
    QTest::mouseClick(list().viewport(), Qt::LeftButton, {}, {150, 20});
    EXPECT_EQ(list().currentIndex(), before);
    EXPECT_EQ(list().visualRect(list().model()->index(1, 0)).top(), 0) << "its run begins on top";
}

} // namespace holdfast::app::test
