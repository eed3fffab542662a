// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Reads one file of comma-separated values into a shop: customers, blank styles, blanks received, wash loads,
// films, rolls, storage places, readings, presses, fairs or settings, recognised by its headings. Which
// headings there are and what may be under them: import_kinds.h and docs/command-line.md. What exportShop
// wrote of these can be read back; orders cannot.

#include "core/trade/result.h"
#include "db/csv/export_shop.h"
#include "db/journal/shop.h"

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

namespace holdfast::db {

struct Imported {
    Phrase kind; // "customers"
    std::int64_t added = 0;
    std::int64_t known = 0;  // were there already, and stay as they are
    std::int64_t passed = 0; // of which nothing is left: a lot of no units
};

// One journaled action. A line that is wrong is named by its number, its heading and what is allowed, and
// nothing is written. Times without an offset of their own are local. `progress` as in TellProgress; stopped,
// nothing is written.
Result<Imported> importText(Shop& shop, std::string_view text, const Now& now, const OffsetAt& offsetAt,
                            const TellProgress& progress = {});
// The same of a file of up to 500 MB.
Result<Imported> importFile(Shop& shop, const std::filesystem::path& path, const Now& now,
                            const OffsetAt& offsetAt, const TellProgress& progress = {});

} // namespace holdfast::db
