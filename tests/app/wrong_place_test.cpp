// SPDX-License-Identifier: GPL-3.0-or-later
// What of the shop file cannot be read stands in the way of work, one by one, until it is mended or set
// aside.

#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/workshop.h"
#include "app/shell/wrong_place.h"
#include "app/theme/tokens.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"
#include "db/backups/backups.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QTest>

#include <sqlite3.h>

namespace holdfast::app {
namespace {

using test::ShopFixture;
using test::showWindow;
using test::UsualShop;

class WrongInFile : public ShopFixture {
protected:
    void TearDown() override { m_window.reset(); }

    // As a bad disk does, while no window is open.
    void damage(const std::string& sql) {
        m_window.reset();
        close();
        sqlite3* handle = nullptr;
        ASSERT_EQ(sqlite3_open(path().c_str(), &handle), SQLITE_OK);
        EXPECT_EQ(sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, nullptr), SQLITE_OK)
            << sqlite3_errmsg(handle);
        sqlite3_close(handle);
    }

    void openWindow(QSize size = {1366, 768}) {
        close();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(test::valueOf(db::Shop::open(path(), time().clock().now)));
        showWindow(*m_window, size);
        QTest::qWait(10);
    }

    Workshop& workshop() { return *m_window->workshop(); }
    template <class Widget>
    Widget* find(const char* name) {
        return m_window->findChild<Widget*>(QLatin1String(name));
    }
    std::string title() { return find<Label>("placeTitle")->text().toStdString(); }
    std::string foot() { return workshop().foot()->words().toStdString(); }

    // All that the page says.
    std::string said() {
        std::string all;
        for (const Label* label : find<WrongPlace>("wrongPlace")->findChildren<Label*>())
            all += label->text().toStdString() + "\n";
        return all;
    }

    std::unique_ptr<MainWindow> m_window;
};

TEST_F(WrongInFile, AnOrderThatCannotBeReadIsNamedInTheWayOfWork) {
    const UsualShop usual = stockUsualShop();
    const auto bad = takeOrder({aGarment(usual)});
    const auto good = takeOrder({aGarment(usual)}, "Maren Holt");
    damage("UPDATE shop_order SET promised = 'soon' WHERE id = " + std::to_string(bad.id.value));
    openWindow();
    ASSERT_TRUE(workshop().showsWrong());
    EXPECT_EQ(title(), "What is wrong in the shop file");
    EXPECT_NE(said().find("Order " + std::to_string(bad.number) + " of Odile Farrant"), std::string::npos)
        << said();
    EXPECT_NE(said().find("Its promise reads “soon”. The order is left out."), std::string::npos) << said();
    EXPECT_NE(m_window->desk()->shop()->facts.orders.find(good.id), nullptr);

    workshop().turnTo(PlaceName::OrderBook);
    EXPECT_TRUE(workshop().showsWrong()) << "it stays until somebody says what is to become of it";
    // The check of the day adds that the row is not as its history says: what is set aside is both.
    QTRY_VERIFY(said().find("was entered as") != std::string::npos);
    QTest::keyClick(m_window.get(), Qt::Key_G);
    EXPECT_FALSE(workshop().showsWrong());
    EXPECT_NE(foot().find("Closed for now."), std::string::npos) << foot();

    openWindow();
    EXPECT_FALSE(workshop().showsWrong()) << "on this laptop it is set aside";
    workshop().doErrand(Errand::ShowWrong);
    EXPECT_TRUE(workshop().showsWrong());
}

TEST_F(WrongInFile, WhatIsWrongBesideWhatWasSetAsideIsShown) {
    const UsualShop usual = stockUsualShop();
    const auto one = takeOrder({aGarment(usual)});
    const auto other = takeOrder({aGarment(usual)}, "Maren Holt");
    damage("UPDATE shop_order SET promised = 'soon' WHERE id = " + std::to_string(one.id.value));
    openWindow();
    // The check of the day adds that the row is not as its history says.
    QTRY_VERIFY(said().find("was entered as") != std::string::npos);
    QTest::keyClick(m_window.get(), Qt::Key_G);
    ASSERT_FALSE(workshop().showsWrong());
    damage("UPDATE shop_order SET promised = 'later' WHERE id = " + std::to_string(other.id.value));
    openWindow();
    ASSERT_TRUE(workshop().showsWrong());
    EXPECT_NE(said().find("of Maren Holt"), std::string::npos);
}

TEST_F(WrongInFile, MendingPutsItRightAndGoesOn) {
    const UsualShop usual = stockUsualShop();
    const auto order = takeOrder({aGarment(usual)});
    damage("UPDATE decal SET placement = 'chesst'; INSERT INTO setting VALUES ('margin-percent', '45'); "
           "DELETE FROM setting WHERE name = 'margin-percent'");
    openWindow();
    ASSERT_TRUE(workshop().showsWrong());
    QTest::mouseClick(find<Button>("wrongMend"), Qt::LeftButton);
    QTRY_VERIFY(!workshop().showsWrong());
    QTRY_VERIFY(foot().find("Mended. The shop file is whole again. What was there before is kept as a "
                            "backup.") != std::string::npos);
    const auto kept = db::backupsOf(path());
    EXPECT_TRUE(std::ranges::any_of(kept, [](const db::KeptBackup& each) {
        return each.reason == db::BackupReason::BeforeMending && !each.isWhole;
    }));
    EXPECT_NE(m_window->desk()->shop()->facts.orders.find(order.id), nullptr);
    EXPECT_TRUE(workshop().place()->isVisible());
}

TEST_F(WrongInFile, ThirtyBadRowsAreAllNamed) {
    const UsualShop usual = stockUsualShop();
    for (int count = 0; count < 30; ++count)
        takeOrder({aGarment(usual, "S")});
    damage("UPDATE shop_order SET promised = 'soon'");
    openWindow({1024, 600});
    ASSERT_TRUE(workshop().showsWrong());
    std::size_t named = 0;
    const std::string all = said();
    for (std::size_t at = all.find("reads “soon”"); at != std::string::npos;
         at = all.find("reads “soon”", at + 1))
        ++named;
    EXPECT_EQ(named, 30U);
    EXPECT_TRUE(find<Button>("wrongMend")->hasFocus());
}

TEST_F(WrongInFile, AShopThatCannotBeReadAtAllIsNotShownAsEmpty) {
    stockUsualShop();
    damage("DROP TABLE press_check_reading");
    openWindow();
    ASSERT_TRUE(workshop().showsWrong());
    EXPECT_FALSE(find<Button>("wrongGoOn")->isVisible());
    EXPECT_FALSE(find<Button>("wrongMend")->isHidden()) << "a table that is missing is made again";
    EXPECT_TRUE(workshop().foot()->isFailure()) << foot();
    QTest::qWait(50);
    EXPECT_TRUE(workshop().foot()->isFailure()) << "the reason stays while it is true";
    EXPECT_NE(foot().find("A part of the shop file is missing."), std::string::npos) << foot();
    EXPECT_NE(said().find("A part of the shop file is missing."), std::string::npos) << said();
    QTest::keyClick(m_window.get(), Qt::Key_M);
    QTRY_VERIFY(!workshop().showsWrong());
    EXPECT_FALSE(m_window->desk()->shop()->facts.pressChecks.empty()) << "its rows come from the history";
}

TEST_F(WrongInFile, NothingIsSeenWhereAllIsWell) {
    stockUsualShop();
    openWindow();
    EXPECT_FALSE(workshop().showsWrong());
    workshop().doErrand(Errand::ShowWrong);
    EXPECT_FALSE(workshop().showsWrong());
    EXPECT_NE(foot().find("Nothing is wrong"), std::string::npos) << foot();
}

} // namespace
} // namespace holdfast::app
