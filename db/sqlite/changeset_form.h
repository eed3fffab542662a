// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether bytes have the form of a changeset, read within their bounds. SQLite takes that for granted:
// damaged bytes can make it read on for ever, or reach a value that is not there. So nothing else hands it a
// changeset that was not looked at here first. The form: "Changeset Format" in SQLite's sqlite3session.c.

#include "db/sqlite/changeset.h"

#include <map>

namespace holdfast::db {

// An insert and a deletion hold every column; an update holds the key before, and of the other columns those
// that it changes, before and after. A key is never NULL. No bytes at all are a whole changeset.
bool isWhole(ChangesetView changeset);

// Throws a damage failure unless isWhole.
void requireWhole(ChangesetView changeset);

// What a changeset says of one table.
struct TableChanges {
    std::string table;
    std::vector<bool> isKey; // by column
    std::int64_t inserted = 0;
    std::int64_t updated = 0;
    std::int64_t deleted = 0;

    std::int64_t rows() const { return inserted + updated + deleted; }
    bool operator==(const TableChanges&) const = default;
};

// In its order, each table once for each time it is named. Throws as requireWhole.
std::vector<TableChanges> tablesOf(ChangesetView changeset);

// The changeset with other numbers in the place of some: those of `instead`, in the columns that `isId` says
// hold ids. Throws as requireWhole.
using IsIdColumn = std::function<bool(const std::string& table, std::size_t column)>;
Changeset withOtherNumbers(ChangesetView changeset, const std::map<std::int64_t, std::int64_t>& instead,
                           const IsIdColumn& isId);

// How many rows it changes. Throws as requireWhole.
std::int64_t changeCount(ChangesetView changeset);

} // namespace holdfast::db
