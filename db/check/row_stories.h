// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The rows of some groups as their history tells them, entry by entry from an empty shop, compared with the
// rows in the tables.

#include "db/check/history_sums.h"

#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace holdfast::db {

using OwnedBytes = std::vector<std::byte>;

// One row, as its entries left it.
struct RowStory {
    bool exists = false;
    bool wasDeleted = false;
    std::vector<OwnedBytes> values;      // by column, of the table as it was then; as many as it had
    std::optional<std::string> brokenBy; // the title of an entry that speaks of another row than those before
};

// A row that is other than its history says.
struct RowOdds {
    enum class Kind {
        Differs, // some values
        Missing, // the table has it no more
        Extra,   // no entry made it, or one deleted it
        Broken,  // it is as the last entry left it, but the entries contradict one another
    };
    Kind kind = Kind::Differs;
    std::string table;
    std::string key;                  // as keyText joins it
    std::vector<OwnedBytes> rowKey;   // the values of the key, in the table's order
    std::vector<std::string> columns; // that differ
    std::vector<OwnedBytes> here;     // their values in the table
    std::vector<OwnedBytes> history;  // and as the history has them; of a missing row, all of its columns
    std::optional<std::string> brokenBy;
    bool wasDeleted = false; // of an extra row: an entry says so

    // The history has it without a break, so the table can be put right from it.
    bool canBePutRight() const { return kind != Kind::Broken && !brokenBy; }
};

// Reads the whole journal once more, and the tables. Entries that cannot be read are passed over.
std::vector<RowOdds> rowsAtOdds(Connection& connection, const std::vector<RecordedTable>& tables,
                                const std::set<RowGroup>& groups);

} // namespace holdfast::db
