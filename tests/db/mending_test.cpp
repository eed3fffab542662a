// SPDX-License-Identifier: GPL-3.0-or-later
// Mending keeps the shop as it was in a backup first, and does nothing where that cannot be.
#include "db/backups/mending.h"

#include "db/backups/backups.h"
#include "db/backups/putting_back.h"
#include "tests/db/exchange_fixture.h"

#include <gtest/gtest.h>

#include <fstream>

namespace holdfast::db {
namespace {

class MendingTest : public Laptops {
protected:
    std::unique_ptr<Shop> spoilt(const std::string& sql) {
        auto known = opened(copyOf(shop()));
        taken(*known, aDraft());
        known->connection().allowWriting(true);
        known->connection().script(sql);
        known->connection().allowWriting(false);
        return known;
    }
    LocalTime today() const { return now().local(); }

    static std::string placementIn(Connection& connection) {
        Query row{connection, "SELECT placement FROM decal"};
        return row.step() ? row.text(0) : std::string{};
    }
};

TEST_F(MendingTest, WhatWasThereIsKeptAndCanBePutBack) {
    auto known = spoilt("UPDATE decal SET placement = 'chesst'");
    const auto path = known->path();
    const auto done = mendWithBackup(*known, today());
    ASSERT_TRUE(done) << done.error().message.english();
    EXPECT_EQ(done->mended.rows, 1U);
    EXPECT_EQ(placementIn(known->connection()), "chest");
    EXPECT_EQ(*checkShop(*known), std::vector<Sentence>{});
    const auto backups = backupsOf(path);
    ASSERT_EQ(backups.size(), 1U);
    EXPECT_EQ(backups[0].path, done->before.path);
    EXPECT_TRUE(backups[0].reason == BackupReason::BeforeMending);
    EXPECT_FALSE(backups[0].isWhole) << "a placement could not be read";
    {
        Connection before = Connection::open(done->before.path, Access::ReadOnly);
        EXPECT_EQ(placementIn(before), "chesst");
    }
    auto prepared = PreparedBackup::prepare(done->before.path, path, [this] { return now().instant; });
    ASSERT_TRUE(prepared) << prepared.error().message.english();
    known.reset();
    ASSERT_TRUE(prepared->putInPlace(today() + Hours{1}));
    known = opened(path);
    EXPECT_EQ(placementIn(known->connection()), "chesst") << "mending is undone";
}

TEST_F(MendingTest, WhatTheProgramCannotReadIsKeptToo) {
    auto known = spoilt("DROP TABLE claim");
    const auto done = mendWithBackup(*known, today());
    ASSERT_TRUE(done) << done.error().message.english();
    EXPECT_EQ(*checkShop(*known), std::vector<Sentence>{});
    EXPECT_FALSE(done->before.isWhole);
    EXPECT_GT(done->before.bytes, 0U);
    EXPECT_EQ(backupsOf(known->path()).size(), 1U);
}

TEST_F(MendingTest, NothingIsMendedWithoutTheBackup) {
    auto known = spoilt("UPDATE decal SET placement = 'chesst'");
    std::ofstream{backupFolder(known->path())} << "in the way";
    EXPECT_FALSE(mendWithBackup(*known, today()));
    EXPECT_EQ(placementIn(known->connection()), "chesst");
    std::filesystem::remove(backupFolder(known->path()));
    for (const double until : {0.0, 0.2, 0.5}) {
        EXPECT_FALSE(mendWithBackup(*known, today(), [&](double share, Phrase) { return share < until; }));
        EXPECT_EQ(placementIn(known->connection()), "chesst") << "stopped at " << until;
    }
}

TEST_F(MendingTest, AShopThatIsOnlyReadIsNotMendedAndNoBackupIsMadeOfIt) {
    auto known = spoilt("UPDATE decal SET placement = 'chesst'");
    const auto path = known->path();
    known.reset();
    auto reading = Shop::openReadOnly(path, [this] { return now().instant; });
    ASSERT_TRUE(reading);
    EXPECT_FALSE(mendWithBackup(**reading, today()));
    EXPECT_TRUE(backupsOf(path).empty());
}

// A report while a window works: the backup of a shop that is only read is as whole as any.
TEST_F(MendingTest, AShopThatIsOnlyReadIsBackedUpLikeAnyOther) {
    auto known = opened(copyOf(shop()));
    taken(*known, aDraft());
    auto reading = Shop::openReadOnly(known->path(), [this] { return now().instant; });
    ASSERT_TRUE(reading);
    const auto made = makeBackup(**reading, BackupReason::OfTheDay, today());
    ASSERT_TRUE(made) << made.error().message.english();
    EXPECT_TRUE(made->backup.isWhole);
    EXPECT_EQ(ordersIn(made->backup), 1);
    const auto second = makeSecondFolder(known->path().parent_path());
    ASSERT_TRUE(second);
    const auto copied = copyToSecondFolder(**reading, *second, today());
    ASSERT_TRUE(copied) << copied.error().message.english();
    EXPECT_EQ(ordersIn(**copied), 1);
    taken(*known, aDraft());
    EXPECT_EQ(numberOf(*known, "SELECT COUNT(*) FROM shop_order"), 2) << "the window goes on";
}

} // namespace
} // namespace holdfast::db
