// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/db/journal_fixture.h"
#include "tests/db/other_program.h"

#include <csignal>

namespace holdfast::db {
namespace {

using namespace testing;

TEST(ShopFileLock, TheSameProgramCannotOpenItTwiceForWriting) {
    const TemporaryFolder folder;
    const auto path = folder / "shop.holdfast";
    auto first = aShopIn(path);
    ASSERT_TRUE(receiveLot(*first, "tees", 1));
    const auto second = Shop::open(path, standingClock(), smallSteps());
    EXPECT_EQ(wordsOf(second),
              "This shop is open in another window of Holdfast. Go on there, or close it first.");
    EXPECT_TRUE(receiveLot(*first, "caps", 1)) << "the first is not disturbed";
    first.reset();
    EXPECT_TRUE(Shop::open(path, standingClock(), smallSteps()));
    EXPECT_EQ(folder.names(), (std::vector<std::string>{"shop.holdfast"}));
}

TEST(ShopFileLock, TwoProgramsOneWritesAndOneReads) {
    const TemporaryFolder folder;
    const auto path = folder / "shop.holdfast";
    auto shop = aShopIn(path);
    ASSERT_TRUE(receiveLot(*shop, "tees", 1));
    const auto words = saidByOtherProgram([&] {
        const auto writing = wordsOf(Shop::open(path, standingClock(), smallSteps()));
        auto reader = Shop::openReadOnly(path, standingClock(), smallSteps());
        return writing + "|" + (reader ? std::to_string(rowsOf(**reader, "lot")) : wordsOf(reader));
    });
    EXPECT_NE(words.find("open in another window"), std::string::npos) << words;
    EXPECT_TRUE(words.ends_with("|1")) << words;
    EXPECT_TRUE(receiveLot(*shop, "caps", 1));
}

TEST(ShopFileLock, OfAProgramThatWasKilledIsFree) {
    const TemporaryFolder folder;
    const auto path = folder / "shop.holdfast";
    aShopIn(path).reset();
    const pid_t child = fork();
    ASSERT_GE(child, 0);
    if (child == 0) {
        auto shop = Shop::open(path, standingClock(), smallSteps());
        (void)receiveLot(**shop, "tees", 1);
        raise(SIGKILL);
    }
    int status = 0;
    ASSERT_EQ(waitpid(child, &status, 0), child);
    ASSERT_TRUE(WIFSIGNALED(status));
    EXPECT_TRUE(std::filesystem::exists(path.string() + ".lock")) << "the killed one left it";
    auto shop = Shop::open(path, standingClock(), smallSteps());
    ASSERT_TRUE(shop) << wordsOf(shop);
    EXPECT_EQ(rowsOf(**shop, "lot"), 1);
}

TEST(ShopFileLock, IsLeftAloneByOneThatWasRefused) {
    const TemporaryFolder folder;
    const auto path = folder / "shop.holdfast";
    auto first = aShopIn(path);
    for (int attempt = 0; attempt < 3; ++attempt)
        EXPECT_FALSE(Shop::open(path, standingClock(), smallSteps()));
    EXPECT_TRUE(std::filesystem::exists(path.string() + ".lock"));
}

TEST(ShopFileLock, CreatingIsRefusedWhileAnotherCreatesTheSame) {
    const TemporaryFolder folder;
    const auto path = std::filesystem::canonical(folder.path()) / "shop.holdfast";
    auto held = ShopLock::take(path);
    ASSERT_TRUE(held);
    EXPECT_FALSE(Shop::create(path, standingClock(), smallSteps()));
    EXPECT_FALSE(std::filesystem::exists(path));
}

} // namespace
} // namespace holdfast::db
