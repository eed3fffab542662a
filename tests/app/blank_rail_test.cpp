// Blank rail by keyboard: counts, the basket, starting a wash, softener, drying, and coming from a hold.

#include "app/places/blank_rail/blank_rail_place.h"

#include "app/widgets/field.h"
#include "app/widgets/switch.h"
#include "db/actions/blank_actions.h"
#include "tests/app/shop_fixture.h"

#include <QPushButton>
#include <QTest>

namespace holdfast::app::test {

namespace {

class BlankRail : public ShopFixture {
protected:
    void open() {
        m_place = std::make_unique<BlankRailPlace>(desk());
        m_place->headerTools();
        showWindow(*m_place, {1270, 680});
        m_place->opened();
    }
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

TEST_F(BlankRail, CountsWhatIsWashedUnwashedKeptAndShort) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual, "M"), aGarment(usual, "L")});
    EXPECT_EQ(countAt(usual, "M").washed, 6);
    EXPECT_EQ(countAt(usual, "M").kept(), 1);
    EXPECT_EQ(countAt(usual, "M").isShort(), 0);
    EXPECT_EQ(countAt(usual, "L").unwashed, 4);
    EXPECT_EQ(countAt(usual, "L").isShort(), 1);
}

TEST_F(BlankRail, AnEmptyRailOffersTheFirstStyle) {
    open();
    std::optional<SlipName> asked;
    QObject::connect(&desk(), &ShopDesk::slipAsked, [&](SlipName slip, const Matter&) { asked = slip; });
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

TEST_F(BlankRail, AWashWithoutADetergentSaysSoAtItsField) {
    const UsualShop usual = stockUsualShop();
    open();
    goToL();
    key(Qt::Key_W);
    Field& detergent = find<Field>("detergent");
    for (const QString& bad : {QString(), QStringLiteral("   "), QString(200, u'x')}) {
        detergent.setText(bad);
        key(Qt::Key_W, Qt::ControlModifier);
        EXPECT_FALSE(detergent.error().isEmpty()) << bad.toStdString();
        EXPECT_EQ(countAt(usual, "L").drying, 0);
    }
    detergent.setText(QStringLiteral("Seife, ungeparfümt"));
    key(Qt::Key_W, Qt::ControlModifier);
    EXPECT_EQ(countAt(usual, "L").drying, 4);
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
    m_place->turnTo(Matter::of(*hold, garment));
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
