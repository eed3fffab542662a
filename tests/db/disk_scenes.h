// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whatever Holdfast does with a shop's file, each as a scene: files in a folder, and one thing done with
// them. A scene is played in a program of its own, whose disk fails, which is killed, or whose power is lost;
// then the folder is looked at as the next start finds it.

#include "tests/db/every_action.h"
#include "tests/db/other_program.h"

#include <deque>
#include <functional>
#include <map>
#include <string>
#include <vector>

namespace holdfast::db {

struct DiskScene {
    using Act = std::function<Result<Done>(Shop* shop, const std::filesystem::path& folder)>;

    std::string name;
    std::filesystem::path files; // the folder as it is before, to be copied
    Act act;
    bool opensItself = false; // else it is handed the shop, opened for writing before anything can fail
    // The workshop's own entries take their places in the line first, whatever becomes of the rest.
    bool putsInLine = false;
    bool drawsByChance = false; // it writes other numbers into the shop each time
};

// A folder as the next start finds it.
struct FolderSeen {
    Dump rows;                        // of every table of the shop
    std::map<std::string, int> count; // how many rows a table has, and what the entries say
    std::vector<std::string> names;   // of all files
    std::vector<std::string> wrong;   // what the check found, or why the shop did not open

    // Nothing where it has the same rows; else the first that differ.
    std::string differenceTo(const FolderSeen& other) const;
    // Nothing where the same was done, whatever ids and marks chance gave it.
    std::string doneOtherwiseThan(const FolderSeen& other) const;
};

class DiskScenes : public EveryAction {
protected:
    static constexpr const char* kShop = "shop.holdfast";

    // What the journal is about, and what is made beside it.
    std::vector<DiskScene> everyScene();
    std::vector<DiskScene> actionScenes();
    std::vector<DiskScene> fileScenes();
    std::vector<DiskScene> exchangeScenes();
    std::vector<DiskScene> openingScenes();

    Clock clock() {
        return [this] { return now().instant; };
    }

    // A new folder with the scene's files in it.
    std::filesystem::path staged(const DiskScene& scene);
    // Opens the shop once and looks at everything.
    FolderSeen seen(const std::filesystem::path& folder);
    const FolderSeen& seenBefore(const DiskScene& scene);
    FolderSeen seenAfter(const DiskScene& scene);

    // Nothing where the shop is as it was before.
    static std::string changedIn(const DiskScene& scene, FolderSeen found, FolderSeen before);

    // In a program of its own: "kept", or the words of its refusal. `around` is called with the act.
    using Around = std::function<std::string(const std::function<std::string()>&)>;
    std::string played(const DiskScene& scene, const std::filesystem::path& folder, const Around& around);
    // The act by itself, in this program.
    std::string actedIn(const DiskScene& scene, Shop* shop, const std::filesystem::path& folder);

private:
    void startAgain(const std::filesystem::path& folder, FolderSeen& seen);
    std::filesystem::path newFolder(const std::string& name);
    const std::filesystem::path& workshopFiles();
    const std::filesystem::path& workshopWithNews();
    const std::filesystem::path& laptopWithNews();
    const std::filesystem::path& olderFiles();
    const std::filesystem::path& spoiltFiles();
    void makeExchangeFiles();

    std::filesystem::path m_workshop, m_workshopNews, m_laptopNews, m_older, m_spoilt;
    std::map<std::filesystem::path, FolderSeen> m_before;
    SeatNumber m_fairSeat = kWorkshopSeat;
    int m_folders = 0;
};

} // namespace holdfast::db
