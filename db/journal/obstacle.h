// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is in the way of undoing an entry: the later entry that touched the same row.

#include "core/trade/ids.h"
#include "core/trade/sentence.h"
#include "db/sqlite/changeset.h"

#include <optional>
#include <span>
#include <string>

namespace holdfast::db {

class Connection;

// A row that refers to one that is not there.
struct DanglingRow {
    std::string table;
    std::string key;
    std::string parentTable;
    std::string parentKey;
};

// The first such row in the tables of the changeset and those that refer to them.
std::optional<DanglingRow> danglingRow(Connection& connection, ChangesetView changeset);

// The title of the latest entry after `entry` that is not undone and touched the row, or for a broken rule
// its table.
std::optional<Sentence> obstacleAfter(Connection& connection, EntryId entry, const Conflict& conflict);
std::optional<Sentence> obstacleAfter(Connection& connection, EntryId entry, const DanglingRow& row);

} // namespace holdfast::db
