// SPDX-License-Identifier: GPL-3.0-or-later
// Every call to the disk fails once, or from then on, whatever is being done with the shop, and the program
// goes on or is gone right after. What was acknowledged is there, what was refused is wholly absent, what
// lies beside the shop is tidied up, and the words say which it is. Every call of every scene is tried by
// tests/long/run.sh failing_writes.
#include "tests/db/disk_scenes.h"
#include "tests/db/failing_disk.h"

#include <cerrno>
#include <cstdlib>
#include <iostream>
#include <random>

namespace holdfast::db {
namespace {

using namespace testing;

// How one of the calls fails, and what becomes of the program.
struct HowItFails {
    int error = EIO;
    bool isForEver = false;
    bool tears = false;
    bool goesOn = false; // else it is gone at once
};

constexpr std::array<HowItFails, 6> kWays{{{EIO, false, false, false},
                                           {EIO, false, true, true},
                                           {ENOSPC, false, true, false},
                                           {ENOSPC, false, false, true},
                                           {EIO, true, false, false},
                                           {ENOSPC, true, true, true}}};

// What SQLite takes for somebody else's work where it fails for ever, and waits ten seconds for, fails once.
std::vector<DiskCall> callsFailing(bool isForEver) {
    std::vector<DiskCall> calls{DiskCall::Read,   DiskCall::Write,  DiskCall::Sync, DiskCall::Truncate,
                                DiskCall::Unlink, DiskCall::Rename, DiskCall::Make};
    if (!isForEver)
        calls.insert(calls.end(), {DiskCall::Open, DiskCall::Lock});
    return calls;
}

// Something of it is there, and cannot be taken away any more.
bool isAdmitted(const std::string& said) {
    return said.find("all the same") != std::string::npos;
}

bool isUnsure(const std::string& said) {
    return said.find("can be seen only when the shop is opened again") != std::string::npos;
}

class FailingWrites : public DiskScenes {
protected:
    struct Expected {
        FolderSeen before, after;
        std::array<long, 2> calls{}; // of a run in which nothing fails: once, for ever
    };

    struct Counts {
        int tried = 0, kept = 0, refused = 0, unsure = 0, again = 0;
    };

    Expected expectedOf(const DiskScene& scene) {
        Expected expected{seenBefore(scene), seenAfter(scene), {}};
        EXPECT_TRUE(expected.after.wrong.empty() || expected.after.wrong == expected.before.wrong)
            << scene.name;
        for (const bool isForEver : {false, true}) {
            const auto folder = staged(scene);
            const std::string counted = played(scene, folder, [&](const auto& act) {
                const FailingDisk disk{{callsFailing(isForEver), 1'000'000, EIO}};
                (void)act();
                return std::to_string(FailingDisk::counted());
            });
            expected.calls[isForEver ? 1 : 0] = std::stol(counted);
            EXPECT_NE(counted, "0") << scene.name << " does not reach the disk";
            std::filesystem::remove_all(folder);
        }
        return expected;
    }

    void fail(const DiskScene& scene, const Expected& expected, const HowItFails& how, long at) {
        const auto folder = staged(scene);
        std::string again;
        std::string said = played(scene, folder, [&](const auto& act) {
            std::string first;
            {
                const FailingDisk disk{
                    {callsFailing(how.isForEver), at, how.error, how.isForEver, how.tears}};
                first = act();
            }
            return how.goesOn && first != "kept" && !isUnsure(first) && !isAdmitted(first)
                       ? first + "\n" + act()
                       : first;
        });
        if (const auto line = said.find('\n'); line != std::string::npos) {
            again = said.substr(line + 1);
            said.resize(line);
        }
        SCOPED_TRACE(scene.name + ", call " + std::to_string(at) +
                     (how.isForEver ? " and all after it" : "") + (how.tears ? ", torn" : "") + ", error " +
                     std::to_string(how.error) + ": " + said + (again.empty() ? "" : "; then: " + again));
        judge(scene, seen(folder), expected, said, again);
        std::filesystem::remove_all(folder);
    }

    void judge(const DiskScene& scene, const FolderSeen& found, const Expected& expected,
               const std::string& said, const std::string& again) {
        ++m_counts.tried;
        if (said == "kept" || again == "kept") {
            m_counts.kept += said == "kept";
            m_counts.again += said != "kept";
            EXPECT_EQ(found.doneOtherwiseThan(expected.after), "") << "what was acknowledged is there, once";
            EXPECT_EQ(found.names, expected.after.names);
            EXPECT_EQ(found.wrong, expected.after.wrong);
        } else if (isUnsure(said)) {
            ++m_counts.unsure;
            EXPECT_TRUE(changedIn(scene, found, expected.before).empty() ||
                        found.doneOtherwiseThan(expected.after).empty());
            EXPECT_TRUE(found.names == expected.before.names || found.names == expected.after.names);
        } else if (isAdmitted(said)) {
            EXPECT_TRUE(std::ranges::includes(expected.after.names, found.names)) << "nothing half written";
            EXPECT_EQ(found.wrong, expected.before.wrong);
        } else {
            ++m_counts.refused;
            EXPECT_EQ(again, "") << "the disk is well again";
            EXPECT_EQ(changedIn(scene, found, expected.before), "") << "what was refused is wholly absent";
            EXPECT_EQ(found.names, expected.before.names);
            EXPECT_EQ(found.wrong, expected.before.wrong);
        }
    }

    // Each call in each way, or so many by chance.
    void failAll(const std::vector<DiskScene>& scenes, int some) {
        const bool isEvery = std::getenv("HOLDFAST_EVERY_WRITE") != nullptr;
        std::mt19937 chance{20261130};
        for (const DiskScene& scene : scenes) {
            const Expected expected = expectedOf(scene);
            for (int tried = 0; tried < some && !isEvery; ++tried) {
                const HowItFails& how = kWays[chance() % kWays.size()];
                const long calls = expected.calls[how.isForEver ? 1 : 0];
                fail(scene, expected, how,
                     1 + static_cast<long>(chance() % static_cast<unsigned>(std::max(calls, 1L))));
            }
            for (const HowItFails& how : kWays)
                for (long at = 1; isEvery && at <= expected.calls[how.isForEver ? 1 : 0]; ++at)
                    fail(scene, expected, how, at);
        }
        std::cout << scenes.size() << " scenes, " << m_counts.tried << " failures: " << m_counts.kept
                  << " kept all the same, " << m_counts.refused << " refused, " << m_counts.again
                  << " refused and done at the second time, " << m_counts.unsure << " not known\n";
    }

    Counts m_counts;
};

TEST_F(FailingWrites, OfEveryAction) {
    failAll(actionScenes(), 1);
}

TEST_F(FailingWrites, OfWhatIsMadeOrReadBesideTheShop) {
    failAll(fileScenes(), 5);
}

TEST_F(FailingWrites, OfWhatGoesBetweenLaptops) {
    failAll(exchangeScenes(), 5);
}

TEST_F(FailingWrites, OfOpeningAndBringingUpToDate) {
    failAll(openingScenes(), 5);
}

} // namespace
} // namespace holdfast::db
