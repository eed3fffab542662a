// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The folders that backups are in: made, with room in them, and rid of what is past its time.

#include "core/trade/result.h"
#include "db/disk/kept_backup.h"
#include "db/disk/shop_mark.h"

#include <cstdint>

namespace holdfast::db {

// Readable by its owner only. One that is there already stays as it is.
Result<Done> makeFolder(const std::filesystem::path& folder);

// The bytes fit into it, with some to spare, or the refusal says how many are free.
Result<Done> requireRoom(const std::filesystem::path& folder, std::uintmax_t bytes);

// Backups that are the shop file itself under a second name, as a program leaves them that was ended in the
// midst of putting one back. The shop goes on in them, so they are none.
void removeNamesOf(const std::filesystem::path& shop);

// "61.4 MB"
std::string bytesWords(std::uintmax_t bytes);

// Made by the program of this shop on this laptop, and not worked in since.
bool isOursToRemove(const KeptBackup& backup, const ShopMark& mark);

// Removes those that stay no longer; of those that were not whole all but the newest, and that one too after
// the days for which all are kept.
void removeOutdated(const std::filesystem::path& folder, const std::filesystem::path& shop,
                    const ShopMark& mark, LocalTime now);

} // namespace holdfast::db
