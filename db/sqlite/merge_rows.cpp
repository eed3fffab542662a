// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/merge_rows.h"

#include "core/trade/assertion.h"
#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"

#include <sqlite3.h>

#include <algorithm>
#include <map>
#include <memory>
#include <optional>

namespace holdfast::db {

namespace {

// A value as a changeset holds it; nullptr: the changeset does not speak of that column.
using Value = sqlite3_value*;

// A statement whose values come out of a changeset.
class ValueStatement {
public:
    ValueStatement(Connection& connection, const std::string& sql)
        : m_handle(connection.handle()) {
        require(
            m_handle,
            sqlite3_prepare_v2(m_handle, sql.c_str(), static_cast<int>(sql.size()), &m_statement, nullptr),
            sql);
    }
    ValueStatement(const ValueStatement&) = delete;
    ValueStatement& operator=(const ValueStatement&) = delete;
    ~ValueStatement() { sqlite3_finalize(m_statement); }

    void add(Value value) { require(m_handle, sqlite3_bind_value(m_statement, ++m_bound, value)); }
    void add(std::int64_t number) { require(m_handle, sqlite3_bind_int64(m_statement, ++m_bound, number)); }

    // SQLITE_ROW or SQLITE_DONE; SQLITE_CONSTRAINT where the row would break a rule.
    int step() {
        const int code = sqlite3_step(m_statement);
        if (code == SQLITE_ROW || code == SQLITE_DONE)
            return code;
        if ((code & 0xff) == SQLITE_CONSTRAINT)
            return SQLITE_CONSTRAINT;
        throw SqliteFailure::of(m_handle, code);
    }

    bool truth(int column) const { return sqlite3_column_int(m_statement, column) != 0; }

private:
    sqlite3* m_handle;
    sqlite3_stmt* m_statement = nullptr;
    int m_bound = 0;
};

std::string asName(const std::string& name) {
    return "\"" + name + "\"";
}

class Merge {
public:
    Merge(Connection& connection, const MergeRules& rules)
        : m_connection(connection)
        , m_rules(rules) {}

    std::vector<RowDifference> of(ChangesetView changeset) {
        requireWhole(changeset);
        sqlite3_changeset_iter* started = nullptr;
        require(nullptr, sqlite3changeset_start(&started, static_cast<int>(changeset.size()),
                                                const_cast<std::byte*>(changeset.data())));
        const std::unique_ptr<sqlite3_changeset_iter, decltype(&sqlite3changeset_finalize)> changes{
            started, &sqlite3changeset_finalize};
        int code = SQLITE_ROW;
        while ((code = sqlite3changeset_next(changes.get())) == SQLITE_ROW)
            mergeOne(changes.get());
        if (code != SQLITE_DONE)
            throw SqliteFailure{code, "an entry is damaged"};
        return std::move(m_differences);
    }

private:
    struct Row {
        int operation = 0;
        std::vector<Value> before; // by column
        std::vector<Value> after;
        std::vector<bool> isKey;
    };

    void mergeOne(sqlite3_changeset_iter* changes) {
        readHead(changes);
        switch (m_row.operation) {
        case SQLITE_INSERT:
            return mergeInsert();
        case SQLITE_DELETE:
            return mergeDelete();
        default:
            return mergeUpdate();
        }
    }

    void readHead(sqlite3_changeset_iter* changes) {
        const char* table = nullptr;
        int columns = 0;
        require(nullptr, sqlite3changeset_op(changes, &table, &columns, &m_row.operation, nullptr));
        m_table = table;
        m_columns = columnsOf(m_table);
        if (m_columns.size() < static_cast<std::size_t>(columns))
            throw SqliteFailure::inWords(
                said("An entry is about a table that is not in this shop: {table}.", {{"table", m_table}}));
        unsigned char* isKey = nullptr;
        require(nullptr, sqlite3changeset_pk(changes, &isKey, nullptr));
        m_row.isKey.assign(isKey, isKey + columns);
        m_row.before.assign(static_cast<std::size_t>(columns), nullptr);
        m_row.after = m_row.before;
        for (int column = 0; column < columns; ++column) {
            const auto at = static_cast<std::size_t>(column);
            if (m_row.operation != SQLITE_INSERT)
                require(nullptr, sqlite3changeset_old(changes, column, &m_row.before[at]));
            if (m_row.operation != SQLITE_DELETE)
                require(nullptr, sqlite3changeset_new(changes, column, &m_row.after[at]));
        }
    }

    const std::vector<std::string>& columnsOf(const std::string& table) {
        auto& columns = m_columnNames[table];
        if (columns.empty()) {
            Query names = m_connection.query("SELECT name FROM pragma_table_info(?1) ORDER BY cid", table);
            while (names.step())
                columns.push_back(names.text(0));
        }
        return columns;
    }

    std::size_t columnCount() const { return m_row.isKey.size(); }
    // Its key is among the values before, or those after of an insert.
    const std::vector<Value>& keyed() const {
        return m_row.operation == SQLITE_INSERT ? m_row.after : m_row.before;
    }

    std::string whereKey() const {
        std::string sql;
        for (std::size_t column = 0; column < columnCount(); ++column)
            if (m_row.isKey[column])
                sql += (sql.empty() ? " WHERE " : " AND ") + asName(m_columns[column]) + " IS ?";
        return sql;
    }
    void addKey(ValueStatement& statement) const {
        for (std::size_t column = 0; column < columnCount(); ++column)
            if (m_row.isKey[column])
                statement.add(keyed()[column]);
    }
    std::string keyWords() const {
        std::vector<std::string> values;
        for (std::size_t column = 0; column < columnCount(); ++column) {
            if (!m_row.isKey[column])
                continue;
            const auto* text = sqlite3_value_text(keyed()[column]);
            values.emplace_back(text == nullptr ? "" : reinterpret_cast<const char*>(text));
        }
        return keyText(values);
    }

    void differs(RowDifference::Kind kind, std::vector<std::string> columns = {}) {
        m_differences.push_back({kind, m_table, keyWords(), std::move(columns)});
    }

    // For each column that `values` speaks of, whether the row here has that value; nothing where there is no
    // row.
    std::optional<std::vector<bool>> hasHere(const std::vector<Value>& values) {
        std::string sql = "SELECT 1";
        for (std::size_t column = 0; column < columnCount(); ++column)
            if (values[column] != nullptr)
                sql += ", " + asName(m_columns[column]) + " IS ?";
        ValueStatement row{m_connection, sql + " FROM " + asName(m_table) + whereKey()};
        for (std::size_t column = 0; column < columnCount(); ++column)
            if (values[column] != nullptr)
                row.add(values[column]);
        addKey(row);
        if (row.step() != SQLITE_ROW)
            return std::nullopt;
        std::vector<bool> same(columnCount(), true);
        int at = 0;
        for (std::size_t column = 0; column < columnCount(); ++column)
            if (values[column] != nullptr)
                same[column] = row.truth(++at);
        return same;
    }

    static bool all(const std::vector<bool>& truths) {
        return std::ranges::all_of(truths, [](bool truth) { return truth; });
    }

    void mergeInsert() {
        if (const auto same = hasHere(m_row.after)) {
            if (!all(*same))
                differs(RowDifference::Kind::RowThere);
            return;
        }
        std::string names;
        std::string places;
        for (std::size_t column = 0; column < columnCount(); ++column) {
            names += (column == 0 ? "" : ", ") + asName(m_columns[column]);
            places += column == 0 ? "?" : ", ?";
        }
        const auto number = takenNumber();
        ValueStatement insert{m_connection,
                              "INSERT INTO " + asName(m_table) + " (" + names + ") VALUES (" + places + ")"};
        for (std::size_t column = 0; column < columnCount(); ++column) {
            if (number && number->column == column)
                insert.add(number->next);
            else
                insert.add(m_row.after[column]);
        }
        if (insert.step() == SQLITE_CONSTRAINT)
            differs(RowDifference::Kind::Refused);
        else if (number)
            differs(RowDifference::Kind::Renumbered, {number->had});
    }

    struct TakenNumber {
        std::size_t column = 0;
        std::string had;
        std::int64_t next = 0;
    };
    // Where the number of the row to be inserted is taken, and there is another.
    std::optional<TakenNumber> takenNumber() {
        const auto table = std::ranges::find(m_rules.numbered, m_table, &NumberedTable::table);
        if (table == m_rules.numbered.end())
            return std::nullopt;
        const auto found = std::ranges::find(m_columns, table->column);
        if (found == m_columns.end())
            return std::nullopt;
        const auto column = static_cast<std::size_t>(found - m_columns.begin());
        if (column >= columnCount())
            return std::nullopt;
        const std::int64_t number = sqlite3_value_int64(m_row.after[column]);
        if (m_connection.number("SELECT COUNT(*) FROM " + asName(m_table) + " WHERE " +
                                    asName(table->column) + " = ?1",
                                number) == 0)
            return std::nullopt;
        Query next = m_connection.query(table->next);
        if (!next.step())
            return std::nullopt;
        return TakenNumber{column, std::to_string(number), next.integer(0)};
    }

    void mergeDelete() {
        const auto same = hasHere(m_row.before);
        if (!same)
            return;
        if (!all(*same))
            return differs(RowDifference::Kind::RowStands);
        ValueStatement remove{m_connection, "DELETE FROM " + asName(m_table) + whereKey()};
        addKey(remove);
        if (remove.step() == SQLITE_CONSTRAINT)
            differs(RowDifference::Kind::RowStands);
    }

    void mergeUpdate() {
        const auto asBefore = hasHere(m_row.before);
        if (!asBefore)
            return differs(RowDifference::Kind::RowGone);
        const auto asAfter = hasHere(m_row.after);
        std::vector<bool> stays(columnCount(), false);
        for (std::size_t column = 0; column < columnCount(); ++column)
            stays[column] = isSpokenOf(column) && !(*asBefore)[column] && !(*asAfter)[column];
        keepTogether(stays);

        std::vector<std::string> standing;
        std::string assignments;
        for (std::size_t column = 0; column < columnCount(); ++column) {
            if (!isSpokenOf(column))
                continue;
            if (stays[column])
                standing.push_back(m_columns[column]);
            else
                assignments += (assignments.empty() ? "" : ", ") + asName(m_columns[column]) + " = ?";
        }
        if (!assignments.empty() && !assigned(assignments, stays))
            return differs(RowDifference::Kind::Refused);
        if (!standing.empty())
            differs(RowDifference::Kind::ColumnsStand, std::move(standing));
    }

    bool isSpokenOf(std::size_t column) const {
        return !m_row.isKey[column] && m_row.after[column] != nullptr;
    }

    void keepTogether(std::vector<bool>& stays) const {
        for (const ColumnsTogether& group : m_rules.together) {
            if (group.table != m_table)
                continue;
            const auto isOfGroup = [&](std::size_t column) {
                return std::ranges::find(group.columns, m_columns[column]) != group.columns.end();
            };
            bool anyStays = false;
            for (std::size_t column = 0; column < columnCount(); ++column)
                anyStays |= stays[column] && isOfGroup(column);
            for (std::size_t column = 0; anyStays && column < columnCount(); ++column)
                if (isOfGroup(column) && isSpokenOf(column))
                    stays[column] = true;
        }
    }

    bool assigned(const std::string& assignments, const std::vector<bool>& stays) {
        ValueStatement update{m_connection, "UPDATE " + asName(m_table) + " SET " + assignments + whereKey()};
        for (std::size_t column = 0; column < columnCount(); ++column)
            if (isSpokenOf(column) && !stays[column])
                update.add(m_row.after[column]);
        addKey(update);
        return update.step() != SQLITE_CONSTRAINT;
    }

    Connection& m_connection;
    const MergeRules& m_rules;
    std::map<std::string, std::vector<std::string>> m_columnNames;
    std::string m_table;
    std::vector<std::string> m_columns;
    Row m_row;
    std::vector<RowDifference> m_differences;
};

} // namespace

std::vector<RowDifference> mergeRows(Connection& connection, ChangesetView changeset,
                                     const MergeRules& rules) {
    HOLDFAST_ASSERT(connection.inTransaction() && connection.mayWrite());
    return changeset.empty() ? std::vector<RowDifference>{} : Merge{connection, rules}.of(changeset);
}

} // namespace holdfast::db
