// SPDX-License-Identifier: GPL-3.0-or-later
// The due days as a calendar: from the Back room by keys, from the finder, and as a verb.
#include "app/command_line/arguments.h"
#include "app/command_line/table_files.h"
#include "app/places/back_room/back_room_place.h"
#include "app/shell/command_finder.h"
#include "app/shell/foot_line.h"
#include "app/shell/main_window.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "app/slips/form_slip.h"
#include "app/widgets/long_field.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QFile>
#include <QTest>

#include <sys/stat.h>

namespace holdfast::app {
namespace {

class DueDaysFile : public test::ShopFixture {
protected:
    void TearDown() override { m_window.reset(); }

    void openWindow() {
        close();
        m_window = std::make_unique<MainWindow>(time().clock());
        m_window->open(test::valueOf(db::Shop::open(path(), time().clock().now)));
        test::showWindow(*m_window);
    }
    Workshop& workshop() { return *m_window->workshop(); }
    FormSlip* slip() { return qobject_cast<FormSlip*>(workshop().slipEdge()->slip()); }
    static void hit(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget(), key, modifiers);
    }
    std::filesystem::path target() const { return path().parent_path() / "due.ics"; }
    static std::string textOf(const std::filesystem::path& path) {
        QFile file(QString::fromStdString(path.string()));
        return file.open(QIODevice::ReadOnly) ? file.readAll().toStdString() : std::string{};
    }
    Arguments asking() {
        Arguments arguments;
        arguments.verb = Verb::DueDays;
        arguments.shop = path();
        arguments.target = target();
        return arguments;
    }

    std::unique_ptr<MainWindow> m_window;
};

TEST_F(DueDaysFile, AreSavedFromTheBackRoomByKeys) {
    const auto taken = takeOrder({aGarment(stockUsualShop())});
    openWindow();
    workshop().turnTo(PlaceName::BackRoom);
    qobject_cast<BackRoomPlace*>(workshop().place())->turnToSection(RoomSection::Copies);
    hit(Qt::Key_D);
    ASSERT_NE(slip(), nullptr);
    hit(Qt::Key_A, Qt::ControlModifier);
    test::typeText(QString::fromStdString(target().string()));
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(workshop().slipEdge()->slip() == nullptr);
    QTRY_VERIFY(workshop().foot()->words().startsWith(QStringLiteral("Saved the day of 1 order in")));
    EXPECT_NE(
        textOf(target()).find("SUMMARY:" + std::to_string(taken.number) + " Odile Farrant\\, 1 garment\r\n"),
        std::string::npos)
        << textOf(target());
}

TEST_F(DueDaysFile, NamesAreLeftOutWhereTheyAreTurnedOff) {
    takeOrder({aGarment(stockUsualShop())});
    openWindow();
    workshop().doErrand(Errand::SaveDueDays);
    ASSERT_NE(slip(), nullptr);
    slip()->findChild<LongField*>(QStringLiteral("path"))->setText(QString::fromStdString(target().string()));
    slip()->form().focusOn("names");
    hit(Qt::Key_Space);
    hit(Qt::Key_Return, Qt::ControlModifier);
    QTRY_VERIFY(std::filesystem::exists(target()));
    EXPECT_EQ(textOf(target()).find("Odile"), std::string::npos);
}

TEST_F(DueDaysFile, TheFinderKnowsThemAsACalendar) {
    openWindow();
    workshop().finder()->open(QStringLiteral("calendar"));
    hit(Qt::Key_Return);
    ASSERT_NE(slip(), nullptr);
    EXPECT_EQ(slip()->title(), QStringLiteral("Save the due days"));
}

TEST_F(DueDaysFile, TheVerbWritesThemWhileAWindowHasTheShopOpen) {
    takeOrder({aGarment(stockUsualShop())});
    const auto done = saveDueDays(asking(), time().clock());
    ASSERT_TRUE(done.ok()) << done.error().message.english();
    EXPECT_TRUE(done->starts_with("Wrote the due days of 1 open order to ")) << *done;
    EXPECT_NE(textOf(target()).find("Odile"), std::string::npos);
    struct stat state{};
    ASSERT_EQ(::stat(target().c_str(), &state), 0);
    EXPECT_EQ(state.st_mode & 0777U, 0600U);
    Arguments nameless = asking();
    nameless.isNameless = true;
    ASSERT_TRUE(saveDueDays(nameless, time().clock()).ok()) << "its own calendar is replaced";
    EXPECT_EQ(textOf(target()).find("Odile"), std::string::npos);
}

TEST_F(DueDaysFile, NoOtherFileIsWrittenOver) {
    Arguments over = asking();
    over.target = path();
    const std::string before = textOf(path());
    EXPECT_FALSE(saveDueDays(over, time().clock()).ok());
    EXPECT_EQ(textOf(path()), before);
    QFile other(QString::fromStdString(target().string()));
    ASSERT_TRUE(other.open(QIODevice::WriteOnly));
    other.write("BEGIN:VCALENDAR\r\nPRODID:-//Another//Calendar//EN\r\n");
    other.close();
    EXPECT_FALSE(saveDueDays(asking(), time().clock()).ok());
    EXPECT_NE(textOf(target()).find("Another"), std::string::npos);
}

TEST_F(DueDaysFile, AreAskedForByTheirVerb) {
    const auto reads = [](std::vector<std::string> words) { return readArguments(words); };
    EXPECT_EQ(reads({"due-days", "out.ics"})->verb, Verb::DueDays);
    EXPECT_TRUE(reads({"due-days", "out.ics", "--nameless"})->isNameless);
    EXPECT_EQ(reads({"due-days"}).error().message.english(),
              "due-days needs the calendar file to write after it.");
    EXPECT_EQ(reads({"check", "--nameless"}).error().message.english(),
              "--nameless goes with due-days only.");
}

} // namespace
} // namespace holdfast::app
