// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether the tables are what the journal says that they are, in one pass over both and in little memory.
//
// Each change of a row adds the values that it wrote to a sum and takes away those that it replaced; the rows
// of the tables are taken away from the same sum. Where the history leads from an empty shop to these very
// rows, nothing is left, in whatever order its entries are read: one value that is other than it was written
// or replaced leaves something. Sums are kept for 65,536 groups of rows, so that the few rows that differ are
// found by looking at their groups alone (row_stories.h).

#include "db/sqlite/changeset_values.h"

#include <cstdint>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

class Connection;

// Which group of rows a row is in.
using RowGroup = std::uint16_t;

// A table that the journal records, as it is here.
struct RecordedTable {
    std::string name;
    std::vector<std::string> columns;
    std::vector<bool> isKey; // by column

    std::string columnList() const;
};
std::vector<RecordedTable> tablesOfHistory(Connection& connection);

RowGroup groupOf(std::string_view table, const std::vector<bool>& isKey, std::span<const ValueBytes> row);

class HistorySums {
public:
    HistorySums();

    // Throws a damage failure where the bytes are no changeset.
    void addEntry(ChangesetView changeset);
    void takeRows(Connection& connection, const RecordedTable& table);

    // The groups in which the two differ.
    std::vector<RowGroup> odd() const;

private:
    std::vector<std::uint64_t> m_sums;
};

} // namespace holdfast::db
