// SPDX-License-Identifier: GPL-3.0-or-later
// What is refused at opening, in which words, and that its bytes stay.
#include "tests/db/journal_fixture.h"
#include "tests/db/other_program.h"

#include <sqlite3.h>
#include <sys/stat.h>

namespace holdfast::db {
namespace {

using namespace testing;

struct ShopFileOpening : ::testing::Test {
    TemporaryFolder folder;
    std::filesystem::path path = folder / "shop.holdfast";

    // The words of a refusal to open for writing and for reading; the file and its neighbours stay as they
    // are.
    void expectRefused(const std::string& part) {
        const auto bytes = bytesOf(path);
        const auto names = folder.names();
        const auto writing = Shop::open(path, standingClock(), smallSteps());
        EXPECT_FALSE(writing);
        EXPECT_NE(wordsOf(writing).find(part), std::string::npos) << wordsOf(writing);
        EXPECT_EQ(folder.names(), names) << "something was left beside it";
        EXPECT_EQ(bytesOf(path), bytes);
        const auto reading = Shop::openReadOnly(path, standingClock(), smallSteps());
        EXPECT_FALSE(reading);
        EXPECT_NE(wordsOf(reading).find(part), std::string::npos) << wordsOf(reading);
        EXPECT_EQ(bytesOf(path), bytes);
        // Reading beside a log needs SQLite's notes, which only a writer may clear away.
        EXPECT_EQ(bytesOf(path.string() + "-wal"), "");
        std::filesystem::remove(path.string() + "-wal");
        std::filesystem::remove(path.string() + "-shm");
    }

    // A shop with some hundred pages.
    void aFilledShop() {
        auto shop = aShopIn(path);
        ASSERT_TRUE(shop->act([](Writer& writer) -> Result<Done> {
            for (int each = 0; each < 60; ++each)
                writer.connection().run("INSERT INTO lot (id, name) VALUES (?1, ?2)",
                                        writer.newId<BlankLotId>(),
                                        std::to_string(each) + std::string(2000, 'x'));
            writer.describe(said("Received 60 lots"));
            return Done{};
        }));
    }

    sqlite3* raw() {
        sqlite3* handle = nullptr;
        EXPECT_EQ(sqlite3_open(path.c_str(), &handle), SQLITE_OK);
        return handle;
    }
    void withRaw(const char* sql) {
        sqlite3* handle = raw();
        EXPECT_EQ(sqlite3_exec(handle, sql, nullptr, nullptr, nullptr), SQLITE_OK) << sqlite3_errmsg(handle);
        sqlite3_close(handle);
    }
};

TEST_F(ShopFileOpening, ACreatedShopOpensAgainWithWhatWasWritten) {
    {
        auto shop = aShopIn(path);
        ASSERT_TRUE(receiveLot(*shop, "tees", 10));
        EXPECT_EQ(shop->path(), std::filesystem::canonical(path));
    }
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"shop.holdfast"})) << "closed, it is one file";
    auto shop = Shop::open(path, standingClock(), smallSteps());
    ASSERT_TRUE(shop) << wordsOf(shop);
    EXPECT_EQ(rowsOf(**shop, "lot"), 1);
    EXPECT_EQ((*shop)->recent(10).size(), 1U);
}

TEST_F(ShopFileOpening, TheFileSaysWhatItIsAndIsSafe) {
    auto shop = aShopIn(path);
    auto& connection = shop->connection();
    EXPECT_EQ(connection.number("PRAGMA application_id"), 0x486F6C64);
    EXPECT_EQ(bytesOf(path).substr(68, 4), "Hold");
    EXPECT_EQ(connection.number("PRAGMA user_version"), 2);
    EXPECT_EQ(connection.number("PRAGMA synchronous"), 2) << "FULL";
    EXPECT_EQ(connection.number("PRAGMA foreign_keys"), 1);
    EXPECT_EQ(bytesOf(path)[18], 2) << "write-ahead log";
}

TEST_F(ShopFileOpening, OnlyTheOwnerMayReadItWhateverTheUmask) {
    for (const mode_t mask : {0000, 0022, 0777}) {
        const auto before = umask(mask);
        const auto name = folder / ("shop" + std::to_string(mask));
        {
            auto shop = aShopIn(name);
            EXPECT_TRUE(receiveLot(*shop, "tees", 10));
            for (const char* part : {"", "-wal", "-shm"}) {
                struct stat found{};
                ASSERT_EQ(stat((name.string() + part).c_str(), &found), 0) << part;
                EXPECT_EQ(found.st_mode & 07777, 0600U) << part << " under umask " << mask;
            }
        }
        umask(before);
    }
}

TEST_F(ShopFileOpening, AShopThatEverybodyCouldReadIsTheOwnersOnceItIsOpened) {
    aFilledShop();
    ASSERT_EQ(chmod(path.c_str(), 0644), 0);
    ASSERT_TRUE(Shop::openReadOnly(path, standingClock(), smallSteps()));
    struct stat found{};
    ASSERT_EQ(stat(path.c_str(), &found), 0);
    EXPECT_EQ(found.st_mode & 0777, 0644U) << "reading changes nothing";
    ASSERT_TRUE(Shop::open(path, standingClock(), smallSteps()));
    ASSERT_EQ(stat(path.c_str(), &found), 0);
    EXPECT_EQ(found.st_mode & 0777, 0600U);
}

TEST_F(ShopFileOpening, AFileThatIsNotThereIsRefusedAndNotMade) {
    EXPECT_EQ(wordsOf(Shop::open(path, standingClock(), smallSteps())),
              "There is no file " + path.string() + ".");
    EXPECT_EQ(wordsOf(Shop::openReadOnly(path, standingClock(), smallSteps())),
              "There is no file " + path.string() + ".");
    EXPECT_TRUE(folder.names().empty());
}

TEST_F(ShopFileOpening, AFolderIsRefused) {
    std::filesystem::create_directory(path);
    expectRefused("is a folder");
}

TEST_F(ShopFileOpening, AnEmptyFileIsRefused) {
    writeBytes(path, "");
    expectRefused("is empty");
}

TEST_F(ShopFileOpening, ATextIsRefused) {
    writeBytes(path, "Dear diary");
    expectRefused("is not a shop file");
    writeBytes(path, std::string(100'000, 'x'));
    expectRefused("is not a shop file");
}

TEST_F(ShopFileOpening, AnotherProgramsDatabaseIsRefused) {
    withRaw("PRAGMA journal_mode = DELETE; CREATE TABLE t (id); INSERT INTO t VALUES (1)");
    expectRefused("is not a shop file");
    withRaw("PRAGMA application_id = 77");
    expectRefused("is not a shop file");
}

TEST_F(ShopFileOpening, AnotherProgramsDatabaseUnderOurNameIsRefused) {
    withRaw("PRAGMA journal_mode = DELETE; CREATE TABLE t (id); PRAGMA application_id = 1215261796; PRAGMA "
            "user_version = 1");
    expectRefused("is damaged");
}

// Killed in the midst of the first opening, when the file is not yet kept with a log.
TEST_F(ShopFileOpening, HalfWrittenWorkOfAKilledProgramIsTakenBackForAReaderToo) {
    aFilledShop();
    withRaw("PRAGMA journal_mode = DELETE");
    const auto said = saidByOtherProgram([&] {
        sqlite3* handle = raw();
        // So small a cache that the changed pages are in the file before the end.
        sqlite3_exec(handle, "PRAGMA cache_size = 1; BEGIN; UPDATE lot SET name = name || 'y'", nullptr,
                     nullptr, nullptr);
        return std::string{"changed"};
    });
    ASSERT_EQ(said, "changed");
    ASSERT_FALSE(bytesOf(path.string() + "-journal").empty());
    const auto shop = Shop::openReadOnly(path, standingClock(), smallSteps());
    ASSERT_TRUE(shop) << wordsOf(shop);
    EXPECT_EQ((*shop)->connection().number("SELECT COUNT(*) FROM lot WHERE name LIKE '%y'"), 0);
}

TEST_F(ShopFileOpening, WhatAKilledProgramLeftBesideItIsRemoved) {
    aFilledShop();
    writeBytes(folder / "shop-copy.holdfast.holdfast-new-99999", "half");
    writeBytes(folder / "shop-copy.holdfast.holdfast-new-99999-journal", "half");
    writeBytes(folder / "mine.holdfast-new-draft", "not ours");
    ASSERT_TRUE(Shop::open(path, standingClock(), smallSteps()));
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"mine.holdfast-new-draft", "shop.holdfast"}));
}

TEST_F(ShopFileOpening, ALockThatIsNoFileOfOursIsNamed) {
    aFilledShop();
    std::filesystem::create_symlink("/nowhere", path.string() + ".lock");
    EXPECT_EQ(wordsOf(Shop::open(path, standingClock(), smallSteps())),
              path.string() + ".lock is not a file of Holdfast’s. Move it away: Holdfast locks the shop with "
                              "a file of that name.");
    std::filesystem::remove(path.string() + ".lock");
    std::filesystem::create_directory(path.string() + ".lock");
    EXPECT_NE(wordsOf(Shop::open(path, standingClock(), smallSteps())).find("is not a file of Holdfast’s"),
              std::string::npos);
}

TEST_F(ShopFileOpening, ANewerVersionIsRefused) {
    aFilledShop();
    withRaw("PRAGMA user_version = 3");
    expectRefused("newer version");
}

TEST_F(ShopFileOpening, ANewerVersionThatStandsOnlyInTheLogIsRefusedAndTheLogKept) {
    aFilledShop();
    // A newer program that was killed: the version stands in the log, not yet in the file.
    const auto said = saidByOtherProgram([&] {
        sqlite3* handle = raw();
        sqlite3_exec(handle, "PRAGMA user_version = 3", nullptr, nullptr, nullptr);
        return std::string{"set"};
    });
    ASSERT_EQ(said, "set");
    const auto log = bytesOf(path.string() + "-wal");
    ASSERT_FALSE(log.empty());
    const auto bytes = bytesOf(path);
    const auto refused = Shop::open(path, standingClock(), smallSteps());
    EXPECT_NE(wordsOf(refused).find("newer version"), std::string::npos) << wordsOf(refused);
    EXPECT_EQ(bytesOf(path), bytes);
    EXPECT_EQ(bytesOf(path.string() + "-wal"), log);
}

TEST_F(ShopFileOpening, ATruncatedFileIsRefused) {
    aFilledShop();
    const auto whole = bytesOf(path);
    ASSERT_GT(whole.size(), 100'000U);
    for (const std::size_t length :
         {whole.size() - 4096, whole.size() / 2, std::size_t{4096}, std::size_t{700}}) {
        writeBytes(path, whole.substr(0, length));
        expectRefused("damaged");
    }
    writeBytes(path, whole.substr(0, 60));
    expectRefused("damaged");
}

TEST_F(ShopFileOpening, AGarbagePageIsRefused) {
    aFilledShop();
    const auto whole = bytesOf(path);
    for (std::size_t page = 1; page < whole.size() / 4096; page += 30) {
        auto damaged = whole;
        for (std::size_t byte = 0; byte < 4096; ++byte)
            damaged[page * 4096 + byte] = static_cast<char>(byte * 31 + page);
        writeBytes(path, damaged);
        expectRefused("damaged");
    }
}

TEST_F(ShopFileOpening, ADamagedPageInALargeFileComesBackInWordsOnReading) {
    {
        auto shop = aShopIn(path);
        ASSERT_TRUE(shop->act([](Writer& writer) -> Result<Done> {
            for (int each = 1; each <= 5000; ++each)
                writer.connection().run("INSERT INTO lot (id, name) VALUES (?1, ?2)", each,
                                        std::to_string(each) + std::string(1200, 'y'));
            writer.describe(said("Received a great deal"));
            return Done{};
        }));
    }
    auto bytes = bytesOf(path);
    ASSERT_GT(bytes.size(), 8U << 20) << "small enough to be checked at opening";
    // Only leaves: those of the table stand in the first half of the file, the journal's in the second.
    for (std::size_t page = 100; page < 600; ++page)
        bytes.replace(page * 4096, 4096, std::string(4096, '\x5a'));
    writeBytes(path, bytes);
    auto shop = Shop::open(path, standingClock(), smallSteps());
    ASSERT_TRUE(shop) << wordsOf(shop);
    const auto read = (*shop)->read(
        [](Connection& connection) { return connection.number("SELECT SUM(length(name)) FROM lot"); });
    ASSERT_FALSE(read);
    EXPECT_NE(read.error().message.english().find("damaged"), std::string::npos)
        << read.error().message.english();
}

TEST_F(ShopFileOpening, AShopWithoutItsSeatIsRefused) {
    aFilledShop();
    withRaw("DELETE FROM seat_here");
    expectRefused("damaged");
}

TEST_F(ShopFileOpening, OfWhatMayNotBeReadIsRefused) {
    aFilledShop();
    std::filesystem::permissions(path, std::filesystem::perms::none);
    const auto words = saidByNobody(folder.path(), 0777,
                                    [&] { return wordsOf(Shop::open(path, standingClock(), smallSteps())); });
    EXPECT_NE(words.find("You may not read"), std::string::npos) << words;
}

TEST_F(ShopFileOpening, OfAReadOnlyFileIsRefusedButItCanBeRead) {
    aFilledShop();
    const auto bytes = bytesOf(path);
    std::filesystem::permissions(path, static_cast<std::filesystem::perms>(0444));
    const auto words = saidByNobody(folder.path(), 0777, [&] {
        return wordsOf(Shop::open(path, standingClock(), smallSteps())) + "|" +
               wordsOf(Shop::openReadOnly(path, standingClock(), smallSteps()));
    });
    EXPECT_NE(words.find("is read-only"), std::string::npos) << words;
    EXPECT_TRUE(words.ends_with("|done")) << words;
    EXPECT_EQ(bytesOf(path), bytes);
}

TEST_F(ShopFileOpening, OfAFileInAReadOnlyFolderIsRefusedButItCanBeRead) {
    aFilledShop();
    std::filesystem::permissions(path, static_cast<std::filesystem::perms>(0666));
    const auto names = folder.names();
    const auto words = saidByNobody(folder.path(), 0555, [&] {
        std::string said = wordsOf(Shop::open(path, standingClock(), smallSteps())) + "|" +
                           wordsOf(Shop::create(folder / "new", standingClock(), smallSteps())) + "|";
        auto reading = Shop::openReadOnly(path, standingClock(), smallSteps());
        return said + (reading ? std::to_string(rowsOf(**reading, "lot")) : wordsOf(reading));
    });
    EXPECT_NE(words.find("The folder " + folder.path().string() + " is read-only"), std::string::npos)
        << words;
    EXPECT_NE(words.find("cannot be written to"), std::string::npos) << words;
    EXPECT_TRUE(words.ends_with("|60")) << words;
    EXPECT_EQ(folder.names(), names);
}

TEST_F(ShopFileOpening, CreatingRefusesANameThatIsTaken) {
    aFilledShop();
    const auto bytes = bytesOf(path);
    const auto taken = Shop::create(path, standingClock(), smallSteps());
    EXPECT_NE(wordsOf(taken).find("already"), std::string::npos) << wordsOf(taken);
    EXPECT_EQ(bytesOf(path), bytes);
    std::filesystem::create_symlink("nowhere", folder / "link");
    EXPECT_FALSE(Shop::create(folder / "link", standingClock(), smallSteps()));
    EXPECT_FALSE(Shop::create(folder.path(), standingClock(), smallSteps()));
    EXPECT_EQ(wordsOf(Shop::create(folder / "none/shop", standingClock(), smallSteps())),
              "There is no folder " + (folder / "none").string() + ".");
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"link", "shop.holdfast"}));
}

TEST_F(ShopFileOpening, ThroughALinkItIsTheSameShop) {
    auto shop = aShopIn(path);
    std::filesystem::create_symlink(path, folder / "link");
    const auto second = Shop::open(folder / "link", standingClock(), smallSteps());
    EXPECT_NE(wordsOf(second).find("open in another window"), std::string::npos) << wordsOf(second);
}

} // namespace
} // namespace holdfast::db
