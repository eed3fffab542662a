// SPDX-License-Identifier: GPL-3.0-or-later
// Blank rail by keyboard: counts, the basket, starting a wash, softener, drying, and coming from a hold.

#include "app/places/blank_rail/blank_rail_place.h"

#include "app/places/blank_rail/rail_cell.h"
#include "app/places/blank_rail/rail_grid.h"
#include "app/widgets/field.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/stepper.h"
#include "app/widgets/switch.h"
#include "db/actions/blank_actions.h"
#include "db/tables/ledgers.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QImage>
#include <QPainter>
#include <QPushButton>
#include <QScrollBar>
#include <QTest>

namespace holdfast::app::test {

namespace {

class BlankRail : public ShopFixture {
protected:
    void open(QSize size = {1270, 680}) {
        m_place = std::make_unique<BlankRailPlace>(desk());
        m_place->headerTools();
        showWindow(*m_place, size);
        m_place->opened();
    }
    std::size_t loads() { return valueOf(file().read(db::loadsUnderWay)).size(); }
    std::size_t entries() { return file().recent(1000).size(); }
    KeyHint& hint(const QString& words) {
        for (auto* each : m_place->findChildren<KeyHint*>())
            if (each->accessibleName() == words)
                return *each;
        stopBecause("There is no hint " + words.toStdString());
    }
    // In the middle of a cell.
    QPoint cell(int colour, int size) {
        auto& grid = find<RailGrid>("railGrid");
        const RailColumns columns = grid.columnsIn(grid.width());
        return {static_cast<int>(columns.left(static_cast<std::size_t>(size)) + columns.each / 2),
                cellHeight() * colour + cellHeight() / 2};
    }
    QWidget* keyboard() { return QApplication::focusWidget(); }
    void TearDown() override { m_place.reset(); }

    template <class Wanted>
    Wanted& find(const char* name) {
        auto* found = m_place->findChild<Wanted*>(QString::fromLatin1(name));
        if (!found)
            stopBecause(std::string("There is no ") + name + ".");
        return *found;
    }
    void key(int pressed, Qt::KeyboardModifiers with = {}) {
        QTest::keyClick(m_place->window()->focusWidget(), static_cast<Qt::Key>(pressed), with);
    }
    RailCount countAt(const UsualShop& usual, const std::string& size) {
        const auto shop = desk().shop();
        for (const StyleRail& hung : countRail(*shop))
            if (hung.style->id == usual.style)
                for (std::size_t each = 0; each < hung.style->sizes.size(); ++each)
                    if (hung.style->sizes[each] == size)
                        return hung.cells.front()[each];
        return {};
    }
    // Onto the cell of L: S M L XL, and Moss is the first colour.
    void goToL() {
        key(Qt::Key_Home);
        key(Qt::Key_Right);
        key(Qt::Key_Right);
    }

    std::unique_ptr<BlankRailPlace> m_place;
};

TEST_F(BlankRail, CountsWhatIsWashedUnwashedReservedAndShort) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual, "M"), aGarment(usual, "L")});
    EXPECT_EQ(countAt(usual, "M").washed, 6);
    EXPECT_EQ(countAt(usual, "M").reserved(), 1);
    EXPECT_EQ(countAt(usual, "M").isShort(), 0);
    EXPECT_EQ(countAt(usual, "L").unwashed, 4);
    EXPECT_EQ(countAt(usual, "L").isShort(), 1);
}

TEST_F(BlankRail, AnEmptyRailOffersTheFirstStyle) {
    open();
    std::optional<SlipName> asked;
    QObject::connect(&desk(), &ShopDesk::slipAsked, [&](SlipName slip, const SlipTarget&) { asked = slip; });
    for (auto* button : m_place->findChildren<QPushButton*>())
        if (button->isVisible() && button->text().contains(QStringLiteral("style")))
            button->click();
    EXPECT_EQ(asked, SlipName::AddStyle);
}

TEST_F(BlankRail, ThreeKeysPutTheCellInTheWashAndStartIt) {
    const UsualShop usual = stockUsualShop();
    open();
    goToL();
    key(Qt::Key_W);
    key(Qt::Key_W, Qt::ControlModifier);
    const RailCount now = countAt(usual, "L");
    EXPECT_EQ(now.unwashed, 0);
    EXPECT_EQ(now.drying, 4);
    key(Qt::Key_Y);
    EXPECT_EQ(countAt(usual, "L").washed, 4);
}

TEST_F(BlankRail, PartOfALotIsWashedOneByOne) {
    const UsualShop usual = stockUsualShop();
    open();
    goToL();
    key(Qt::Key_Plus);
    key(Qt::Key_Plus);
    key(Qt::Key_Minus);
    key(Qt::Key_W, Qt::ControlModifier);
    EXPECT_EQ(countAt(usual, "L").drying, 1);
    EXPECT_EQ(countAt(usual, "L").unwashed, 3);
}

TEST_F(BlankRail, NoMoreGoesInThanHangsThereAndNothingStartsAnEmptyWash) {
    const UsualShop usual = stockUsualShop();
    open();
    key(Qt::Key_W, Qt::ControlModifier);
    EXPECT_EQ(countAt(usual, "L").drying, 0);
    goToL();
    for (int press = 0; press < 9; ++press)
        key(Qt::Key_Plus);
    key(Qt::Key_W, Qt::ControlModifier);
    EXPECT_EQ(countAt(usual, "L").drying, 4);
}

TEST_F(BlankRail, SoftenerIsWarnedOfAndTheBlanksAreToBeWashedAgain) {
    const UsualShop usual = stockUsualShop();
    open();
    goToL();
    key(Qt::Key_W);
    find<Switch>("softener").setFocus();
    key(Qt::Key_Space);
    key(Qt::Key_W, Qt::ControlModifier);
    ASSERT_EQ(countAt(usual, "L").drying, 4);
    key(Qt::Key_Y);
    EXPECT_EQ(countAt(usual, "L").washed, 0);
    EXPECT_EQ(countAt(usual, "L").unwashed, 4) << "to be washed again, without";
    EXPECT_FALSE(find<Switch>("softener").isChecked()) << "the next wash begins without";
}

TEST_F(BlankRail, NoDetergentNeedBeNamedAndOneThatIsTooLongIsSaidAtItsField) {
    const UsualShop usual = stockUsualShop();
    open();
    goToL();
    key(Qt::Key_Plus);
    Field& detergent = find<Field>("detergent");
    detergent.setText(QString(200, u'x'));
    key(Qt::Key_W, Qt::ControlModifier);
    EXPECT_FALSE(detergent.error().isEmpty());
    EXPECT_EQ(countAt(usual, "L").drying, 0);
    detergent.setText({});
    key(Qt::Key_W, Qt::ControlModifier);
    EXPECT_EQ(countAt(usual, "L").drying, 1);
}

TEST_F(BlankRail, CtrlWTwiceIsOneLoadOfWhatWasInTheTub) {
    const UsualShop usual = stockUsualShop();
    open();
    goToL();
    key(Qt::Key_Plus);
    key(Qt::Key_W, Qt::ControlModifier);
    key(Qt::Key_W, Qt::ControlModifier);
    key(Qt::Key_W, Qt::ControlModifier);
    EXPECT_EQ(loads(), 1U);
    EXPECT_EQ(countAt(usual, "L").drying, 1);
    EXPECT_EQ(countAt(usual, "L").unwashed, 3);
    EXPECT_FALSE(find<QPushButton>("startWash").isEnabled()) << "the tub is empty";
    EXPECT_EQ(keyboard()->objectName(), QStringLiteral("railGrid"));
}

TEST_F(BlankRail, TubThatAHoldFilledIsEmptyAfterItsWashToo) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual, "L")});
    open();
    const auto shop = desk().shop();
    const Garment& garment = shop->facts.garments.at(garmentsOf(taken.id).front());
    m_place->turnTo(SlipTarget::of(*shop->of(garment.id).firstHold(), garment));
    key(Qt::Key_W, Qt::ControlModifier);
    key(Qt::Key_W, Qt::ControlModifier);
    EXPECT_EQ(loads(), 1U);
    EXPECT_EQ(countAt(usual, "L").unwashed, 3);
}

TEST_F(BlankRail, StepperOfTheTubKeepsTheKeyboardWhileItSteps) {
    stockUsualShop();
    open();
    goToL();
    key(Qt::Key_Plus);
    auto& units = find<Stepper>("washUnits");
    units.setFocus();
    key(Qt::Key_Up);
    key(Qt::Key_Up);
    EXPECT_EQ(units.value(), 3);
    EXPECT_EQ(keyboard(), &units);
}

TEST_F(BlankRail, ClickOnAHintActsAndLeavesTheKeyboardInTheGrid) {
    const UsualShop usual = stockUsualShop();
    open();
    std::vector<SlipName> asked;
    QObject::connect(&desk(), &ShopDesk::slipAsked,
                     [&](SlipName slip, const SlipTarget&) { asked.push_back(slip); });
    goToL();
    QTest::mouseClick(&hint(QStringLiteral("one more")), Qt::LeftButton);
    EXPECT_TRUE(find<QPushButton>("startWash").isEnabled());
    QTest::mouseClick(&hint(QStringLiteral("add a style")), Qt::LeftButton);
    QTest::mouseClick(&hint(QStringLiteral("correct the count")), Qt::LeftButton);
    QTest::mouseClick(&hint(QStringLiteral("read label")), Qt::LeftButton);
    key(Qt::Key_E);
    key(Qt::Key_S);
    EXPECT_EQ(asked, (std::vector{SlipName::AddStyle, SlipName::CorrectCount, SlipName::ReadLabel,
                                  SlipName::ChangeStyle, SlipName::CopyStyle}));
    QTest::mouseClick(&find<QPushButton>("startWash"), Qt::LeftButton);
    EXPECT_EQ(keyboard()->objectName(), QStringLiteral("railGrid"));
    QTest::mouseClick(&find<QPushButton>("markDry"), Qt::LeftButton);
    EXPECT_EQ(keyboard()->objectName(), QStringLiteral("railGrid"));
    EXPECT_EQ(countAt(usual, "L").washed, 1);
}

TEST_F(BlankRail, DoubleClickOpensWhatIsInTheCellAndDoesNothing) {
    stockUsualShop();
    open();
    std::vector<SlipName> asked;
    SlipTarget about;
    QObject::connect(&desk(), &ShopDesk::slipAsked, [&](SlipName slip, const SlipTarget& matter) {
        asked.push_back(slip);
        about = matter;
    });
    const auto before = entries();
    QTest::mouseDClick(&find<RailGrid>("railGrid"), Qt::LeftButton, {}, cell(0, 2));
    QTest::mouseDClick(&find<RailGrid>("railGrid"), Qt::LeftButton, {}, cell(1, 3));
    EXPECT_EQ(asked, (std::vector{SlipName::CorrectCount, SlipName::ReceiveBlanks}));
    EXPECT_EQ(about.size, QStringLiteral("XL"));
    EXPECT_EQ(entries(), before);
    EXPECT_FALSE(find<QPushButton>("startWash").isEnabled()) << "nothing is in the tub";
}

TEST_F(BlankRail, WhatIsRetiredHangsAsLongAsThereIsAny) {
    const UsualShop usual = stockUsualShop();
    BlankStyle style = desk().shop()->facts.styles.at(usual.style);
    for (Colour& colour : style.colours)
        colour.isRetired = true;
    valueOf(db::changeStyle(file(), style));
    const auto coloursShown = [&] { return countRail(*desk().shop()).at(0).style->colours.size(); };
    EXPECT_EQ(coloursShown(), 1U) << "Moss hangs, of Chalk there is none";
    style.isRetired = true;
    valueOf(db::changeStyle(file(), style));
    EXPECT_EQ(countRail(*desk().shop()).size(), 1U);
    valueOf(db::correctCount(file(), usual.washed, 0, "sold off"));
    valueOf(db::correctCount(file(), usual.unwashed, 0, "sold off"));
    EXPECT_TRUE(countRail(*desk().shop()).empty());
    open();
    EXPECT_TRUE(find<QWidget>("emptyRail").isVisible());
}

TEST_F(BlankRail, FirstRowIsWhollyInViewWhenThePlaceIsOpenedOnManyColours) {
    addStyle("Tee of all colours", [](BlankStyle& each) {
        for (int number = 0; number < 30; ++number)
            each.colours.push_back({{}, "Shade " + std::to_string(number), 0x808080});
    });
    open();
    QTest::qWait(1);
    auto& grid = find<RailGrid>("railGrid");
    EXPECT_EQ(grid.visibleRegion().boundingRect().top(), 0);
    for (int row = 0; row < 20; ++row)
        key(Qt::Key_Down);
    const QRect cellThere(QPoint(0, 20 * cellHeight()), QSize(grid.width(), cellHeight()));
    EXPECT_TRUE(grid.visibleRegion().boundingRect().contains(cellThere));
    for (int row = 0; row < 20; ++row)
        key(Qt::Key_Up);
    m_place->resize(1270, 400); // as a place is laid out while its window is being made
    QTest::qWait(1);
    m_place->resize(1270, 680);
    QTest::qWait(1);
    EXPECT_EQ(grid.visibleRegion().boundingRect().top(), 0);
}

TEST_F(BlankRail, CellSaysWhatDriesBesideWhatIsChosenForTheWash) {
    const auto picture = [](const RailCount& count, std::int64_t inWash) {
        QImage drawn(static_cast<int>(std::ceil(cellWidth(count, inWash))), cellHeight(),
                     QImage::Format_RGB32);
        drawn.fill(Qt::white);
        QPainter painter(&drawn);
        paintCell(painter, QRectF(drawn.rect()), count, inWash, false);
        return drawn;
    };
    RailCount count;
    count.washed = 1;
    count.unwashed = 2;
    count.drying = 3;
    RailCount other = count;
    other.drying = 4;
    EXPECT_NE(picture(count, 1), picture(other, 1));
    EXPECT_NE(picture(count, 1), picture(count, 2));
    EXPECT_GT(cellWidth(count, 1), cellWidth(count, 0));
}

TEST_F(BlankRail, SmallWindowShowsEverySizeByKeyAndTheTubByScrolling) {
    const auto style = addStyle("Long sleeve for tall people", [](BlankStyle& each) {
        each.sizes = {"XS", "S", "M", "L", "XL", "2XL", "3XL", "4XL", "5XL", "6XL"};
    });
    for (const QSize window : {QSize{928, 520}, QSize{704, 1190}}) {
        open(window);
        auto& grid = find<RailGrid>("railGrid");
        key(Qt::Key_End);
        const RailColumns columns = grid.columnsIn(grid.width());
        ASSERT_TRUE(grid.current());
        EXPECT_EQ(grid.current()->style, style);
        EXPECT_EQ(grid.current()->size, "6XL");
        auto& sideways = find<QScrollBar>("railSideways");
        EXPECT_EQ(sideways.isVisible(), columns.farthest() > 0);
        EXPECT_EQ(sideways.value(), sideways.maximum()) << "the last size is in view";
        auto& start = find<QPushButton>("startWash");
        start.setEnabled(true);
        start.setFocus();
        QTest::qWait(1);
        const QRect shown(start.mapTo(m_place.get(), QPoint()), start.size());
        EXPECT_TRUE(m_place->rect().contains(shown)) << window.width();
        EXPECT_LE(grid.width(), window.width()) << "nothing is cut at the side";
    }
}

TEST_F(BlankRail, AnOverfullWasherIsRefused) {
    const UsualShop usual = stockUsualShop();
    receiveBlanks(usual.style, "XL", usual.moss, 200);
    open();
    key(Qt::Key_End);
    key(Qt::Key_W);
    EXPECT_FALSE(find<QPushButton>("startWash").isEnabled());
    key(Qt::Key_W, Qt::ControlModifier);
    EXPECT_EQ(countAt(usual, "XL").drying, 0);
}

TEST_F(BlankRail, ComingFromAHoldItsBlankIsInTheTubAndOneKeyStartsTheWash) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual, "L")});
    open();
    const auto shop = desk().shop();
    const Garment& garment = shop->facts.garments.at(garmentsOf(taken.id).front());
    const Finding* hold = shop->of(garment.id).firstHold();
    ASSERT_TRUE(hold != nullptr);
    ASSERT_EQ(hold->rule, Rule::BlankUnwashed);
    m_place->turnTo(SlipTarget::of(*hold, garment));
    key(Qt::Key_Return);
    EXPECT_EQ(countAt(usual, "L").drying, 1);
}

TEST_F(BlankRail, DarkAndStrongShadesMayBleed) {
    EXPECT_TRUE(mayBleed(0x2B3654));
    EXPECT_TRUE(mayBleed(0x97352A));
    EXPECT_FALSE(mayBleed(0xF0ECDF));
    EXPECT_FALSE(mayBleed(0xC5CCCB));
}

} // namespace

} // namespace holdfast::app::test
