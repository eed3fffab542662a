// SPDX-License-Identifier: GPL-3.0-or-later
// A program that is killed, or whose computer loses its power, at any moment of whatever it does with a shop.
// What it acknowledged is there, at most the one thing under way as well, the shop is whole, and nothing of
// ours is left lying about after the next start. A hundred of each here;
// tests/long/run.sh kills and power_loss try a thousand and more.
#include "tests/db/disk_scenes.h"
#include "tests/db/failing_disk.h"
#include "tests/db/power_loss.h"

#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>
#include <map>
#include <random>
#include <set>
#include <thread>

namespace holdfast::db {
namespace {

using namespace testing;

unsigned wished(const char* name, unsigned usually) {
    const char* number = std::getenv(name);
    return number == nullptr ? usually : static_cast<unsigned>(std::strtoul(number, nullptr, 10));
}

class BrokenOff : public DiskScenes {
protected:
    struct Expected {
        FolderSeen before, after;
        std::chrono::microseconds takes{0};
        long calls = 0; // to the disk that change it
    };
    struct Counts {
        int acknowledged = 0, before = 0, after = 0;
    };

    // The words of the program so far are in this file, beside the folder.
    static std::filesystem::path saidIn(const std::filesystem::path& folder) {
        return folder.string() + ".said";
    }
    static void say(const std::filesystem::path& folder, const std::string& words) {
        std::ofstream{saidIn(folder), std::ios::app} << words << "\n";
    }
    static std::vector<std::string> saidOf(const std::filesystem::path& folder) {
        std::ifstream in{saidIn(folder)};
        std::vector<std::string> lines;
        for (std::string line; std::getline(in, line);)
            lines.push_back(line);
        return lines;
    }
    static void clear(const std::filesystem::path& folder) {
        std::filesystem::remove_all(folder);
        std::filesystem::remove(saidIn(folder));
    }

    const Expected& expectedOf(const DiskScene& scene) {
        const auto known = m_expected.find(scene.name);
        if (known != m_expected.end())
            return known->second;
        Expected expected{seenBefore(scene), seenAfter(scene), {}, 0};
        const auto folder = staged(scene);
        const std::string figures = played(scene, folder, [&](const auto& act) {
            const PowerLoss counting{folder, folder, -1, 1};
            const auto begun = std::chrono::steady_clock::now();
            (void)act();
            const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - begun;
            return std::to_string(counting.counted()) + " " + std::to_string(took.count());
        });
        expected.calls = std::stol(figures);
        expected.takes = std::chrono::microseconds{std::stol(figures.substr(figures.find(' ')))};
        clear(folder);
        return m_expected.emplace(scene.name, std::move(expected)).first->second;
    }

    // The tables of an export get their names one after the other; each that has one is whole.
    static bool isPartOfExport(const DiskScene& scene, const FolderSeen& found, const Expected& expected) {
        return scene.name == "export" && std::ranges::includes(found.names, expected.before.names) &&
               std::ranges::includes(expected.after.names, found.names);
    }

    void judge(const DiskScene& scene, const FolderSeen& found, const Expected& expected,
               bool isAcknowledged) {
        m_counts.acknowledged += isAcknowledged;
        const bool isBefore = changedIn(scene, found, expected.before).empty();
        const bool isAfter = found.doneOtherwiseThan(expected.after).empty();
        m_counts.before += isBefore && !isAcknowledged;
        m_counts.after += !isBefore;
        if (isAcknowledged) {
            EXPECT_EQ(found.doneOtherwiseThan(expected.after), "") << "what was acknowledged is there";
            EXPECT_EQ(found.names, expected.after.names);
        } else {
            EXPECT_TRUE(isBefore || isAfter) << "neither as before nor done";
            EXPECT_TRUE(found.names == expected.before.names || found.names == expected.after.names ||
                        isPartOfExport(scene, found, expected))
                << "left lying about: " << ::testing::PrintToString(found.names);
        }
        EXPECT_TRUE(found.wrong == expected.before.wrong || found.wrong == expected.after.wrong)
            << ::testing::PrintToString(found.wrong);
    }

    // ── a day of many things ──────────────────────────────────────────────────────────────────────────

    static std::int64_t lastEntryOf(Shop& shop) { return shop.recent(1).front().id.value; }

    // Whatever chance says, one after another; each entry is said once it is acknowledged.
    void day(const std::filesystem::path& folder, unsigned seed, int things) {
        std::mt19937 chance{seed};
        const auto shop = opened(folder / kShop);
        if (chance() % 2 == 0)
            shop->connection().script("PRAGMA wal_autocheckpoint = 40"); // so that the log is merged often
        const auto doings = everyAction();
        for (int count = 0; count < things; ++count) {
            wait(Seconds{40});
            const std::int64_t before = lastEntryOf(*shop);
            const auto last = shop->lastUndoable();
            const bool isDone = chance() % 5 == 0 && last ? shop->undo(last->id).ok()
                                                          : doings[chance() % doings.size()].act(*shop).ok();
            if (const std::int64_t entry = lastEntryOf(*shop); isDone && entry != before)
                say(folder, std::to_string(entry));
        }
    }

    void judgeDay(const std::filesystem::path& folder, const std::vector<std::string>& said,
                  std::int64_t entriesBefore) {
        auto shop = opened(folder / kShop);
        std::set<std::string> kept;
        Query rows = shop->connection().query("SELECT id FROM journal_entry");
        while (rows.step())
            kept.insert(rows.text(0));
        for (const std::string& entry : said)
            EXPECT_TRUE(kept.contains(entry)) << entry << " was acknowledged";
        EXPECT_LE(kept.size(), static_cast<std::size_t>(entriesBefore) + said.size() + 1);
        const auto found = checkShop(*shop);
        ASSERT_TRUE(found.ok());
        EXPECT_EQ(*found, std::vector<Sentence>{});
        m_counts.acknowledged += static_cast<int>(said.size());
    }

    std::int64_t entriesBefore() { return number("SELECT COUNT(*) FROM journal_entry"); }

    std::mt19937 m_random{20261130};
    Counts m_counts;

private:
    std::map<std::string, Expected> m_expected;
};

// ── killed ────────────────────────────────────────────────────────────────────────────────────────────

class Kills : public BrokenOff {
protected:
    // Kills the program that does `work` so long after it began it.
    static void killed(const std::function<void()>& begin, const std::function<void()>& work,
                       std::chrono::microseconds after) {
        int ends[2] = {-1, -1};
        ASSERT_EQ(pipe(ends), 0);
        const pid_t child = fork();
        ASSERT_GE(child, 0);
        if (child == 0) {
            begin();
            (void)!::write(ends[1], "b", 1);
            work();
            for (;;)
                pause();
        }
        close(ends[1]);
        char begun = 0;
        EXPECT_EQ(::read(ends[0], &begun, 1), 1) << "it ended before it began";
        std::this_thread::sleep_for(after);
        EXPECT_EQ(::kill(child, SIGKILL), 0);
        int status = 0;
        EXPECT_EQ(waitpid(child, &status, 0), child);
        EXPECT_TRUE(WIFSIGNALED(status)) << "it ended by itself";
        close(ends[0]);
    }
};

TEST_F(Kills, AtAnyMomentOfAnyThing) {
    const unsigned kills = wished("HOLDFAST_KILLS", 50);
    const auto scenes = everyScene();
    for (unsigned count = 0; count < kills; ++count) {
        // What makes files is killed as often as all actions together.
        const std::size_t actions = actionScenes().size();
        const std::size_t which =
            count % 2 == 0 ? m_random() % actions : actions + m_random() % (scenes.size() - actions);
        const DiskScene& scene = scenes[which];
        const Expected& expected = expectedOf(scene);
        const auto folder = staged(scene);
        const std::chrono::microseconds after{m_random() %
                                              static_cast<unsigned>(expected.takes.count() + 100)};
        SCOPED_TRACE(scene.name + ", killed after " + std::to_string(after.count()) + " microseconds");
        std::unique_ptr<Shop> shop;
        killed(
            [&] {
                if (!scene.opensItself)
                    shop = opened(folder / kShop);
            },
            [&] { say(folder, actedIn(scene, shop.get(), folder)); }, after);
        const bool isAcknowledged = saidOf(folder) == std::vector<std::string>{"kept"};
        judge(scene, seen(folder), expected, isAcknowledged);
        clear(folder);
    }
    std::cout << kills << " kills: " << m_counts.acknowledged << " after it was acknowledged, "
              << m_counts.before << " found as before, " << m_counts.after << " found done\n";
}

TEST_F(Kills, InTheMidstOfADay) {
    const unsigned kills = wished("HOLDFAST_KILLS", 50);
    const DiskScene scene = actionScenes().front();
    std::int64_t entries = entriesBefore();
    for (unsigned count = 0; count < kills; ++count) {
        const auto folder = staged(scene);
        const std::chrono::microseconds after{m_random() % 120'000};
        SCOPED_TRACE("day " + std::to_string(count) + ", killed after " + std::to_string(after.count()));
        killed([] {}, [&] { day(folder, count, 60); }, after);
        judgeDay(folder, saidOf(folder), entries);
        clear(folder);
    }
    std::cout << kills << " kills, " << m_counts.acknowledged << " acknowledged actions\n";
}

// ── without power ─────────────────────────────────────────────────────────────────────────────────────

class PowerLosses : public BrokenOff {
protected:
    // What is on the disk after the power was lost at that call of `work`.
    std::filesystem::path lost(const std::filesystem::path& folder, long atCall, unsigned seed,
                               const std::function<void()>& begin, const std::function<void()>& work) {
        const std::filesystem::path after = folder.string() + ".after";
        std::filesystem::create_directory(after);
        EXPECT_EQ(saidByOtherProgram([&]() -> std::string {
                      begin();
                      PowerLoss loss{folder, after, atCall, seed};
                      work();
                      loss.lose();
                  }),
                  "");
        return after;
    }
};

TEST_F(PowerLosses, AtAnyMomentOfAnyThing) {
    const unsigned losses = wished("HOLDFAST_POWER_LOSSES", 50);
    const auto scenes = everyScene();
    const std::size_t actions = actionScenes().size();
    for (unsigned count = 0; count < losses; ++count) {
        const std::size_t which =
            count % 2 == 0 ? m_random() % actions : actions + m_random() % (scenes.size() - actions);
        const DiskScene& scene = scenes[which];
        const Expected& expected = expectedOf(scene);
        const auto folder = staged(scene);
        const long atCall = 1 + static_cast<long>(m_random() % static_cast<unsigned>(expected.calls + 2));
        SCOPED_TRACE(scene.name + ", power lost at call " + std::to_string(atCall) + ", seed " +
                     std::to_string(count));
        std::unique_ptr<Shop> shop;
        const auto after = lost(
            folder, atCall, count,
            [&] {
                if (!scene.opensItself)
                    shop = opened(folder / kShop);
            },
            [&] { say(folder, actedIn(scene, shop.get(), folder)); });
        const bool isAcknowledged = saidOf(folder) == std::vector<std::string>{"kept"};
        judge(scene, seen(after), expected, isAcknowledged);
        clear(folder);
        clear(after);
    }
    std::cout << losses << " losses of power: " << m_counts.acknowledged << " after it was acknowledged, "
              << m_counts.before << " found as before, " << m_counts.after << " found done\n";
}

TEST_F(PowerLosses, InTheMidstOfADay) {
    const unsigned losses = wished("HOLDFAST_POWER_LOSSES", 50);
    const DiskScene scene = actionScenes().front();
    const std::int64_t entries = entriesBefore();
    for (unsigned count = 0; count < losses; ++count) {
        const auto folder = staged(scene);
        const long atCall = 1 + static_cast<long>(m_random() % 900);
        SCOPED_TRACE("day " + std::to_string(count) + ", power lost at call " + std::to_string(atCall));
        const auto after = lost(folder, atCall, count, [] {}, [&] { day(folder, count, 40); });
        judgeDay(after, saidOf(folder), entries);
        clear(folder);
        clear(after);
    }
    std::cout << losses << " losses of power, " << m_counts.acknowledged << " acknowledged actions\n";
}

} // namespace
} // namespace holdfast::db
