// SPDX-License-Identifier: GPL-3.0-or-later
// A program that is killed at any moment loses nothing it has acknowledged and leaves a whole file.
#include "db/check/check.h"
#include "tests/db/journal_fixture.h"

#include <csignal>
#include <random>
#include <set>
#include <sys/wait.h>
#include <thread>

namespace holdfast::db {
namespace {

using namespace testing;

// Receives, uses and takes back until it is killed, writing each acknowledged entry's id into the pipe.
[[noreturn]] void actForEver(const std::filesystem::path& path, int pipe) {
    auto opened = Shop::open(path, standingClock(), smallSteps());
    if (!opened)
        _exit(2);
    Shop& shop = **opened;
    const auto acknowledge = [&](EntryId entry) {
        if (::write(pipe, &entry.value, sizeof entry.value) != sizeof entry.value)
            _exit(3);
    };
    for (int turn = 0;; ++turn) {
        const auto lot =
            receiveLot(shop,
                       "lot " + std::to_string(shop.now().time_since_epoch().count()) + "-" +
                           std::to_string(getpid()) + "-" + std::to_string(turn) + std::string(3000, 'x'),
                       10);
        if (!lot)
            _exit(4);
        acknowledge(lastEntry(shop));
        if (!moveUnits(shop, *lot, -3, "Used 3"))
            _exit(5);
        acknowledge(lastEntry(shop));
        if (turn % 3 == 0) {
            const auto back = shop.undo(lastEntry(shop));
            if (!back)
                _exit(6);
            acknowledge(*back);
        }
    }
}

TEST(Crash, KilledFiftyTimesNothingAcknowledgedIsLost) {
    const TemporaryFolder folder;
    const auto path = folder / "shop.holdfast";
    aShopIn(path).reset();
    std::mt19937 random{20261125};
    std::uniform_int_distribution<int> microseconds{0, 50'000};
    std::set<std::int64_t> acknowledged;
    for (int kill = 0; kill < 50; ++kill) {
        int ends[2] = {-1, -1};
        ASSERT_EQ(pipe(ends), 0);
        const pid_t child = fork();
        ASSERT_GE(child, 0);
        if (child == 0)
            actForEver(path, ends[1]);
        close(ends[1]);
        // From its first action on, so that on a slow disk too there is something to lose.
        std::int64_t entry = 0;
        ASSERT_EQ(::read(ends[0], &entry, sizeof entry), static_cast<ssize_t>(sizeof entry));
        ASSERT_TRUE(acknowledged.insert(entry).second);
        std::this_thread::sleep_for(std::chrono::microseconds{microseconds(random)});
        ASSERT_EQ(::kill(child, SIGKILL), 0);
        int status = 0;
        ASSERT_EQ(waitpid(child, &status, 0), child);
        ASSERT_TRUE(WIFSIGNALED(status)) << "it ended by itself with " << WEXITSTATUS(status);
        while (::read(ends[0], &entry, sizeof entry) == sizeof entry)
            ASSERT_TRUE(acknowledged.insert(entry).second) << "an id came twice";
        close(ends[0]);

        auto shop = Shop::open(path, standingClock(), smallSteps());
        ASSERT_TRUE(shop) << wordsOf(shop);
        std::set<std::int64_t> kept;
        Query rows = (*shop)->connection().query("SELECT id FROM journal_entry");
        while (rows.step())
            kept.insert(rows.integer(0));
        ASSERT_TRUE(std::ranges::includes(kept, acknowledged));
        ASSERT_LE(kept.size(), acknowledged.size() + static_cast<std::size_t>(kill) + 1);
        // Whole: what the journal tells is what the tables hold. The one entry committed but not yet
        // acknowledged counts as well.
        ASSERT_EQ(
            (*shop)->connection().number("SELECT COUNT(*) FROM lot"),
            (*shop)->connection().number("SELECT COUNT(*) FROM journal_entry WHERE title LIKE 'Received%'"));
        ASSERT_EQ((*shop)->connection().number("SELECT COUNT(*) FROM move WHERE units = -3"),
                  (*shop)->connection().number(
                      "SELECT COUNT(*) FROM journal_entry WHERE title = 'Used 3' AND undone_by IS NULL"));
        if (kill % 10 == 9) {
            const auto checked = checkShop(**shop);
            ASSERT_TRUE(checked);
            ASSERT_EQ(*checked, std::vector<Sentence>{});
        }
    }
    EXPECT_GE(acknowledged.size(), 50U);
}

} // namespace
} // namespace holdfast::db
