// SPDX-License-Identifier: GPL-3.0-or-later
// A scanner that types like a keyboard, in every place: keys go to the real window, timed as the platform
// times them.

#include "app/desk/machine_settings.h"
#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/places.h"
#include "app/shell/scan_listener.h"
#include "app/shell/workshop.h"
#include "app/widgets/field.h"
#include "core/trade/paper_code.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QLineEdit>
#include <QTest>
#include <QWindow>

#include <random>

namespace holdfast::app {
namespace {

using namespace std::chrono_literals;
using test::ShopFixture;
using test::UsualShop;

// Long enough for keys that were held back to be let go.
constexpr int kPause = 60;

class Scans : public ShopFixture {
protected:
    void SetUp() override {
        usual = stockUsualShop();
        order = takeOrder({aGarment(usual), aGarment(usual)}, "Imre Vasko");
        close();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(test::valueOf(db::Shop::open(path(), time().clock().now)));
        test::showWindow(*m_window);
    }
    void TearDown() override { m_window.reset(); }

    // As fast as it goes.
    // However busy the machine is.
    void scan(const std::string& code) {
        auto* listener = m_window->findChild<ScanListener*>();
        ASSERT_NE(listener, nullptr);
        listener->setBetweenKeys(std::chrono::seconds{5});
        for (const char sign : code)
            QTest::keyClick(m_window->windowHandle(), sign);
        QTest::keyClick(m_window->windowHandle(), Qt::Key_Return);
        listener->setBetweenKeys(ScanListener::kBetweenKeys);
        QCoreApplication::processEvents();
    }
    // As a person does.
    void type(const std::string& text) {
        for (const char sign : text) {
            QTest::keyClick(m_window->windowHandle(), sign);
            QTest::qWait(kPause);
        }
    }

    Workshop& workshop() { return *m_window->workshop(); }
    ShopDesk& open() { return *m_window->desk(); }
    std::string foot() { return workshop().foot()->words().toStdString(); }
    std::int64_t entries() { return open().file().connection().number("SELECT COUNT(*) FROM journal_entry"); }
    std::string orderCode() { return paperCode(std::to_string(order.number), order.id.value); }
    std::string rollCode() {
        return paperCode(open().shop()->facts.rolls.at(usual.roll).label(), usual.roll.value);
    }
    std::string garmentCode() {
        const ShopFacts& facts = open().shop()->facts;
        const Garment& garment = *facts.garments.begin();
        return paperCode(facts.labelOf(garment), garment.id.value);
    }

    UsualShop usual;
    db::OrderTaken order;
    std::unique_ptr<MainWindow> m_window;
};

TEST_F(Scans, OfAClaimTicketOpenTheOrderFromEveryPlace) {
    const auto before = entries();
    for (const BuiltPlace& built : builtPlaces()) {
        if (built.name == PlaceName::PressWalk || built.name == PlaceName::CuttingBench)
            continue; // may show the order themselves
        workshop().turnTo(built.name);
        scan(orderCode());
        EXPECT_EQ(workshop().current(), PlaceName::OrderBook) << built.title;
        EXPECT_FALSE(workshop().foot()->isFailure()) << foot();
    }
    EXPECT_EQ(entries(), before);
}

TEST_F(Scans, OfARollLabelTurnToTheRoll) {
    for (const PlaceName from : {PlaceName::FairTable, PlaceName::OrderBook, PlaceName::BackRoom}) {
        workshop().turnTo(from);
        scan(rollCode());
        EXPECT_EQ(workshop().current(), PlaceName::FilmShelf);
    }
}

TEST_F(Scans, InAFieldLeaveItAsItWas) {
    workshop().turnTo(PlaceName::OrderBook);
    auto* line = m_window->findChild<Field*>(QStringLiteral("orderSearch"))->editor();
    line->setFocus();
    type("vas");
    EXPECT_EQ(QApplication::focusWidget(), line) << QApplication::focusWidget()->metaObject()->className();
    EXPECT_EQ(line->text().toStdString(), "vas");
    scan("9999-z.KKKK");
    EXPECT_EQ(line->text().toStdString(), "vas");
    EXPECT_TRUE(workshop().foot()->isFailure());
}

TEST_F(Scans, HalvesUnknownCodesAndThoseOfOtherShopsAreSaidAndDoNothing) {
    workshop().turnTo(PlaceName::PressWalk);
    const auto before = entries();
    const std::string whole = garmentCode();
    const std::string label = whole.substr(0, whole.find('.'));
    for (const std::string& code :
         {whole.substr(0, whole.size() - 2), label + ".BBBB", std::string("777-a.KHTR"),
          std::string("R-77.KHTR"), std::string("4012345678901"), std::string("hello"),
          std::string("R-77")}) {
        scan(code);
        EXPECT_TRUE(workshop().foot()->isFailure()) << code;
        EXPECT_EQ(workshop().current(), PlaceName::PressWalk) << code;
        workshop().foot()->showWords({});
    }
    EXPECT_EQ(entries(), before);
}

TEST_F(Scans, ANumberShorterThanThoseInUseMayBeHalfOfOne) {
    for (int more = 0; more < 12; ++more) // beyond number 10
        test::valueOf(db::takeOrder(open().file(), anOrder({aGarment(usual)}), now()));
    workshop().turnTo(PlaceName::FairTable);
    scan("001"); // as digits alone, with nothing to check them by
    scan("1");
    EXPECT_EQ(workshop().current(), PlaceName::FairTable);
}

TEST_F(Scans, APersonsKeysGoOnTheirWayInTheirOrder) {
    workshop().turnTo(PlaceName::OrderBook);
    auto* line = m_window->findChild<Field*>(QStringLiteral("orderSearch"))->editor();
    line->setFocus();
    // A burst with no Enter at once behind it is text.
    for (const char sign : std::string("418-b"))
        QTest::keyClick(m_window->windowHandle(), sign);
    QTest::qWait(kPause);
    EXPECT_EQ(line->text().toStdString(), "418-b");
    QTest::keyClick(m_window->windowHandle(), Qt::Key_Backspace);
    EXPECT_EQ(line->text().toStdString(), "418-");
    // A key that is none of a code lets go what was held before it.
    QTest::keyClick(m_window->windowHandle(), 'x');
    QTest::keyClick(m_window->windowHandle(), Qt::Key_Space);
    QTest::keyClick(m_window->windowHandle(), 'y');
    QTest::qWait(kPause);
    EXPECT_EQ(line->text().toStdString(), "418-x y");
}

TEST_F(Scans, LettersActAsBeforeWhenTypedByAPerson) {
    workshop().turnTo(PlaceName::FilmShelf);
    type("n");
    EXPECT_NE(m_window->findChild<QWidget*>(QStringLiteral("slipAction")), nullptr) << foot();
}

TEST_F(Scans, PrefixOfTheScannerIsTakenOffAndAllowsForASlowOne) {
    ScanListener listener(m_window.get());
    QString read;
    QObject::connect(&listener, &ScanListener::scanned, &listener,
                     [&](const QString& typed) { read = typed; });
    listener.setPrefix(QStringLiteral("~"));
    QTest::keyClick(m_window->windowHandle(), '~');
    for (const char sign : std::string("R-09")) {
        QTest::qWait(60);
        QTest::keyClick(m_window->windowHandle(), sign);
    }
    QTest::keyClick(m_window->windowHandle(), Qt::Key_Return);
    EXPECT_EQ(read.toStdString(), "R-09");
}

TEST_F(Scans, PrefixIsSetInItsFormAndWhatNoKeyboardTypesIsRefused) {
    workshop().showSlip(SlipName::Scanner, {});
    auto* line = m_window->findChild<Field*>(QStringLiteral("prefix"));
    ASSERT_NE(line, nullptr);
    line->setText(QStringLiteral("a b"));
    QTest::keyClick(line->editor(), Qt::Key_Return, Qt::ControlModifier);
    EXPECT_FALSE(line->error().isEmpty());
    EXPECT_EQ(scannerPrefix().toStdString(), "");
    line->setText(QStringLiteral("~"));
    QTest::keyClick(line->editor(), Qt::Key_Return, Qt::ControlModifier);
    EXPECT_EQ(scannerPrefix().toStdString(), "~");
    workshop().turnTo(PlaceName::BackRoom);
    scan("~" + orderCode());
    EXPECT_EQ(workshop().current(), PlaceName::OrderBook) << foot();
    keepScannerPrefix({});
}

// Signs that codes are made of, at random, some with numbers that the shop has, over every place.
TEST_F(Scans, RandomBurstsWriteNothing) {
    const int bursts = qEnvironmentVariableIntValue("HOLDFAST_BURSTS") > 0
                           ? qEnvironmentVariableIntValue("HOLDFAST_BURSTS")
                           : 10'000;
    const std::string signs = "0123456789abcdkR-.KHTRBX/+";
    std::mt19937 random(29'112'026);
    const auto before = entries();
    for (int burst = 0; burst < bursts; ++burst) {
        if (burst % 10 == 0)
            workshop().turnTo(builtPlaces()[random() % builtPlaces().size()].name);
        std::string code;
        if (random() % 4 == 0)
            code = std::to_string(order.number) + (random() % 2 == 0 ? "-a" : "");
        for (auto length = 3 + random() % 10; code.size() < length;)
            code += signs[random() % signs.size()];
        scan(code);
        ASSERT_EQ(entries(), before) << code << " at " << static_cast<int>(workshop().current());
    }
}

} // namespace
} // namespace holdfast::app
