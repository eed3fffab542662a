// SPDX-License-Identifier: GPL-3.0-or-later
// A backup is put back: what would be lost is said first, the present file is kept, and putting that one back
// undoes it.
#include "db/backups/putting_back.h"

#include "db/actions/order_actions.h"
#include "db/backups/backups.h"
#include "db/backups/look_at_backup.h"
#include "db/check/check.h"
#include "db/demo/demo_shop.h"
#include "db/exchange/exchange.h"
#include "db/tables/facts.h"
#include "tests/db/disk_watch.h"
#include "tests/db/journal_fixture.h"

#include <sys/wait.h>
#include <unistd.h>

#include <csignal>

namespace holdfast::db {
namespace {

using namespace testing;

const LocalTime kTen = LocalTime{localDate(2026, 11, 30)} + 10h;

struct PuttingBack : ::testing::Test {
    TemporaryFolder folder;
    std::filesystem::path path = folder / "shop.holdfast";
    std::unique_ptr<Shop> shop = aShopIn(path);

    std::filesystem::path backedUp(LocalTime at = kTen) {
        const auto made = makeBackup(*shop, BackupReason::OfTheDay, at);
        EXPECT_TRUE(made) << wordsOf(made);
        return made ? made->backup.path : std::filesystem::path{};
    }
    Result<KeptBackup> putBack(const std::filesystem::path& backup, LocalTime at = kTen + 1h) {
        auto prepared = PreparedBackup::prepare(backup, path, standingClock(), {}, smallSteps());
        if (!prepared)
            return prepared.error();
        shop.reset();
        return prepared->putInPlace(at);
    }
    void open() {
        shop.reset();
        auto opened = Shop::open(path, standingClock(), smallSteps());
        ASSERT_TRUE(opened) << wordsOf(opened);
        shop = std::move(opened).value();
    }
    std::int64_t incarnation() { return shop->connection().number("SELECT incarnation FROM seat_here"); }
    std::int64_t nextNumber() { return shop->connection().number("SELECT next_order_number FROM seat_here"); }
    void giveNumbers(std::int64_t count) {
        Connection& connection = shop->connection();
        connection.allowWriting(true);
        connection.run("UPDATE seat_here SET next_order_number = next_order_number + ?1", count);
        connection.allowWriting(false);
    }
};

TEST_F(PuttingBack, SaysFirstWhatWouldBeLost) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    const auto backup = backedUp();
    const auto same = lookAtBackup(backup, path);
    ASSERT_TRUE(same) << wordsOf(same);
    EXPECT_TRUE(same->isShopRead);
    EXPECT_TRUE(same->lost.isNothing());
    EXPECT_EQ(same->lastTitle, "Received tees");
    for (int lot = 0; lot < 7; ++lot)
        ASSERT_TRUE(receiveLot(*shop, "caps " + std::to_string(lot), 1));
    const auto look = lookAtBackup(backup, path);
    ASSERT_TRUE(look) << wordsOf(look);
    EXPECT_EQ(look->lost.entries, 7);
    EXPECT_EQ(look->lost.newest.size(), 5U);
    EXPECT_EQ(look->lost.newest.front(), "Received caps 6");
    EXPECT_TRUE(look->comesBack.isNothing());
}

TEST_F(PuttingBack, IsUndoneByPuttingBackWhatWasKept) {
    const auto lot = receiveLot(*shop, "tees", 10);
    const auto backup = backedUp();
    ASSERT_TRUE(receiveLot(*shop, "caps", 1));
    const std::int64_t before = incarnation();
    const auto kept = putBack(backup);
    ASSERT_TRUE(kept) << wordsOf(kept);
    EXPECT_EQ(kept->reason, BackupReason::BeforePuttingBack);
    EXPECT_TRUE(kept->isWhole);
    open();
    EXPECT_EQ(rowsOf(*shop, "lot"), 1);
    EXPECT_EQ(unitsOf(*shop, *lot), 10);
    EXPECT_EQ(*checkShop(*shop), std::vector<Sentence>{});
    const std::int64_t after = incarnation();
    EXPECT_NE(after, 0);
    EXPECT_NE(after, before) << "another file now";
    ASSERT_TRUE(std::filesystem::exists(backup)) << "the backup stays";
    ASSERT_EQ(backupsOf(path).size(), 2U);
    EXPECT_EQ(backupsOf(path)[0].path, kept->path);

    const auto look = lookAtBackup(kept->path, path);
    ASSERT_TRUE(look) << wordsOf(look);
    EXPECT_TRUE(look->lost.isNothing());
    ASSERT_EQ(look->comesBack.newest.size(), 1U);
    EXPECT_EQ(look->comesBack.newest.front(), "Received caps");
    const auto keptAgain = putBack(kept->path, kTen + 2h);
    ASSERT_TRUE(keptAgain) << wordsOf(keptAgain);
    open();
    EXPECT_EQ(rowsOf(*shop, "lot"), 2);
    EXPECT_EQ(*checkShop(*shop), std::vector<Sentence>{});
    EXPECT_NE(incarnation(), before);
    EXPECT_NE(incarnation(), after);
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"shop backups", "shop.holdfast", "shop.holdfast-shm",
                                                        "shop.holdfast-wal", "shop.holdfast.lock"}));
}

TEST_F(PuttingBack, GivesNoOrderNumberTwice) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    const auto backup = backedUp();
    giveNumbers(41);
    ASSERT_TRUE(putBack(backup));
    open();
    EXPECT_EQ(nextNumber(), 42) << "41 were given since";
    // Where nobody can read which were given, well beyond those that are known.
    giveNumbers(5); // 47
    const auto later = backedUp(kTen + 3h);
    shop.reset();
    writeBytes(path, "no shop any more");
    ASSERT_TRUE(putBack(later, kTen + 4h));
    open();
    EXPECT_EQ(nextNumber(), 201);
}

TEST_F(PuttingBack, WorksWhereTheShopCannotBeRead) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    const auto backup = backedUp();
    shop.reset();
    const std::string rubbish(5000, 'x');
    writeBytes(path, rubbish);
    writeBytes(path.string() + "-wal", "what was written last");
    const auto look = lookAtBackup(backup, path);
    ASSERT_TRUE(look) << wordsOf(look);
    EXPECT_FALSE(look->isShopRead);
    const auto kept = putBack(backup);
    ASSERT_TRUE(kept) << wordsOf(kept);
    EXPECT_FALSE(kept->isWhole);
    EXPECT_EQ(bytesOf(kept->path), rubbish) << "it is kept as it was";
    EXPECT_EQ(bytesOf(kept->path.string() + "-wal"), "what was written last");
    open();
    EXPECT_EQ(rowsOf(*shop, "lot"), 1);
    EXPECT_EQ(*checkShop(*shop), std::vector<Sentence>{});
}

TEST_F(PuttingBack, WorksWhereTheFileIsGone) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    const auto backup = backedUp();
    shop.reset();
    std::filesystem::remove(path);
    const auto kept = putBack(backup);
    ASSERT_TRUE(kept) << wordsOf(kept);
    EXPECT_TRUE(kept->path.empty());
    open();
    EXPECT_EQ(rowsOf(*shop, "lot"), 1);
}

TEST_F(PuttingBack, ABackupThatCannotBeReadIsRefusedAndNothingIsChanged) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    const auto backup = backedUp();
    std::string bytes = bytesOf(backup);
    for (std::size_t at = 100; at < bytes.size(); at += 7)
        bytes[at] = 'x';
    writeBytes(backup, bytes);
    writeBytes(folder / "letter", "Dear all");
    const auto refused = putBack(backup);
    EXPECT_FALSE(refused);
    EXPECT_NE(wordsOf(putBack(folder / "letter")).find("is not a shop file"), std::string::npos);
    EXPECT_NE(wordsOf(putBack(folder / "none")).find("There is no file"), std::string::npos);
    EXPECT_EQ(wordsOf(lookAtBackup(folder / "letter", path)),
              (folder / "letter").string() + " is not a shop file. It was left as it is.");
    EXPECT_EQ(rowsOf(*shop, "lot"), 1) << "the shop is open and goes on";
    open();
    EXPECT_EQ(rowsOf(*shop, "lot"), 1);
}

TEST_F(PuttingBack, IsRefusedWhileAnotherWindowHasTheShopOpen) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    const auto backup = backedUp();
    auto prepared = PreparedBackup::prepare(backup, path, standingClock(), {}, smallSteps());
    ASSERT_TRUE(prepared) << wordsOf(prepared);
    EXPECT_NE(wordsOf(prepared->putInPlace(kTen)).find("open in another window"), std::string::npos);
    EXPECT_TRUE(receiveLot(*shop, "caps", 1));
    EXPECT_EQ(backupsOf(path).size(), 1U);
}

TEST_F(PuttingBack, ABackupOfAnOlderSchemaIsBroughtUpToDate) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    constexpr const char* kSizes = "ALTER TABLE lot ADD COLUMN size TEXT; UPDATE lot SET size = 'M';";
    const std::array steps{smallSteps()[0], smallSteps()[1], kSizes};
    shop.reset();
    {
        auto opened = Shop::open(path, standingClock(), steps);
        ASSERT_TRUE(opened) << wordsOf(opened);
        ASSERT_TRUE(receiveLot(**opened, "caps", 1));
    }
    const auto backups = backupsOf(path);
    ASSERT_EQ(backups.size(), 1U);
    auto prepared = PreparedBackup::prepare(backups[0].path, path, standingClock(), {}, steps);
    ASSERT_TRUE(prepared) << wordsOf(prepared);
    ASSERT_TRUE(prepared->putInPlace(kTen));
    auto opened = Shop::open(path, standingClock(), steps);
    ASSERT_TRUE(opened) << wordsOf(opened);
    EXPECT_EQ((*opened)->connection().number("SELECT COUNT(*) FROM lot WHERE size = 'M'"), 1);
    EXPECT_EQ(rowsOf(**opened, "lot"), 1);
}

// Killed wherever it was, the file of that name is a whole shop: the one before, or the backup.
TEST_F(PuttingBack, KilledInTheMidstLeavesOneOfTheTwo) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    const auto backup = backedUp();
    ASSERT_TRUE(receiveLot(*shop, "caps", 1));
    shop.reset();
    for (int step = 0; step < 20; ++step) {
        const pid_t child = fork();
        ASSERT_GE(child, 0);
        if (child == 0) {
            int told = 0;
            auto prepared = PreparedBackup::prepare(
                backup, path, standingClock(),
                [&](double, Phrase) {
                    if (told++ == step)
                        raise(SIGKILL);
                    return true;
                },
                smallSteps());
            if (prepared && step % 2 == 1)
                (void)prepared->putInPlace(kTen + Minutes{step});
            _exit(0);
        }
        int status = 0;
        ASSERT_EQ(waitpid(child, &status, 0), child);
        open();
        EXPECT_GE(rowsOf(*shop, "lot"), 1);
        EXPECT_EQ(*checkShop(*shop), std::vector<Sentence>{});
        shop.reset();
        EXPECT_EQ(folder.names(), (std::vector<std::string>{"shop backups", "shop.holdfast"}));
    }
}

// Ends the program at the so-many-th thing that is done to the disk.
class KilledAtTheDisk : public DiskWatch {
public:
    explicit KilledAtTheDisk(int at)
        : m_left(at) {}

    void opened(int, const char*) override { count(); }
    void wrote(int, std::uint64_t, std::string_view) override { count(); }
    void cut(int, std::uint64_t) override { count(); }
    void synced(int) override { count(); }
    void removed(const char*) override { count(); }
    void renamed(const char*, const char*) override { count(); }

private:
    void count() {
        if (m_left-- == 0)
            raise(SIGKILL);
    }

    int m_left;
};

// In the putting in place itself, after each single thing that it does to the disk.
TEST_F(PuttingBack, KilledWhileItIsPutInPlaceLosesNeitherOfTheTwo) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    const auto backup = backedUp();
    ASSERT_TRUE(receiveLot(*shop, "caps", 1));
    shop.reset();
    const auto before = folder / "before";
    std::filesystem::copy_file(path, before);
    int kills = 0, placed = 0;
    for (bool isKilled = true; isKilled; ++kills) {
        const pid_t child = fork();
        ASSERT_GE(child, 0);
        if (child == 0) {
            auto prepared = PreparedBackup::prepare(backup, path, standingClock(), {}, smallSteps());
            KilledAtTheDisk disk{kills};
            watchDisk(&disk);
            _exit(prepared && prepared->putInPlace(kTen + 1h) ? 0 : 1);
        }
        int status = 0;
        ASSERT_EQ(waitpid(child, &status, 0), child);
        isKilled = WIFSIGNALED(status);
        ASSERT_TRUE(isKilled || WEXITSTATUS(status) == 0) << "it ended by itself with " << status;
        open();
        const std::int64_t lots = rowsOf(*shop, "lot");
        EXPECT_EQ(*checkShop(*shop), std::vector<Sentence>{});
        shop.reset();
        const auto kept = backupsOf(path);
        if (lots == 1) { // the backup is in place: what was there before is kept
            ++placed;
            ASSERT_EQ(kept.size(), 2U) << "killed at " << kills;
            auto opened = Shop::openReadOnly(kept[0].path, standingClock(), smallSteps());
            ASSERT_TRUE(opened) << wordsOf(opened);
            EXPECT_EQ(rowsOf(**opened, "lot"), 2) << "killed at " << kills;
        } else {
            ASSERT_EQ(lots, 2) << "killed at " << kills;
            EXPECT_EQ(kept.size(), 1U) << "killed at " << kills << ": the shop is no backup of itself";
        }
        EXPECT_EQ(folder.names(), (std::vector<std::string>{"before", "shop backups", "shop.holdfast"}))
            << "killed at " << kills;
        // As it was, for the next one.
        for (const KeptBackup& each : kept)
            if (each.path != backup)
                std::filesystem::remove(each.path);
        std::filesystem::copy_file(before, path, std::filesystem::copy_options::overwrite_existing);
    }
    EXPECT_GT(kills, 5) << "it was killed in the midst";
    EXPECT_GT(placed, 1) << "and also after the backup was in place";
    EXPECT_LT(placed, kills);
}

TEST_F(PuttingBack, EndedBetweenKeepingAndPlacingLeavesNoBackupThatIsTheShopItself) {
    ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    const auto backup = backedUp();
    shop.reset();
    const auto second = freeBackupPath(backupFolder(path), path, kTen, BackupReason::BeforePuttingBack, true);
    std::filesystem::create_hard_link(path, second);
    open();
    EXPECT_FALSE(std::filesystem::exists(second));
    EXPECT_EQ(backupsOf(path).size(), 1U);
    EXPECT_EQ(rowsOf(*shop, "lot"), 1);
}

// In words of the trade, on the invented shop of the demo.
TEST(PuttingBackTheDemo, CountsOrdersPaymentsAndGarmentsPressed) {
    const TemporaryFolder folder;
    const auto path = folder / "shop.holdfast";
    const LocalDate day = localDate(2026, 11, 25);
    ASSERT_TRUE(makeDemoShop(path, day));
    const Now now = demoNow(day);
    auto opened = Shop::open(path, standingClock(now.instant));
    ASSERT_TRUE(opened) << wordsOf(opened);
    const auto made = makeBackup(**opened, BackupReason::OfTheDay, now.local());
    ASSERT_TRUE(made) << wordsOf(made);
    EXPECT_TRUE(made->found.isWhole())
        << (made->found.sentences.empty() ? Sentence{} : made->found.sentences[0]);
    EXPECT_EQ(*ordersIn(made->backup), (*opened)->connection().number("SELECT COUNT(*) FROM shop_order"));
    const OrderId order{(*opened)->connection().number(
        "SELECT id FROM shop_order WHERE state = 'confirmed' ORDER BY number LIMIT 1")};
    const auto paid = moveMoney(**opened, order, MoneyKind::Payment, {100}, PaidHow::Cash);
    ASSERT_TRUE(paid) << wordsOf(paid);
    const auto look = lookAtBackup(made->backup.path, path);
    ASSERT_TRUE(look) << wordsOf(look);
    EXPECT_EQ(look->lost.entries, 1);
    EXPECT_EQ(look->lost.payments, 1);
    EXPECT_EQ(look->lost.orders, 0);
    EXPECT_EQ(look->lost.garmentsPressed, 0);
    ASSERT_EQ(look->lost.newest.size(), 1U);
    EXPECT_EQ(look->lost.newest.front(), "Payment £1.00, cash");
}

} // namespace
} // namespace holdfast::db
