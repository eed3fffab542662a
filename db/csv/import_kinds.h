// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What can be read in: which headings say so, which others may be there, and what becomes of a line.

#include "core/facts/climate.h"
#include "core/facts/settings.h"
#include "core/trade/result.h"
#include "db/csv/import_row.h"
#include "db/csv/import_shop.h"
#include "db/journal/writer.h"

#include <functional>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <vector>

namespace holdfast::db {

enum class LineWas { Added, Known, Passed };

struct PlacedReading {
    PlaceId place;
    ClimateReading reading;
};

// What the lines of one file share.
struct ImportWork {
    Writer& writer;
    const Now& now;
    const OffsetAt& offsetAt;
    std::vector<PlacedReading> readings; // written together, when all lines were read
    std::map<std::tuple<std::string, std::string, std::string, std::string, std::int64_t>, std::int64_t>
        lotsSeen;
    std::map<std::string, std::optional<Instant>> lastReadingOf; // by the place's name as it is written
    std::map<std::string, PlaceId, std::less<>> places;          // found or set up, by name in small letters
    std::map<std::string, std::int64_t> loadsSeen;               // by all that the file says of each
    std::optional<ShopSettings> settings; // as they are to be, written when all lines were read
};

using ImportLine = Result<LineWas> (*)(ImportWork& work, ImportRow& row);

struct ImportKind {
    Phrase name;                               // "blanks received"
    std::span<const std::string_view> needed;  // headings it is recognised by
    std::span<const std::string_view> allowed; // that may be there too and are read
    std::span<const std::string_view> notRead; // that an export has, and which say what cannot be read in
    ImportLine read;
};

// The one most of whose headings must be there goes first where two are.
std::span<const ImportKind> importKinds();

Result<LineWas> importCustomer(ImportWork& work, ImportRow& row);
Result<LineWas> importStyle(ImportWork& work, ImportRow& row);
Result<LineWas> importLot(ImportWork& work, ImportRow& row);
Result<LineWas> importWash(ImportWork& work, ImportRow& row);
Result<LineWas> importFilm(ImportWork& work, ImportRow& row);
Result<LineWas> importRoll(ImportWork& work, ImportRow& row);
Result<LineWas> importPlace(ImportWork& work, ImportRow& row);
Result<LineWas> importPress(ImportWork& work, ImportRow& row);
Result<LineWas> importFair(ImportWork& work, ImportRow& row);
Result<LineWas> importReading(ImportWork& work, ImportRow& row);
Result<LineWas> importSetting(ImportWork& work, ImportRow& row);

} // namespace holdfast::db
