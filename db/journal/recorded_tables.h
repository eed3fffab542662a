// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The tables whose changes the journal records.

#include "db/sqlite/changeset.h"

#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

class Connection;

// All but those of SQLite, the journal and the seats, full-text tables and what triggers keep: those are
// written again when a changeset is applied.
std::vector<std::string> recordedTables(Connection& connection);

// A table whose rows are never undone: who was forgotten, and invoices.
bool isKeptForGood(std::string_view table);
// Whether it writes to such a table.
bool isForGood(ChangesetView changeset);

} // namespace holdfast::db
