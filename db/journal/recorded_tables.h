#pragma once
// The tables whose changes the journal records.

#include "db/sqlite/changeset.h"

#include <string>
#include <vector>

namespace holdfast::db {

class Connection;

// All but those of SQLite, the journal and the seats, full-text tables and what triggers keep: those are
// written again when a changeset is applied.
std::vector<std::string> recordedTables(Connection& connection);

// Whether it writes to a table whose rows are never taken back: who was forgotten.
bool isForGood(ChangesetView changeset);

} // namespace holdfast::db
