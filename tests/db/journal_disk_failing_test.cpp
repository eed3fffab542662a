// SPDX-License-Identifier: GPL-3.0-or-later
// A disk that fails at any one call: what was acknowledged is there, what was refused is wholly absent, also
// for a program that is killed right after it said so.
#include "db/check/check.h"
#include "db/disk/new_file.h"
#include "db/journal/backup.h"
#include "tests/db/failing_disk.h"
#include "tests/db/journal_fixture.h"
#include "tests/db/other_program.h"

#include <sqlite3.h>

#include <cerrno>

namespace holdfast::db {
namespace {

using namespace testing;

struct Failing : ::testing::Test {
    TemporaryFolder folder;
    std::filesystem::path path = folder / "shop.holdfast";

    void SetUp() override {
        auto shop = aShopIn(path);
        ASSERT_TRUE(receiveLot(*shop, "tees", 10));
    }

    static Result<Done> receiveLong(Shop& shop, const std::string& name) {
        const auto lot = receiveLot(shop, name + std::string(9000, 'x'), 1);
        return lot ? Result<Done>{Done{}} : lot.error();
    }

    std::int64_t lotsOnDisk(const std::string& name) {
        auto shop = Shop::open(path, standingClock(), smallSteps());
        EXPECT_TRUE(shop) << wordsOf(shop);
        EXPECT_EQ(*checkShop(**shop), std::vector<Sentence>{});
        return (*shop)->connection().number("SELECT COUNT(*) FROM lot WHERE name LIKE ?1 || '%'", name);
    }
};

// What a program says that is gone right after it: kept, refused, or that it cannot be told yet.
std::string acted(const std::filesystem::path& path, const DiskFailure& failure) {
    return saidByOtherProgram([&]() -> std::string {
        auto shop = Shop::open(path, standingClock(), smallSteps());
        if (!shop)
            return "not opened";
        sqlite3_busy_timeout((*shop)->connection().handle(), 0); // SQLite waits for a lock that fails
        const FailingDisk disk{failure};
        const auto outcome = Failing::receiveLong(**shop, "caps");
        if (!FailingDisk::hasFailed())
            return "nothing failed";
        return outcome ? "kept" : outcome.error().message.english();
    });
}

TEST_F(Failing, WhatIsSaidIsSoAfterTheProgramIsGone) {
    // Opening is left out where it fails for ever, and locks where they are tried once more: SQLite takes
    // what fails there for somebody else's work, and waits ten seconds for it.
    const std::vector<DiskCall> forEver{DiskCall::Read, DiskCall::Write, DiskCall::Sync, DiskCall::Truncate,
                                        DiskCall::Unlink};
    std::vector<DiskCall> once = forEver;
    once.insert(once.end(), {DiskCall::Open, DiskCall::Lock});
    int failures = 0, unsure = 0;
    for (const int error : {EIO, ENOSPC}) {
        for (const bool isForEver : {false, true}) {
            for (const bool tears : {false, true}) {
                for (long at = 1;; ++at) {
                    std::filesystem::copy_file(path, folder / "before.holdfast");
                    const std::string said =
                        acted(path, {isForEver ? forEver : once, at, error, isForEver, tears});
                    const auto kept = lotsOnDisk("caps");
                    const std::string where = std::to_string(at) + ", " + std::to_string(error) + ": " + said;
                    if (said.find("can be seen only when the shop is opened again") != std::string::npos)
                        ++unsure;
                    else
                        EXPECT_EQ(kept, said == "kept" || said == "nothing failed" ? 1 : 0) << where;
                    std::filesystem::rename(folder / "before.holdfast", path);
                    if (said == "nothing failed")
                        break;
                    ++failures;
                }
                if (!once.empty() && once.back() == DiskCall::Lock)
                    once.pop_back();
            }
        }
    }
    EXPECT_GT(failures, 60);
    EXPECT_GT(unsure, 0) << "a disk that is gone for good at the commit";
}

// Once: the next commit went over it, and it is known.
TEST_F(Failing, ACommitWhoseOwnSyncFailsOnceIsNotThere) {
    const std::string said = acted(path, {{DiskCall::Sync}, 1, EIO, false, false});
    EXPECT_NE(said.find("Nothing was changed"), std::string::npos) << said;
    EXPECT_EQ(lotsOnDisk("caps"), 0);
}

TEST_F(Failing, TheProgramGoesOnAfterwards) {
    auto shop = Shop::open(path, standingClock(), smallSteps());
    ASSERT_TRUE(shop);
    for (long at = 1; at < 200; ++at) {
        const std::string name = "caps " + std::to_string(at) + " ";
        bool wasKept = false;
        {
            const FailingDisk disk{
                {{DiskCall::Read, DiskCall::Write, DiskCall::Sync, DiskCall::Truncate}, at, EIO}};
            wasKept = receiveLong(**shop, name).ok();
            if (!FailingDisk::hasFailed())
                break;
        }
        EXPECT_EQ((*shop)->connection().number("SELECT COUNT(*) FROM lot WHERE name LIKE ?1 || '%'", name),
                  wasKept)
            << at;
        ASSERT_TRUE(receiveLot(**shop, "vests " + std::to_string(at), 1)) << at;
    }
    EXPECT_EQ(*checkShop(**shop), std::vector<Sentence>{});
}

TEST_F(Failing, ABackupIsWholeOrIsNotThere) {
    auto shop = Shop::open(path, standingClock(), smallSteps());
    ASSERT_TRUE(shop);
    const auto copy = folder / "copy.holdfast";
    const std::vector<DiskCall> all{DiskCall::Read, DiskCall::Write,  DiskCall::Sync, DiskCall::Truncate,
                                    DiskCall::Lock, DiskCall::Unlink, DiskCall::Open, DiskCall::Rename};
    for (const int error : {EIO, ENOSPC}) {
        for (long at = 1;; ++at) {
            bool isDone = false;
            bool hasFailed = false;
            {
                const FailingDisk disk{{all, at, error}};
                isDone = backup(**shop, copy).ok();
                hasFailed = FailingDisk::hasFailed();
            }
            EXPECT_EQ(std::filesystem::exists(copy), isDone) << at;
            if (isDone) {
                auto copied = Shop::open(copy, standingClock(), smallSteps());
                ASSERT_TRUE(copied) << wordsOf(copied);
                EXPECT_EQ(rowsOf(**copied, "lot"), 1);
                copied->reset();
                std::filesystem::remove(copy);
            }
            removeLeftOver(folder.path());
            for (const std::string& name : folder.names())
                EXPECT_EQ(name.find("holdfast-new"), std::string::npos) << name << ", " << at;
            if (!hasFailed)
                break;
        }
    }
}

} // namespace
} // namespace holdfast::db
