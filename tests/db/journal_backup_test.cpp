// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/check/check.h"
#include "db/disk/new_file.h"
#include "db/journal/backup.h"
#include "tests/db/journal_fixture.h"

#include <sys/stat.h>
#include <thread>

namespace holdfast::db {
namespace {

using namespace testing;

struct Backup : ::testing::Test {
    TemporaryFolder folder;
    std::filesystem::path path = folder / "shop.holdfast";
    std::filesystem::path copy = folder / "copy.holdfast";
    std::unique_ptr<Shop> shop = aShopIn(path);
};

TEST_F(Backup, IsAWholeShopOfItsOwn) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    const auto done = backup(*shop, copy);
    ASSERT_TRUE(done) << wordsOf(done);
    EXPECT_TRUE(receiveLot(*shop, "caps", 10)) << "the shop goes on";
    struct stat found{};
    ASSERT_EQ(stat(copy.c_str(), &found), 0);
    EXPECT_EQ(found.st_mode & 07777, 0600U);
    auto restored = Shop::open(copy, standingClock(), smallSteps());
    ASSERT_TRUE(restored) << wordsOf(restored);
    EXPECT_EQ(rowsOf(**restored, "lot"), 1);
    EXPECT_EQ(*checkShop(**restored), std::vector<Sentence>{});
    EXPECT_TRUE((*restored)->undo(lastEntry(**restored)));
}

TEST_F(Backup, NeverWritesOverAFile) {
    writeBytes(copy, "precious");
    EXPECT_NE(wordsOf(backup(*shop, copy)).find("already"), std::string::npos);
    EXPECT_EQ(bytesOf(copy), "precious");
    EXPECT_FALSE(backup(*shop, path)) << "least of all the shop itself";
    EXPECT_EQ(wordsOf(backup(*shop, folder / "none/copy")),
              "There is no folder " + (folder / "none").string() + ".");
}

// The program itself would remove or overwrite each of these when the shop is next opened.
TEST_F(Backup, UnderANameThatHoldfastWritesItselfIsRefused) {
    for (const char* name : {"shop.holdfast.lock", "other.holdfast-wal", "other.holdfast-shm",
                             "other.holdfast-journal", "copy.holdfast-new-77"}) {
        const auto refused = backup(*shop, folder / name);
        EXPECT_NE(wordsOf(refused).find("Holdfast itself writes"), std::string::npos) << wordsOf(refused);
        EXPECT_TRUE(name == std::string_view{"shop.holdfast.lock"} ||
                    !std::filesystem::exists(folder / name));
    }
}

TEST_F(Backup, RemovesWhatAKilledBackupLeftAndNotWhatIsBeingWritten) {
    writeBytes(folder / "yesterday.holdfast.holdfast-new-99999", "half");
    writeBytes(folder / "yesterday.holdfast.holdfast-new-99999-journal", "half");
    auto underWay = NewFile::begin(folder / "slow.holdfast");
    ASSERT_TRUE(underWay);
    ASSERT_TRUE(backup(*shop, copy));
    EXPECT_FALSE(std::filesystem::exists(folder / "yesterday.holdfast.holdfast-new-99999"));
    EXPECT_FALSE(std::filesystem::exists(folder / "yesterday.holdfast.holdfast-new-99999-journal"));
    ASSERT_TRUE(underWay->keep()) << "another's file that is being written stays";
    EXPECT_TRUE(std::filesystem::exists(folder / "slow.holdfast"));
}

TEST_F(Backup, TellsHowFarItIsAndCanBeStopped) {
    ASSERT_TRUE(receiveManyPages(*shop));
    std::vector<std::pair<int, int>> told;
    ASSERT_TRUE(backup(*shop, copy, [&](int done, int all) {
        told.emplace_back(done, all);
        return true;
    }));
    ASSERT_GE(told.size(), 2U);
    EXPECT_TRUE(std::ranges::is_sorted(told));
    EXPECT_EQ(told.back().first, told.back().second);
    const auto names = folder.names();
    const auto stopped = backup(*shop, folder / "second", [](int, int) { return false; });
    EXPECT_NE(wordsOf(stopped).find("stopped"), std::string::npos) << wordsOf(stopped);
    EXPECT_EQ(folder.names(), names);
}

TEST_F(Backup, TakesWithItWhatTheSameShopWritesMeanwhile) {
    ASSERT_TRUE(receiveManyPages(*shop));
    bool wrote = false;
    ASSERT_TRUE(backup(*shop, copy, [&](int, int) {
        if (!std::exchange(wrote, true)) {
            EXPECT_TRUE(receiveLot(*shop, "late", 1));
        }
        return true;
    }));
    auto restored = Shop::openReadOnly(copy, standingClock(), smallSteps());
    ASSERT_TRUE(restored) << wordsOf(restored);
    EXPECT_EQ(rowsOf(**restored, "lot"), 3001);
    EXPECT_EQ(*checkShop(**restored), std::vector<Sentence>{});
}

TEST_F(Backup, RunsOnAThreadOfItsOwnWhileTheShopIsWrittenTo) {
    ASSERT_TRUE(receiveManyPages(*shop));
    Result<Done> done = plainError(said("never ran"));
    std::thread worker{[&] {
        auto reader = Shop::openReadOnly(path, standingClock(), smallSteps());
        done = reader ? backup(**reader, copy) : Result<Done>{reader.error()};
    }};
    for (int each = 0; each < 20; ++each)
        EXPECT_TRUE(receiveLot(*shop, "lot " + std::to_string(each), 1));
    worker.join();
    ASSERT_TRUE(done) << wordsOf(done);
    auto restored = Shop::openReadOnly(copy, standingClock(), smallSteps());
    ASSERT_TRUE(restored);
    EXPECT_GE(rowsOf(**restored, "lot"), 3000);
    EXPECT_EQ(*checkShop(**restored), std::vector<Sentence>{});
}

} // namespace
} // namespace holdfast::db
