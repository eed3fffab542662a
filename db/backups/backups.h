// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Backups that the program makes by itself: a folder next to the shop file, and a second one where a person
// chose it. Each is read as the program reads a shop before it gets its name.

#include "core/trade/result.h"
#include "db/check/check.h"
#include "db/disk/kept_backup.h"

#include <cstdint>
#include <optional>

namespace holdfast::db {

class Connection;
class Shop;

// Those of this shop in both folders, the newest first; of a shop that cannot be read, those whose names say
// so. Without a second folder those of the first alone.
std::vector<KeptBackup> backupsOf(const std::filesystem::path& shop,
                                  const std::filesystem::path& secondFolder = {});

// How many orders are in it; none where it cannot be read.
std::optional<std::int64_t> ordersIn(const KeptBackup& backup);

struct BackupMade {
    KeptBackup backup;
    QuickFindings found; // wrong in it, and so in the shop
};

// In the shop's own folder, which is made where it is missing. What was found wrong in it is in its name too,
// and it then pushes no other out; else what is past its time is removed. An error, with nothing left behind,
// where there is no room, or the copy cannot be read.
Result<BackupMade> makeBackup(Shop& shop, BackupReason reason, LocalTime now, const TellCheck& tell = {});

// The newest whole one is copied into the second folder where it is not there yet; none: it is there, or
// there is nothing to copy. An error where the folder is not there or cannot be written to.
Result<std::optional<KeptBackup>> copyToSecondFolder(Shop& shop, const std::filesystem::path& secondFolder,
                                                     LocalTime now, const TellCheck& tell = {});
// A folder of ours in the one that a person chose.
Result<std::filesystem::path> makeSecondFolder(const std::filesystem::path& chosen);

} // namespace holdfast::db
