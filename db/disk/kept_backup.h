// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A backup that the program made by itself: where it lies, and what its name says of it.
//
//     shop-2026-11-30-091405-of-the-day.holdfast
//     shop-2026-11-30-183210-before-news-not-whole-2.holdfast
//
// The day and the time are those of the clock on the wall. Nothing here opens a file.

#include "core/trade/dates.h"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

enum class BackupReason { OfTheDay, BeforeStep, BeforeNews, BeforePuttingBack, BeforeMending };

struct KeptBackup {
    std::filesystem::path path;
    LocalTime at{};
    BackupReason reason = BackupReason::OfTheDay;
    bool isWhole = true; // when it was made, nothing wrong was found in it
    std::uintmax_t bytes = 0;
};

// "shop backups" next to the shop file.
std::filesystem::path backupFolder(const std::filesystem::path& shop);
// In a folder that a person chose, such as a stick. It is made when the folder is chosen and never again: a
// stick that is not there leaves an empty folder on some computers, and that must not be taken for it.
std::filesystem::path secondBackupFolder(const std::filesystem::path& chosen);

// A name that is free in the folder.
std::filesystem::path freeBackupPath(const std::filesystem::path& folder, const std::filesystem::path& shop,
                                     LocalTime at, BackupReason reason, bool isWhole);

// None where the program gives no backup of this shop such a name.
std::optional<KeptBackup> readBackupName(const std::filesystem::path& shop,
                                         const std::filesystem::path& backup);

// By their names, the newest first. Empty where there is no such folder.
std::vector<KeptBackup> namedBackupsIn(const std::filesystem::path& folder,
                                       const std::filesystem::path& shop);

} // namespace holdfast::db
