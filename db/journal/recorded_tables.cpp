// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/recorded_tables.h"

#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"

#include <algorithm>

namespace holdfast::db {

// By name, so that the session never records a full-text table's shadows (see session.h), nor what triggers
// keep: those write it again when a changeset is applied.
std::vector<std::string> recordedTables(Connection& connection) {
    std::vector<std::string> tables;
    Query names = connection.query(
        "SELECT name FROM pragma_table_list "
        "WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' "
        "AND name NOT LIKE 'journal\\_%' ESCAPE '\\' AND name <> 'seat' "
        "AND name NOT LIKE 'seat\\_%' ESCAPE '\\' AND name NOT LIKE '%\\_card' ESCAPE '\\' "
        "ORDER BY name");
    while (names.step())
        tables.push_back(names.text(0));
    return tables;
}

bool isKeptForGood(std::string_view table) {
    return table.starts_with("forgotten_") || table == "invoice" || table == "invoice_row";
}

bool isForGood(ChangesetView changeset) {
    return std::ranges::any_of(tablesOf(changeset),
                               [](const TableChanges& changes) { return isKeptForGood(changes.table); });
}

} // namespace holdfast::db
