// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What putting a backup back would take away, and what it would bring back.

#include "core/trade/dates.h"
#include "core/trade/result.h"
#include "db/journal/history.h"
#include "db/journal/shop.h"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::db {

// What one of two copies of a shop holds and the other does not.
struct OnlyInOne {
    std::int64_t entries = 0;
    std::int64_t orders = 0;
    std::int64_t payments = 0;
    std::int64_t garmentsPressed = 0;
    std::vector<Sentence> newest; // titles of its entries, the newest first

    bool isNothing() const { return entries == 0; }
};

struct LookAtBackup {
    bool isShopRead = false; // else nobody can say what would be lost
    OnlyInOne lost;
    OnlyInOne comesBack;
    std::int64_t orders = 0;           // in the backup
    std::optional<Instant> lastDoneAt; // in the backup
    Sentence lastTitle;
};

// Reads both. An error where the backup cannot be read, or was stopped.
Result<LookAtBackup> lookAtBackup(const std::filesystem::path& backup, const std::filesystem::path& shop,
                                  const TellProgress& tell = {});

} // namespace holdfast::db
