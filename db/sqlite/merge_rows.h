// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Applies a changeset to rows that others have changed meanwhile: what it says is done wherever the rows are
// as it expects them, column by column, and what was changed meanwhile stays as it is.

#include "db/sqlite/changeset.h"

#include <string>
#include <vector>

namespace holdfast::db {

class Connection;

// Where a row was not written as the changeset has it.
struct RowDifference {
    enum class Kind {
        ColumnsStand, // changed here meanwhile: those columns stay
        RowGone,      // the row to be changed was deleted here
        RowStands,    // the row to be deleted was changed here, and stays
        RowThere,     // a row of this key is here already, with other values, and stays
        Renumbered, // its number is taken here: it was entered with the next; `columns` holds the one it had
        Refused,    // the row would break a rule of its table
    };
    Kind kind;
    std::string table;
    std::string key;
    std::vector<std::string> columns; // that stay; empty for whole rows
};

// Columns of a table that mean something only together: where one stays, all of them do.
struct ColumnsTogether {
    std::string table;
    std::vector<std::string> columns;
};

// A table whose rows are numbered, no two alike. `next` is a query for the number a new row gets; no row:
// there is none.
struct NumberedTable {
    std::string table;
    std::string column;
    std::string next;
};

struct MergeRules {
    std::vector<ColumnsTogether> together;
    std::vector<NumberedTable> numbered;
};

// A row that is as the changeset would make it is no difference. References between rows are not looked
// at: see foreign_keys.h. REQUIRES: a transaction is open in which writing is allowed.
std::vector<RowDifference> mergeRows(Connection& connection, ChangesetView changeset,
                                     const MergeRules& rules);

} // namespace holdfast::db
