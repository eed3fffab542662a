// SPDX-License-Identifier: GPL-3.0-or-later
// Backups that the program makes by itself: named, read before they get their names, copied into a second
// folder, and removed when they are past their time.
#include "db/backups/backups.h"
#include "db/disk/backup_folders.h"
#include "db/disk/new_file.h"
#include "db/disk/staying.h"
#include "tests/db/journal_fixture.h"

#include <sqlite3.h>
#include <sys/stat.h>
#include <sys/wait.h>

#include <csignal>

namespace holdfast::db {
namespace {

using namespace testing;

const LocalTime kToday = LocalTime{localDate(2026, 11, 30)} + 9h + 14min + 5s;

struct Backups : ::testing::Test {
    TemporaryFolder folder;
    std::filesystem::path path = folder / "shop.holdfast";
    std::filesystem::path own = folder / "shop backups";
    std::filesystem::path stick = folder / "stick";
    std::unique_ptr<Shop> shop = aShopIn(path);

    Result<BackupMade> made(LocalTime when = kToday, BackupReason reason = BackupReason::OfTheDay) {
        return makeBackup(*shop, reason, when);
    }
    static std::vector<std::string> namesIn(const std::filesystem::path& where) {
        std::vector<std::string> found;
        for (const auto& entry : std::filesystem::directory_iterator{where})
            found.push_back(entry.path().filename().string());
        std::ranges::sort(found);
        return found;
    }
    static unsigned modeOf(const std::filesystem::path& path) {
        struct stat found{};
        EXPECT_EQ(stat(path.c_str(), &found), 0);
        return found.st_mode & 07777;
    }
    // As a bad disk does, in the file that is open.
    void spoil(const std::string& sql) {
        sqlite3* handle = nullptr;
        ASSERT_EQ(sqlite3_open(path.c_str(), &handle), SQLITE_OK);
        EXPECT_EQ(sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, nullptr), SQLITE_OK);
        sqlite3_close(handle);
    }
};

TEST_F(Backups, AreWholeShopsOfTheirOwnForTheOwnerOnly) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    const auto backup = made();
    ASSERT_TRUE(backup) << wordsOf(backup);
    EXPECT_TRUE(backup->found.isWhole());
    EXPECT_EQ(namesIn(own), std::vector<std::string>{"shop-2026-11-30-091405-of-the-day.holdfast"})
        << "no log and no lock next to it";
    EXPECT_EQ(modeOf(own), 0700U);
    EXPECT_EQ(modeOf(backup->backup.path), 0600U);
    EXPECT_EQ(backup->backup.at, kToday);
    EXPECT_EQ(backup->backup.bytes, std::filesystem::file_size(backup->backup.path));
    auto opened = Shop::open(backup->backup.path, standingClock(), smallSteps());
    ASSERT_TRUE(opened) << wordsOf(opened);
    EXPECT_EQ(rowsOf(**opened, "lot"), 1);
    EXPECT_NE((*opened)->connection().number("SELECT incarnation FROM seat_here"),
              shop->connection().number("SELECT incarnation FROM seat_here"))
        << "another file than the one it was copied from";
}

TEST_F(Backups, AreListedByBothFoldersNewestFirst) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    ASSERT_TRUE(made(kToday - Days{1}));
    ASSERT_TRUE(made(kToday, BackupReason::BeforeNews));
    std::filesystem::create_directory(stick);
    const auto second = makeSecondFolder(stick);
    ASSERT_TRUE(second) << wordsOf(second);
    const auto copied = copyToSecondFolder(*shop, *second, kToday);
    ASSERT_TRUE(copied) << wordsOf(copied);
    ASSERT_TRUE(*copied);
    writeBytes(own / "shop-2026-11-30-091405-of-the-day.holdfast.txt", "a note of somebody's");
    writeBytes(own / "shop-2026-11-31-091405-of-the-day.holdfast", "no such day");
    const auto found = backupsOf(path, *second);
    ASSERT_EQ(found.size(), 3U);
    EXPECT_EQ(found[0].path, own / "shop-2026-11-30-091405-before-news.holdfast");
    EXPECT_EQ(found[1].path, *second / "shop-2026-11-30-091405-before-news.holdfast");
    EXPECT_EQ(found[2].at, kToday - Days{1});
    EXPECT_EQ(found[0].reason, BackupReason::BeforeNews);
    EXPECT_EQ(found[2].reason, BackupReason::OfTheDay);
    EXPECT_EQ(backupsOf(folder / "other.holdfast").size(), 0U);
    EXPECT_EQ(modeOf(*second), 0700U);
}

TEST_F(Backups, NamesAreReadAsTheyAreWritten) {
    for (const BackupReason reason :
         {BackupReason::OfTheDay, BackupReason::BeforeStep, BackupReason::BeforeNews,
          BackupReason::BeforePuttingBack, BackupReason::BeforeMending})
        for (const bool isWhole : {true, false})
            for (const char* name : {"shop.holdfast", "my-shop-2.holdfast", "shop.db", "2026-11-30"}) {
                const auto file = folder / name;
                const auto first = freeBackupPath(folder.path(), file, kToday, reason, isWhole);
                writeBytes(first, "x");
                const auto second = freeBackupPath(folder.path(), file, kToday, reason, isWhole);
                EXPECT_NE(first, second);
                for (const auto& each : {first, second}) {
                    const auto read = readBackupName(file, each);
                    ASSERT_TRUE(read) << each;
                    EXPECT_EQ(read->at, kToday) << each;
                    EXPECT_EQ(read->reason, reason) << each;
                    EXPECT_EQ(read->isWhole, isWhole) << each;
                }
            }
    for (const char* name :
         {"shop-2026-11-30-091405-because.holdfast", "shop-2026-11-30-096105-of-the-day.holdfast",
          "shop-2026-11-30-of-the-day.holdfast", "shop2-2026-11-30-091405-of-the-day.holdfast",
          "shop-2026-11-30-091405-of-the-day", "shop-.holdfast", "shop.holdfast"})
        EXPECT_FALSE(readBackupName(path, folder / name)) << name;
}

TEST_F(Backups, ArePastTheirTimeAndOnlyOurOwnAreRemoved) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    const LocalTime began = kToday - Days{40};
    for (int day = 0; day < 40; ++day)
        ASSERT_TRUE(made(began + Days{day}));
    // Names of ours on what is not ours: another shop's backup, a text, and a backup that was worked in.
    auto other = aShopIn(folder / "other.holdfast");
    const auto foreign = makeBackup(*other, BackupReason::OfTheDay, began);
    ASSERT_TRUE(foreign);
    std::filesystem::rename(foreign->backup.path, own / "shop-2026-08-01-091405-of-the-day.holdfast");
    writeBytes(own / "shop-2026-08-02-091405-of-the-day.holdfast", "a letter");
    const auto worked = own / "shop-2026-08-03-091405-of-the-day.holdfast";
    std::filesystem::copy_file(made(kToday - Days{1})->backup.path, worked);
    {
        auto opened = Shop::open(worked, standingClock(), smallSteps());
        ASSERT_TRUE(opened) << wordsOf(opened);
        ASSERT_TRUE(receiveLot(**opened, "caps", 1));
    }
    ASSERT_TRUE(made());

    std::vector<LocalTime> times;
    for (int day = 0; day <= 40; ++day)
        times.push_back(began + Days{day});
    times.push_back(kToday - Days{1});
    const auto stays = whichStay(times, kToday);
    EXPECT_EQ(std::ranges::count(stays, true) + 3,
              static_cast<std::ptrdiff_t>(namedBackupsIn(own, path).size()));
    EXPECT_TRUE(std::filesystem::exists(worked));
    EXPECT_TRUE(std::filesystem::exists(own / "shop-2026-08-01-091405-of-the-day.holdfast"));
    EXPECT_EQ(bytesOf(own / "shop-2026-08-02-091405-of-the-day.holdfast"), "a letter");
    EXPECT_EQ(backupsOf(path).size(), namedBackupsIn(own, path).size() - 1)
        << "the other shop's is not listed";
}

TEST_F(Backups, OfADamagedShopAreSaidToBeSoAndPushNoOtherOut) {
    const auto lot = receiveLot(*shop, "tees", 10);
    ASSERT_TRUE(lot);
    for (int day = 60; day > 0; --day)
        ASSERT_TRUE(made(kToday - Days{day}));
    const auto before = namesIn(own);
    spoil("UPDATE lot SET name = 'spoilt'");
    for (int day = 0; day < 3; ++day) {
        const auto odd = made(kToday + Days{day});
        ASSERT_TRUE(odd) << wordsOf(odd);
        EXPECT_FALSE(odd->found.isWhole());
        EXPECT_FALSE(odd->backup.isWhole);
    }
    const auto all = backupsOf(path);
    EXPECT_EQ(std::ranges::count(all, false, &KeptBackup::isWhole), 1) << "the newest of them";
    EXPECT_EQ(all[0].path.filename(), "shop-2026-12-02-091405-of-the-day-not-whole.holdfast");
    std::filesystem::create_directory(stick);
    const auto second = makeSecondFolder(stick);
    ASSERT_TRUE(copyToSecondFolder(*shop, *second, kToday + Days{2}));
    EXPECT_EQ(namesIn(*second), std::vector<std::string>{before.back()})
        << "the last good one is carried over";
}

TEST_F(Backups, GoIntoTheSecondFolderOnceItIsThere) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    const auto second = secondBackupFolder(stick);
    EXPECT_NE(wordsOf(makeSecondFolder(stick)).find("There is no folder"), std::string::npos);
    std::filesystem::create_directory(stick);
    ASSERT_TRUE(makeSecondFolder(stick));
    EXPECT_FALSE(*copyToSecondFolder(*shop, second, kToday)) << "there is none to copy yet";
    ASSERT_TRUE(made());
    std::filesystem::rename(stick, folder / "pulled");
    std::filesystem::create_directory(stick); // where it is mounted
    const auto missing = copyToSecondFolder(*shop, second, kToday);
    ASSERT_FALSE(missing);
    EXPECT_EQ(wordsOf(missing), "The folder " + second.string() + " is not there.");
    EXPECT_TRUE(namesIn(stick).empty()) << "nothing is written where the stick is not";
    std::filesystem::remove(stick);
    std::filesystem::rename(folder / "pulled", stick);
    ASSERT_TRUE(*copyToSecondFolder(*shop, second, kToday));
    EXPECT_EQ(namesIn(second), namesIn(own));
    EXPECT_FALSE(*copyToSecondFolder(*shop, second, kToday)) << "it is there already";
}

TEST_F(Backups, NeedRoomAndSaySo) {
    const auto refused = requireRoom(folder.path(), std::uintmax_t{1} << 60);
    ASSERT_FALSE(refused);
    EXPECT_NE(wordsOf(refused).find("There is no room for a backup of"), std::string::npos);
    EXPECT_NE(wordsOf(refused).find(" MB are free."), std::string::npos);
    EXPECT_TRUE(requireRoom(folder.path(), 1));
    EXPECT_EQ(bytesWords(61'400'000), "61.4 MB");
    writeBytes(own, "a file of that name");
    EXPECT_NE(wordsOf(made()).find("is not a folder"), std::string::npos);
    EXPECT_EQ(bytesOf(own), "a file of that name");
}

TEST_F(Backups, StoppedLeaveNothing) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    for (const double until : {0.0, 0.4, 0.6}) {
        const auto stopped = makeBackup(*shop, BackupReason::OfTheDay, kToday,
                                        [&](double share, Phrase) { return share < until; });
        EXPECT_FALSE(stopped) << until;
        EXPECT_TRUE(namesIn(own).empty()) << until;
    }
}

// Killed wherever it was: what is left bears no backup's name, and the next opening removes it.
TEST_F(Backups, KilledInTheMidstLeaveNothingThatCounts) {
    ASSERT_TRUE(receiveManyPages(*shop));
    shop.reset();
    int left = 0;
    for (int step = 0; step < 12; ++step) {
        const pid_t child = fork();
        ASSERT_GE(child, 0);
        if (child == 0) {
            auto reading = Shop::openReadOnly(path, standingClock(), smallSteps());
            int told = 0;
            if (reading)
                (void)makeBackup(**reading, BackupReason::OfTheDay, kToday, [&](double, Phrase) {
                    if (told++ == step)
                        raise(SIGKILL);
                    return true;
                });
            _exit(0);
        }
        int status = 0;
        ASSERT_EQ(waitpid(child, &status, 0), child);
        if (!WIFSIGNALED(status))
            break;
        left += namesIn(own).empty() ? 0 : 1;
        EXPECT_TRUE(namedBackupsIn(own, path).empty()) << "killed at step " << step;
    }
    EXPECT_GT(left, 0) << "it was killed in the midst";
    ASSERT_TRUE(Shop::open(path, standingClock(), smallSteps()));
    EXPECT_TRUE(namedBackupsIn(own, path).size() == namesIn(own).size()) << "only backups are left";
}

} // namespace
} // namespace holdfast::db
