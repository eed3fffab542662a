// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/obstacle.h"

#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"
#include "db/tables/kept_words.h"

#include <functional>
#include <set>
#include <vector>

namespace holdfast::db {

namespace {

using Touches = std::function<bool(const RowChange&)>;

std::optional<Sentence> latestThat(Query entries, const Touches& touches) {
    while (entries.step()) {
        bool found = false;
        forEachChange(entries.bytes(1), [&](const RowChange& change) {
            found = touches(change);
            return !found;
        });
        if (found)
            return keptWords(entries, 0, 2).sentence();
    }
    return std::nullopt;
}

// What a person did comes before undos: an undo is named as the obstacle only where nothing else is.
std::optional<Sentence> latestAfter(Connection& connection, EntryId entry, const Touches& touches) {
    auto found = latestThat(connection.query("SELECT title, changeset, said FROM journal_entry WHERE id > ?1 "
                                             "AND undone_by IS NULL AND undoes IS NULL ORDER BY id DESC",
                                             entry),
                            touches);
    if (!found)
        found = latestThat(connection.query("SELECT title, changeset, said FROM journal_entry WHERE id > ?1 "
                                            "AND undone_by IS NULL AND undoes IS NOT NULL ORDER BY id DESC",
                                            entry),
                           touches);
    return found;
}

bool shareAColumn(const std::vector<bool>& one, const std::vector<bool>& other) {
    for (std::size_t column = 0; column < one.size() && column < other.size(); ++column)
        if (one[column] && other[column])
            return true;
    return false;
}

std::string quoted(const std::string& name) {
    std::string text = "\"";
    for (const char letter : name)
        text.append(letter == '"' ? 2 : 1, letter);
    return text + "\"";
}

std::vector<std::string> keyColumns(Connection& connection, const std::string& table) {
    std::vector<std::string> columns;
    Query rows = connection.query("SELECT name FROM pragma_table_info(?1) WHERE pk > 0 ORDER BY cid", table);
    while (rows.step())
        columns.push_back(rows.text(0));
    return columns;
}

// The tables of the changeset and all that refer to one of them.
std::set<std::string> tablesToCheck(Connection& connection, ChangesetView changeset) {
    std::set<std::string> tables;
    for (const TableChanges& changes : tablesOf(changeset)) {
        tables.insert(changes.table);
        Query referring = connection.query("SELECT child.name FROM pragma_table_list AS child, "
                                           "pragma_foreign_key_list(child.name) AS reference "
                                           "WHERE child.schema = 'main' AND child.type = 'table' "
                                           "AND reference.\"table\" = ?1",
                                           changes.table);
        while (referring.step())
            tables.insert(referring.text(0));
    }
    return tables;
}

struct Reference {
    std::string parentTable;
    std::string column;
    std::string parentColumn;
};

std::optional<Reference> brokenReference(Connection& connection, const std::string& table) {
    Query check =
        connection.query("SELECT reference.\"table\", reference.\"from\", reference.\"to\" "
                         "FROM pragma_foreign_key_check(?1) AS fault "
                         "JOIN pragma_foreign_key_list(?1) AS reference ON reference.id = fault.fkid LIMIT 1",
                         table);
    if (!check.step())
        return std::nullopt;
    Reference reference{check.text(0), check.text(1), check.text(2)};
    if (reference.parentColumn.empty()) { // "REFERENCES film": its primary key is meant
        const auto columns = keyColumns(connection, reference.parentTable);
        reference.parentColumn = columns.empty() ? "rowid" : columns.front();
    }
    return reference;
}

} // namespace

std::optional<DanglingRow> danglingRow(Connection& connection, ChangesetView changeset) {
    for (const std::string& table : tablesToCheck(connection, changeset)) {
        const auto reference = brokenReference(connection, table);
        if (!reference)
            continue;
        std::string sql = "SELECT " + quoted(reference->column);
        const auto columns = keyColumns(connection, table);
        for (const std::string& column : columns)
            sql += ", " + quoted(column);
        sql += " FROM " + quoted(table) + " AS child WHERE " + quoted(reference->column) +
               " IS NOT NULL AND NOT EXISTS (SELECT 1 FROM " + quoted(reference->parentTable) +
               " AS parent WHERE parent." + quoted(reference->parentColumn) + " = child." +
               quoted(reference->column) + ") LIMIT 1";
        Query dangling = connection.query(sql);
        if (!dangling.step())
            continue;
        std::vector<std::string> key;
        for (int place = 1; place <= static_cast<int>(columns.size()); ++place)
            key.push_back(dangling.text(place));
        return DanglingRow{table, keyText(key), reference->parentTable, dangling.text(0)};
    }
    return std::nullopt;
}

std::optional<Sentence> obstacleAfter(Connection& connection, EntryId entry, const Conflict& conflict) {
    auto found = latestAfter(connection, entry, [&](const RowChange& change) {
        return change.table == conflict.table && change.key == conflict.key &&
               shareAColumn(change.isChanged, conflict.isChanged);
    });
    // A value that must be there once is taken by another row.
    if (!found && conflict.kind == Conflict::Kind::Rule)
        found = latestAfter(connection, entry, [&](const RowChange& change) {
            return change.table == conflict.table && change.kind != ChangeKind::Delete;
        });
    return found;
}

std::optional<Sentence> obstacleAfter(Connection& connection, EntryId entry, const DanglingRow& row) {
    return latestAfter(connection, entry, [&](const RowChange& change) {
        return (change.table == row.table && change.key == row.key) ||
               (change.table == row.parentTable && change.key == row.parentKey);
    });
}

} // namespace holdfast::db
