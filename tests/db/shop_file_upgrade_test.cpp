// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/id_maker.h"
#include "db/backups/backups.h"
#include "db/check/check.h"
#include "db/disk/wall_clock.h"
#include "db/journal/carried_entry.h"
#include "db/journal/schema_upgrade.h"
#include "db/sqlite/session.h"
#include "tests/db/journal_fixture.h"

namespace holdfast::db {
namespace {

using namespace testing;

constexpr const char* kSizes = "ALTER TABLE lot ADD COLUMN size TEXT; UPDATE lot SET size = 'M';";
constexpr const char* kPress = "CREATE TABLE press (id INTEGER PRIMARY KEY, name TEXT) STRICT;";

struct Upgrade : ::testing::Test {
    TemporaryFolder folder;
    std::filesystem::path path = folder / "shop.holdfast";
    std::filesystem::path backups = folder / "shop backups";
    std::filesystem::path backup = backups / ("shop-" + isoDate(dateOf(wallTime(kMorning))) + "-" +
                                              wallClock() + "-before-step.holdfast");

    static std::string wallClock() {
        std::string time = clockTime(wallTime(kMorning)) + "00";
        std::erase(time, ':');
        return time;
    }

    void SetUp() override {
        auto shop = aShopIn(path);
        ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    }

    std::string tablesOf(Shop& shop) {
        std::string text;
        Query rows =
            shop.connection().query("SELECT sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY name");
        while (rows.step())
            text += rows.text(0) + "\n";
        return text;
    }
};

TEST_F(Upgrade, AppliesTheMissingStepsAfterACopy) {
    const std::array steps{smallSteps()[0], smallSteps()[1], kSizes, kPress};
    {
        auto shop = Shop::open(path, standingClock(), steps);
        ASSERT_TRUE(shop) << wordsOf(shop);
        EXPECT_EQ((*shop)->connection().number("PRAGMA user_version"), 4);
        EXPECT_EQ((*shop)->connection().number("SELECT COUNT(*) FROM lot WHERE size = 'M'"), 1);
        EXPECT_EQ((*shop)->connection().number("PRAGMA foreign_keys"), 1);
        EXPECT_TRUE((*shop)->act([](Writer& writer) -> Result<Done> {
            writer.connection().run("INSERT INTO press (id, name) VALUES (1, 'big')");
            writer.describe(said("Bought a press"));
            return Done{};
        })) << "the new table is recorded";
        EXPECT_EQ((*shop)->recent(1)[0].title, "Bought a press");
        EXPECT_EQ(*checkShop(**shop), std::vector<Sentence>{});
    }
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"shop backups", "shop.holdfast"}));
    EXPECT_EQ(std::filesystem::status(backups).permissions(), static_cast<std::filesystem::perms>(0700));
    EXPECT_EQ(std::filesystem::status(backup).permissions(), static_cast<std::filesystem::perms>(0600));
    ASSERT_EQ(backupsOf(path).size(), 1U);
    EXPECT_EQ(backupsOf(path)[0].reason, BackupReason::BeforeStep);
    auto copy = Shop::open(backup, standingClock(), smallSteps());
    ASSERT_TRUE(copy) << wordsOf(copy);
    EXPECT_EQ(rowsOf(**copy, "lot"), 1);
}

TEST_F(Upgrade, AnUpgradedShopHasTheTablesOfANewOne) {
    const std::array steps{smallSteps()[0], smallSteps()[1], kSizes, kPress};
    auto upgraded = Shop::open(path, standingClock(), steps);
    ASSERT_TRUE(upgraded);
    auto fresh = Shop::createInMemory(standingClock(), steps);
    EXPECT_EQ(tablesOf(**upgraded), tablesOf(*fresh));
}

TEST_F(Upgrade, AFailingStepLeavesTheFileAsItWas) {
    const std::array steps{smallSteps()[0], smallSteps()[1], kSizes,
                           "CREATE TABLE lot (id INTEGER PRIMARY KEY);"};
    const auto bytes = bytesOf(path);
    const auto refused = Shop::open(path, standingClock(), steps);
    ASSERT_FALSE(refused);
    EXPECT_NE(wordsOf(refused).find("is as it was"), std::string::npos) << wordsOf(refused);
    EXPECT_EQ(bytesOf(path), bytes);
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"shop.holdfast"}));
    auto shop = Shop::open(path, standingClock(), smallSteps());
    ASSERT_TRUE(shop) << wordsOf(shop);
    EXPECT_EQ((*shop)->connection().number("PRAGMA user_version"), 2);
}

TEST_F(Upgrade, AStepThatWouldBreakAReferenceIsRefused) {
    const std::array steps{smallSteps()[0], smallSteps()[1], "DELETE FROM lot;"};
    EXPECT_FALSE(Shop::open(path, standingClock(), steps));
    auto shop = Shop::open(path, standingClock(), smallSteps());
    ASSERT_TRUE(shop);
    EXPECT_EQ(rowsOf(**shop, "lot"), 1);
}

TEST_F(Upgrade, NeverWritesOverAnEarlierCopy) {
    std::filesystem::create_directory(backups);
    writeBytes(backup, "precious");
    const std::array steps{smallSteps()[0], smallSteps()[1], kSizes};
    ASSERT_TRUE(Shop::open(path, standingClock(), steps));
    EXPECT_EQ(bytesOf(backup), "precious");
    const std::string second = backup.stem().string() + "-2.holdfast";
    EXPECT_TRUE(Shop::open(backups / second, standingClock(), smallSteps()));
}

TEST_F(Upgrade, ReadingOnlyDoesNotUpgrade) {
    const std::array steps{smallSteps()[0], smallSteps()[1], kSizes};
    const auto bytes = bytesOf(path);
    const auto refused = Shop::openReadOnly(path, standingClock(), steps);
    EXPECT_NE(wordsOf(refused).find("older version"), std::string::npos) << wordsOf(refused);
    EXPECT_EQ(bytesOf(path), bytes);
}

// ── the shipped steps ─────────────────────────────────────────────────────────────────────────────────

constexpr int kSeals = 9; // from this step on entries have seals

// As a program of an earlier step did it.
void nameShopAsBefore(const std::filesystem::path& path) {
    Connection connection = Connection::open(path, Access::ReadWrite);
    Transaction transaction{connection};
    const std::array<std::string, 1> tables{"setting"};
    Session session{connection, tables};
    connection.run("INSERT INTO setting (name, value) VALUES ('shop-name', 'Tern')");
    const std::int64_t entry = IdMaker{1}.next(kMorning);
    connection.run("INSERT INTO journal_entry (id, seat_id, at, title, changeset) "
                   "VALUES (?1, 1, ?2, 'Named the shop', ?3)",
                   entry, kMorning, ChangesetView{session.changeset()});
    if (appliedSteps(connection) >= kSeals) {
        CarriedEntry sealed;
        sealed.id = EntryId{entry};
        sealed.seat = 1;
        sealed.at = kMorning;
        sealed.title = {"Named the shop", {}};
        sealed.changeset = session.changeset();
        sealed.identity = identityOf(sealed);
        connection.run("INSERT INTO journal_seal (entry_id, identity, salt, seal) VALUES (?1, ?2, ?3, ?4)",
                       sealed.id, sealed.identity, sealed.salt, sealOf(sealed));
    }
    connection.run("UPDATE seat_here SET last_id = ?1", entry);
    transaction.commit();
}

TEST(ShippedSteps, AShopOfEveryEarlierStepBecomesLikeANewOne) {
    const auto tablesOf = [](Shop& shop) {
        std::string text;
        Query rows =
            shop.connection().query("SELECT sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY name");
        while (rows.step())
            text += rows.text(0) + "\n";
        return text;
    };
    const auto fresh = Shop::createInMemory(standingClock());
    for (std::size_t step = 2; step < schemaSteps().size(); ++step) {
        TemporaryFolder folder;
        {
            const auto earlier =
                Shop::create(folder / "shop.holdfast", standingClock(), schemaSteps().first(step));
            ASSERT_TRUE(earlier) << wordsOf(earlier);
        }
        nameShopAsBefore(folder / "shop.holdfast");
        const auto upgraded = Shop::open(folder / "shop.holdfast", standingClock());
        ASSERT_TRUE(upgraded) << wordsOf(upgraded);
        EXPECT_EQ(tablesOf(**upgraded), tablesOf(*fresh)) << "from step " << step;
        EXPECT_EQ(*checkShop(**upgraded), std::vector<Sentence>{});
        EXPECT_EQ((*upgraded)->recent(1)[0].title, "Named the shop");
        ASSERT_TRUE((*upgraded)->undo(lastEntry(**upgraded)))
            << "what was done before is taken back after, from step " << step;
        EXPECT_EQ(rowsOf(**upgraded, "setting"), 0);
    }
}

} // namespace
} // namespace holdfast::db
