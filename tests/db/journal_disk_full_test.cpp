// SPDX-License-Identifier: GPL-3.0-or-later
// A disk that fills up: the action comes back with words, nothing is half-written, and the shop goes on.
#include "db/check/check.h"
#include "db/journal/backup.h"
#include "tests/db/journal_fixture.h"

#include <cerrno>
#include <fcntl.h>
#include <sys/mount.h>
#include <sys/stat.h>

namespace holdfast::db {
namespace {

using namespace testing;

Result<Done> receiveMuch(Shop& shop, int rows, const std::string& prefix) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        for (int each = 0; each < rows; ++each)
            writer.connection().run("INSERT INTO lot (id, name) VALUES (?1, ?2)", writer.newId<BlankLotId>(),
                                    prefix + std::to_string(each) + std::string(1000, 'z'));
        writer.describe(asItIs("Received " + prefix));
        return Done{};
    });
}

TEST(DiskFull, AShopThatMayNotGrowRefusesInWordsAndGoesOn) {
    const TemporaryFolder folder;
    const auto path = folder / "shop.holdfast";
    auto shop = aShopIn(path);
    auto& connection = shop->connection();
    ASSERT_TRUE(receiveLot(*shop, "tees", 1));
    const auto pages = connection.number("PRAGMA page_count");
    connection.script("PRAGMA max_page_count = " + std::to_string(pages + 20));
    int told = 0;
    shop->onChanged([&](const ChangedTables&) { ++told; });

    const auto refused = receiveMuch(*shop, 500, "caps ");
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().message.english(),
              "The disk is full. Nothing was changed; make room and try again.");
    EXPECT_EQ(told, 0);
    EXPECT_FALSE(connection.inTransaction());
    EXPECT_EQ(rowsOf(*shop, "lot"), 1);
    EXPECT_EQ(shop->recent(10).size(), 1U);

    EXPECT_TRUE(receiveLot(*shop, "vests", 1)) << "a small action still fits";
    connection.script("PRAGMA max_page_count = 1000000");
    EXPECT_TRUE(receiveMuch(*shop, 500, "caps "));
    EXPECT_EQ(*checkShop(*shop), std::vector<Sentence>{});
}

TEST(DiskFull, TheJournalItselfMayBeWhatDoesNotFit) {
    auto shop = aShop();
    auto& connection = shop->connection();
    ASSERT_TRUE(receiveLot(*shop, "tees", 1));
    // The rows fit; the changeset that tells of them, as large again, does not.
    connection.script("PRAGMA max_page_count = " +
                      std::to_string(connection.number("PRAGMA page_count") + 62));
    const auto refused = receiveMuch(*shop, 100, "caps ");
    ASSERT_FALSE(refused);
    EXPECT_EQ(rowsOf(*shop, "lot"), 1);
    EXPECT_EQ(shop->recent(10).size(), 1U);
    EXPECT_EQ(found(*shop, "caps"), 0);
    connection.script("PRAGMA max_page_count = 1000000");
    EXPECT_TRUE(receiveMuch(*shop, 100, "caps "));
}

TEST(DiskFull, TakingBackThatDoesNotFitChangesNothing) {
    auto shop = aShop();
    auto& connection = shop->connection();
    ASSERT_TRUE(receiveMuch(*shop, 50, "caps "));
    ASSERT_TRUE(write(*shop, "Threw all away", "DELETE FROM lot WHERE ?1 > 0", BlankLotId{1}));
    const auto thrown = lastEntry(*shop);
    for (int each = 0; connection.number("PRAGMA freelist_count") > 0; ++each)
        ASSERT_TRUE(receiveLot(*shop, "vests " + std::to_string(each) + std::string(3000, 'v'), 1));
    const auto rows = rowsOf(*shop, "lot");
    connection.script("PRAGMA max_page_count = " + std::to_string(connection.number("PRAGMA page_count")));
    EXPECT_FALSE(shop->undo(thrown));
    EXPECT_EQ(rowsOf(*shop, "lot"), rows);
    EXPECT_EQ(connection.number("PRAGMA foreign_keys"), 1);
    connection.script("PRAGMA max_page_count = 1000000");
    EXPECT_TRUE(shop->undo(thrown));
    EXPECT_EQ(rowsOf(*shop, "lot"), rows + 50);
}

// A real file system of 2 MB, where we may mount one.
struct SmallDisk : ::testing::Test {
    TemporaryFolder folder;
    bool isMounted = false;

    void SetUp() override {
        isMounted = mount("tmpfs", folder.path().c_str(), "tmpfs", 0, "size=2m,mode=0700") == 0;
        if (!isMounted)
            GTEST_SKIP() << "no right to mount a small disk; max_page_count stands in for it above";
    }
    void TearDown() override {
        if (isMounted) {
            EXPECT_EQ(umount2(folder.path().c_str(), MNT_DETACH), 0);
        }
    }

    void fill(std::size_t leave = 0) {
        std::ofstream filler{folder / "filler", std::ios::binary | std::ios::app};
        const std::string block(4096, 'f');
        while (filler.write(block.data(), 4096).flush()) {
        }
        filler.close();
        std::error_code ignored;
        const auto size = std::filesystem::file_size(folder / "filler", ignored);
        std::filesystem::resize_file(folder / "filler", size > leave ? size - leave : 0, ignored);
    }
    void makeRoom() { std::filesystem::remove(folder / "filler"); }
};

TEST_F(SmallDisk, AnActionOnAFullDiskRefusesInWordsAndTheShopGoesOn) {
    auto shop = aShopIn(folder / "shop.holdfast");
    ASSERT_TRUE(receiveLot(*shop, "tees", 1));
    fill(64 * 1024);
    int done = 0;
    Result<Done> last = Done{};
    while ((last = receiveMuch(*shop, 3, "caps" + std::to_string(done) + " ")).ok())
        ++done;
    EXPECT_NE(last.error().message.english().find("disk"), std::string::npos)
        << last.error().message.english();
    EXPECT_FALSE(shop->connection().inTransaction());
    EXPECT_EQ(rowsOf(*shop, "lot"), 1 + 3 * done);
    EXPECT_FALSE(shop->undo(lastEntry(*shop)) && rowsOf(*shop, "lot") == 1 + 3 * done);
    makeRoom();
    EXPECT_TRUE(receiveMuch(*shop, 3, "vests "));
    EXPECT_EQ(*checkShop(*shop), std::vector<Sentence>{});
}

TEST_F(SmallDisk, AFullDiskRefusesCreatingAndLeavesNothing) {
    fill();
    const auto refused = Shop::create(folder / "shop.holdfast", standingClock(), smallSteps());
    ASSERT_FALSE(refused);
    EXPECT_NE(wordsOf(refused).find("disk"), std::string::npos) << wordsOf(refused);
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"filler"}));
}

TEST_F(SmallDisk, ABackupThatDoesNotFitLeavesNothing) {
    auto shop = aShopIn(folder / "shop.holdfast");
    ASSERT_TRUE(receiveMuch(*shop, 100, "caps "));
    fill(40 * 1024);
    const auto refused = backup(*shop, folder / "copy.holdfast");
    ASSERT_FALSE(refused);
    EXPECT_NE(wordsOf(refused).find("disk is full"), std::string::npos) << wordsOf(refused);
    for (const auto& name : folder.names())
        EXPECT_FALSE(name.starts_with("copy")) << name;
    makeRoom();
    EXPECT_TRUE(receiveLot(*shop, "tees", 1));
}

TEST_F(SmallDisk, AShopOnAFullDiskStillOpensForReading) {
    {
        auto shop = aShopIn(folder / "shop.holdfast");
        ASSERT_TRUE(receiveLot(*shop, "tees", 1));
    }
    fill();
    const auto bytes = bytesOf(folder / "shop.holdfast");
    const auto writing = Shop::open(folder / "shop.holdfast", standingClock(), smallSteps());
    if (!writing) {
        EXPECT_NE(wordsOf(writing).find("disk"), std::string::npos) << wordsOf(writing);
    }
    EXPECT_EQ(bytesOf(folder / "shop.holdfast"), bytes);
}

} // namespace
} // namespace holdfast::db
