// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Writes the whole shop as comma-separated values, a file for each thing of the trade, for a spreadsheet or
// for going elsewhere. What the files hold: export_tables.h and docs/command-line.md.

#include "core/trade/offset_at.h"
#include "core/trade/result.h"
#include "db/journal/shop.h"

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <functional>

namespace holdfast::db {

struct Exported {
    std::int64_t files = 0;
    std::int64_t lines = 0; // without headings
};

// Of local time from UTC at an instant.

// One unchanging view of the shop, row by row, however long: nothing is held in memory. The folder is made
// where it is missing; folder and files are readable by their owner only. A name that is taken is refused
// before anything is written, and where one file cannot be written, none appears. `progress` as in
// TellProgress.
Result<Exported> exportShop(Shop& shop, const std::filesystem::path& folder, const OffsetAt& offsetAt,
                            const TellProgress& progress = {});

} // namespace holdfast::db
