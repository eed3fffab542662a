// SPDX-License-Identifier: GPL-3.0-or-later
// A demo is made again each day: it has no backups, and nothing of it is put back, mended or forgotten.
#include "app/command_line/arguments.h"
#include "app/command_line/verbs.h"
#include "app/desk/backups_beside.h"
#include "app/desk/machine_settings.h"
#include "app/shell/main_window.h"
#include "app/shell/shop_paths.h"
#include "app/shell/workshop.h"
#include "db/backups/backups.h"
#include "tests/app/shop_fixture.h"

#include <QTest>

namespace holdfast::app::test {
namespace {

class DemoBackups : public ShopFixture {
protected:
    void SetUp() override { keepMachineSetting(kBackupFolderSetting, {}); }
    void TearDown() override { keepMachineSetting(kBackupFolderSetting, {}); }
};

TEST_F(DemoBackups, NoneAreMadeWhileItIsWorkedInNorTheNextDay) {
    close();
    const auto stick = path().parent_path() / "stick";
    std::filesystem::create_directory(stick);
    MainWindow window(time().clock());
    window.open(valueOf(openDemoToWorkIn(now().today(), time().clock().now)));
    showWindow(window);
    QTRY_VERIFY(window.workshop() != nullptr);
    ShopDesk& demo = *window.desk();
    demo.backups().setSecondFolder(stick);
    for (int day = 0; day < 2; ++day) {
        QTest::qWait(20); // what comes after the first paint
        demo.backups().look();
        QTRY_VERIFY(demo.backups().isLookedAt());
        EXPECT_FALSE(demo.backups().isOn());
        EXPECT_TRUE(demo.backups().known().all.empty());
        time().pass(24h);
        emit demo.minutePassed();
    }
    EXPECT_TRUE(db::backupsOf(demo.file().path()).empty());
    EXPECT_FALSE(std::filesystem::exists(db::backupFolder(demo.file().path())));
    const bool isStickEmpty =
        std::filesystem::is_empty(stick) ||
        std::filesystem::is_empty(std::filesystem::directory_iterator { stick } -> path());
    EXPECT_TRUE(isStickEmpty);
}

TEST_F(DemoBackups, VerbsThatWriteToAShopRefuseItInWords) {
    Arguments arguments;
    arguments.isDemo = true;
    arguments.on = now().today();
    arguments.target = "Odile Farrant";
    arguments.isSure = true;
    const auto refusal = [&](const auto& verb) {
        const auto outcome = verb(arguments, time().clock());
        return outcome.ok() ? "done: " + *outcome : outcome.error().message.english();
    };
    EXPECT_EQ(refusal(putBack), "The demo is made again each day: nothing is put back there.");
    EXPECT_EQ(refusal(mend), "The demo is made again each day: nothing is mended there.");
    EXPECT_EQ(refusal(forget), "The demo is made again each day: nobody is forgotten there.");
    EXPECT_EQ(refusal(listBackups), "done: There is no backup yet.\n");
}

TEST_F(DemoBackups, NoneAreMadeOfAShopThatIsOnlyRead) {
    takeOrder({aGarment(stockUsualShop())});
    close();
    ShopDesk reading(valueOf(db::Shop::openReadOnly(path(), time().clock().now)), time().clock());
    reading.backups().begin();
    reading.backups().look();
    QTRY_VERIFY(reading.backups().isLookedAt());
    EXPECT_FALSE(reading.backups().isOn());
    EXPECT_TRUE(db::backupsOf(path()).empty());
}

} // namespace
} // namespace holdfast::app::test
