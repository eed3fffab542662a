// SPDX-License-Identifier: GPL-3.0-or-later
// Backups that are made by themselves, as a person meets them: one a day, a second folder that may not be
// there, and one that is put back.

#include "app/desk/backups_beside.h"
#include "app/desk/machine_settings.h"
#include "app/places/back_room/back_room_place.h"
#include "app/places/back_room/room_lines.h"
#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/shop_paths.h"
#include "app/shell/shop_start.h"
#include "app/shell/slip_edge.h"
#include "app/shell/start_backups.h"
#include "app/shell/workshop.h"
#include "app/slips/form_slip.h"
#include "app/widgets/button.h"
#include "app/widgets/choice.h"
#include "app/widgets/long_field.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QStandardPaths>
#include <QTest>

#include <algorithm>
#include <fstream>

#include <sqlite3.h>

namespace holdfast::app {
namespace {

using test::ShopFixture;
using test::showWindow;
using test::UsualShop;
using test::valueOf;
using namespace std::chrono_literals;

class BackupsByThemselves : public ShopFixture {
protected:
    void SetUp() override { keepMachineSetting(kBackupFolderSetting, {}); }
    void TearDown() override {
        m_window.reset();
        keepMachineSetting(kBackupFolderSetting, {});
    }

    void openWindow(QSize size = {1366, 768}) {
        close();
        m_window.reset();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(valueOf(db::Shop::open(path(), time().clock().now)));
        showWindow(*m_window, size);
        QTRY_VERIFY(backups().isOn());
    }
    // As some moments after the start.
    void openAndLook() {
        openWindow();
        backups().look();
        QTRY_VERIFY(backups().isLookedAt());
    }
    Workshop& workshop() { return *m_window->workshop(); }
    ShopDesk& window() { return *m_window->desk(); }
    BackupsBeside& backups() { return window().backups(); }
    const std::vector<BackupShown>& known() { return backups().known().all; }
    std::string foot() { return workshop().foot()->words().toStdString(); }
    std::filesystem::path stick() const { return path().parent_path() / "stick"; }

    template <class Widget>
    Widget* find(const char* name) {
        return m_window->findChild<Widget*>(QLatin1String(name));
    }
    static void hit(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget(), key, modifiers);
    }
    RoomSheet copies() {
        RoomFile file = valueOf(readRoomFile(window().file()));
        file.makesBackups = backups().isOn();
        file.secondUpToDateOn = backups().secondUpToDateOn();
        file.backups = backups().known();
        return roomSheet(RoomSection::Copies, *window().shop(), file);
    }
    RoomLine lineNamed(const QString& name) {
        const RoomSheet sheet = copies();
        for (const RoomLine& line : sheet.lines)
            if (line.name == name)
                return line;
        ADD_FAILURE() << "no line " << name.toStdString();
        return {};
    }
    void turnToCopies() {
        workshop().turnTo(PlaceName::BackRoom);
        qobject_cast<BackRoomPlace*>(workshop().place())->turnToSection(RoomSection::Copies);
    }
    void chooseSecondFolder(const QString& folder) {
        workshop().doErrand(Errand::ChooseBackupFolder);
        ASSERT_NE(workshop().slipEdge()->slip(), nullptr);
        auto* field = workshop().slipEdge()->slip()->findChild<LongField*>(QStringLiteral("folder"));
        ASSERT_NE(field, nullptr);
        field->setText(folder);
        field->setFocus();
        emit field->edited(folder);
        hit(Qt::Key_Return, Qt::ControlModifier);
    }
    void nextDay() {
        time().pass(24h);
        emit window().minutePassed();
    }

    std::unique_ptr<MainWindow> m_window;
};

TEST_F(BackupsByThemselves, OneIsMadeADay) {
    takeOrder({aGarment(stockUsualShop())});
    openAndLook();
    ASSERT_EQ(known().size(), 1U);
    EXPECT_EQ(known()[0].backup.reason, db::BackupReason::OfTheDay);
    EXPECT_EQ(known()[0].orders, 1);
    EXPECT_TRUE(known()[0].isHere);
    EXPECT_EQ(db::backupsOf(path()).size(), 1U);
    EXPECT_EQ(copies().summary, QStringLiteral("backed up today"));
    time().pass(2h);
    emit window().minutePassed();
    QTest::qWait(50);
    EXPECT_EQ(db::backupsOf(path()).size(), 1U) << "one a day";
    nextDay();
    QTRY_COMPARE(known().size(), 2U);
    openAndLook();
    EXPECT_EQ(known().size(), 2U) << "not again at the next opening";
}

TEST_F(BackupsByThemselves, AreNotMadeOfADemo) {
    const auto folder = std::filesystem::path(
        QStandardPaths::writableLocation(QStandardPaths::GenericCacheLocation).toStdString());
    EXPECT_TRUE(isDemoShop(folder / "holdfast" / "demo-open.holdfast") ||
                !std::filesystem::exists(folder / "holdfast"));
    EXPECT_FALSE(isDemoShop(path()));
    EXPECT_FALSE(isDemoShop(path().parent_path() / "demo-open.holdfast")) << "somebody's own file";
}

TEST_F(BackupsByThemselves, GoToASecondFolderAndItsAbsenceIsSaidCalmly) {
    stockUsualShop();
    openAndLook();
    chooseSecondFolder(QStringLiteral("/no/such/folder"));
    EXPECT_TRUE(workshop().slipEdge()->isOpen());
    workshop().slipEdge()->close();
    std::filesystem::create_directory(stick());
    chooseSecondFolder(QString::fromStdString(stick()));
    EXPECT_FALSE(workshop().slipEdge()->isOpen());
    QTRY_VERIFY(!known().empty() && known()[0].isInSecond);
    EXPECT_EQ(db::backupsOf(path(), db::secondBackupFolder(stick())).size(), 2U);
    EXPECT_EQ(lineNamed("Second folder").state, QStringLiteral("up to date"));

    std::filesystem::rename(stick(), path().parent_path() / "pulled");
    std::filesystem::create_directory(stick()); // as where it was mounted
    nextDay();
    QTRY_COMPARE(known().size(), 2U);
    EXPECT_EQ(foot(), "The second backup folder, " + db::secondBackupFolder(stick()).string() +
                          ", is not there; its last backup is of Wed 25 Nov.");
    EXPECT_FALSE(workshop().foot()->isFailure());
    EXPECT_EQ(lineNamed("Second folder").state, QStringLiteral("not there"));
    EXPECT_TRUE(lineNamed("Second folder").detail.startsWith(QStringLiteral("Not there since Wed 25 Nov.")));
    EXPECT_EQ(lineNamed("Second folder").tone, Tone::Caution);
    EXPECT_EQ(copies().summary, QStringLiteral("second folder not there"));
    EXPECT_TRUE(std::filesystem::is_empty(stick()));

    std::filesystem::remove(stick());
    std::filesystem::rename(path().parent_path() / "pulled", stick());
    emit window().minutePassed();
    QTRY_VERIFY(known()[0].isInSecond);
    EXPECT_EQ(lineNamed("Second folder").state, QStringLiteral("up to date"));
    chooseSecondFolder({});
    QTRY_VERIFY(backups().known().secondFolder.empty());
}

TEST_F(BackupsByThemselves, WhyNoneCouldBeMadeIsSaidAndTriedAgain) {
    stockUsualShop();
    std::ofstream(db::backupFolder(path())) << "a file of that name";
    openAndLook();
    EXPECT_TRUE(workshop().foot()->isFailure());
    EXPECT_NE(foot().find("No backup was made today."), std::string::npos) << foot();
    EXPECT_EQ(lineNamed("Folder").state, QStringLiteral("none today"));
    std::filesystem::remove(db::backupFolder(path()));
    emit window().minutePassed();
    QTest::qWait(50);
    EXPECT_TRUE(known().empty()) << "not each minute";
    time().pass(61min);
    emit window().minutePassed();
    QTRY_COMPARE(known().size(), 1U);
    EXPECT_EQ(lineNamed("Folder").state, QStringLiteral("today"));
}

// By the line of the Back room, as a person does: what would be lost is said before anything is done.
TEST_F(BackupsByThemselves, OneIsPutBackAndThatIsUndoneByPuttingBackTheKeptOne) {
    const UsualShop usual = stockUsualShop();
    takeOrder({aGarment(usual)});
    openAndLook();
    const auto later =
        valueOf(db::takeOrder(window().file(), anOrder({aGarment(usual)}, "Bronagh Tull"), now()));
    turnToCopies();
    auto* lines = find<RoomLines>("roomLines");
    lines->setFocus();
    const auto sheet = copies();
    const auto line = std::ranges::find(sheet.lines, QStringLiteral("today 10:00"), &RoomLine::name);
    ASSERT_NE(line, sheet.lines.end());
    EXPECT_EQ(line->offer, QStringLiteral("Put back"));
    emit lines->deedAsked(line->deed);
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    auto* lost = find<QWidget>("wouldBeLost");
    QTRY_VERIFY(lost->isVisible());
    EXPECT_TRUE(
        lost->accessibleName().startsWith(QStringLiteral("Would be lost: 1 order, in all 1 thing done.")))
        << lost->accessibleName().toStdString();
    EXPECT_TRUE(lost->accessibleName().contains(QStringLiteral("Took order %1").arg(later.number)))
        << lost->accessibleName().toStdString();
    time().pass(5min);
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(m_window->desk() != nullptr && m_window->workshop() != nullptr &&
                window().shop()->facts.orders.find(later.id) == nullptr);
    QTRY_COMPARE(foot(), "The backup is put back. What was here before is kept as a backup of 10:05.");

    QTRY_VERIFY(backups().isOn());
    workshop().doErrand(Errand::PutBackBackup);
    QTRY_VERIFY(find<QWidget>("wouldComeBack") != nullptr && find<QWidget>("wouldComeBack")->isVisible());
    EXPECT_TRUE(
        find<QWidget>("wouldBeLost")->accessibleName().startsWith(QStringLiteral("Nothing would be lost.")));
    time().pass(5min);
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(m_window->desk() != nullptr && m_window->workshop() != nullptr &&
                window().shop()->facts.orders.find(later.id) != nullptr);
    const auto next =
        valueOf(db::takeOrder(window().file(), anOrder({aGarment(usual)}, "Maren Holt"), now()));
    EXPECT_GT(next.number, later.number);
}

TEST_F(BackupsByThemselves, OneIsPutBackWhereTheShopCannotBeRead) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    openAndLook();
    m_window.reset();
    std::ofstream(path(), std::ios::trunc) << std::string(9000, 'x');

    m_window = std::make_unique<MainWindow>(time().clock());
    const auto refused = db::Shop::open(path(), time().clock().now);
    ASSERT_FALSE(refused.ok());
    m_window->showStart(QString::fromStdString(refused.error().message.english()), path());
    showWindow(*m_window);
    auto* offer = find<StartBackups>("startBackups");
    ASSERT_TRUE(offer->isVisible());
    EXPECT_TRUE(
        find<QWidget>("startBackupContents")->accessibleName().startsWith(QStringLiteral("1 order, ")));
    time().pass(5min);
    QTest::mouseClick(find<Button>("startPutBack"), Qt::LeftButton);
    QTRY_VERIFY(m_window->workshop() != nullptr);
    EXPECT_NE(window().shop()->facts.orders.find(taken.id), nullptr);
    const auto all = db::backupsOf(path());
    ASSERT_EQ(all.size(), 2U);
    EXPECT_FALSE(all[0].isWhole) << "what could not be read is kept";
}

TEST_F(BackupsByThemselves, AreNotOfferedWhereTheShopIsOnlyOpenElsewhere) {
    stockUsualShop();
    openAndLook();
    MainWindow other(time().clock());
    other.showStart({}, path());
    EXPECT_TRUE(other.findChild<StartBackups*>(QStringLiteral("startBackups"))->isHidden());
}

// A row that cannot be read: the page in the way of work leads to the backups.
TEST_F(BackupsByThemselves, ThePageInTheWayOfWorkOffersThem) {
    const UsualShop usual = stockUsualShop();
    const auto taken = takeOrder({aGarment(usual)});
    openAndLook();
    m_window.reset();
    sqlite3* handle = nullptr;
    ASSERT_EQ(sqlite3_open(path().c_str(), &handle), SQLITE_OK);
    EXPECT_EQ(sqlite3_exec(handle, "UPDATE shop_order SET promised = 'soon'", nullptr, nullptr, nullptr),
              SQLITE_OK);
    sqlite3_close(handle);
    time().pass(24h);
    openAndLook();
    QTRY_VERIFY(workshop().showsWrong());
    QTRY_COMPARE(known().size(), 2U);
    EXPECT_FALSE(known()[0].backup.isWhole);
    emit window().minutePassed();
    QTest::qWait(50);
    EXPECT_EQ(known().size(), 2U) << "one that is not whole is made once";
    hit(Qt::Key_P);
    ASSERT_TRUE(workshop().slipEdge()->isOpen());
    auto* list = find<QComboBox>("backup");
    QTRY_COMPARE(list->count(), 2);
    EXPECT_EQ(list->currentIndex(), 1) << "the newest that is whole";
    EXPECT_EQ(list->currentText(), QStringLiteral("Wed 25 Nov 10:00"));
    QTRY_VERIFY(find<Button>("slipAction")->isEnabled());
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(m_window->workshop() != nullptr && !workshop().showsWrong() &&
                window().shop()->facts.orders.find(taken.id) != nullptr);
}

} // namespace
} // namespace holdfast::app
