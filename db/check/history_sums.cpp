// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/check/history_sums.h"

#include "db/journal/recorded_tables.h"
#include "db/sqlite/connection.h"

#include <cstring>

namespace holdfast::db {

namespace {

constexpr std::size_t kGroups = std::size_t{1} << 16;

// Spreads every bit over all of them (the finalizer of MurmurHash3, public domain).
std::uint64_t spread(std::uint64_t bits) {
    bits = (bits ^ (bits >> 33)) * 0xFF51AFD7ED558CCDU;
    bits = (bits ^ (bits >> 33)) * 0xC4CEB9FE1A85EC53U;
    return bits ^ (bits >> 33);
}

std::uint64_t hashOf(std::span<const std::byte> bytes, std::uint64_t seed) {
    std::uint64_t hash = spread(seed ^ (bytes.size() * 0x9E3779B97F4A7C15U));
    while (bytes.size() >= sizeof(std::uint64_t)) {
        std::uint64_t word = 0;
        std::memcpy(&word, bytes.data(), sizeof word);
        hash = spread(hash ^ word);
        bytes = bytes.subspan(sizeof word);
    }
    std::uint64_t rest = 0;
    if (!bytes.empty())
        std::memcpy(&rest, bytes.data(), bytes.size());
    return spread(hash ^ rest);
}

std::uint64_t hashOfRow(std::string_view table, const std::vector<bool>& isKey,
                        std::span<const ValueBytes> row) {
    std::uint64_t hash = hashOf(std::as_bytes(std::span{table}), 1);
    for (std::size_t column = 0; column < row.size(); ++column)
        if (isKey[column])
            hash = hashOf(row[column], hash);
    return hash;
}

// Of one value of the row. A column that a table has gained since holds NULL in the rows from before, which
// their entries do not have: NULL counts as nothing.
std::uint64_t worth(std::uint64_t row, std::size_t column, ValueBytes value) {
    return isNothing(value) || isNull(value) ? 0 : hashOf(value, row + column + 1);
}

std::uint64_t worthOf(std::uint64_t row, std::span<const ValueBytes> values) {
    std::uint64_t sum = 0;
    for (std::size_t column = 0; column < values.size(); ++column)
        sum += worth(row, column, values[column]);
    return sum;
}

RowGroup groupIn(std::uint64_t row) {
    return static_cast<RowGroup>(row >> 48);
}

// What an update replaces and writes: its key stays.
std::uint64_t worthOfUpdate(std::uint64_t row, const ValueChange& change) {
    std::uint64_t sum = 0;
    for (std::size_t column = 0; column < change.after.size(); ++column)
        if (!isNothing(change.after[column]))
            sum += worth(row, column, change.after[column]) - worth(row, column, change.before[column]);
    return sum;
}

} // namespace

std::string RecordedTable::columnList() const {
    std::string list;
    for (const std::string& column : columns)
        list += (list.empty() ? "\"" : ", \"") + column + "\"";
    return list;
}

std::vector<RecordedTable> tablesOfHistory(Connection& connection) {
    std::vector<RecordedTable> tables;
    for (std::string& name : recordedTables(connection)) {
        RecordedTable& table = tables.emplace_back();
        Query columns = connection.query("SELECT name, pk > 0 FROM pragma_table_info(?1) ORDER BY cid", name);
        while (columns.step()) {
            table.columns.push_back(columns.text(0));
            table.isKey.push_back(columns.truth(1));
        }
        table.name = std::move(name);
    }
    return tables;
}

RowGroup groupOf(std::string_view table, const std::vector<bool>& isKey, std::span<const ValueBytes> row) {
    return groupIn(hashOfRow(table, isKey, row));
}

HistorySums::HistorySums()
    : m_sums(kGroups, 0) {}

void HistorySums::addEntry(ChangesetView changeset) {
    forEachValue(changeset, [this](const ValueChange& change) {
        const std::uint64_t row = hashOfRow(change.table, change.isKey, change.keyed());
        std::uint64_t& sum = m_sums[groupIn(row)];
        switch (change.kind) {
        case ChangeKind::Insert:
            sum += worthOf(row, change.after);
            break;
        case ChangeKind::Delete:
            sum -= worthOf(row, change.before);
            break;
        case ChangeKind::Update:
            sum += worthOfUpdate(row, change);
            break;
        }
    });
}

void HistorySums::takeRows(Connection& connection, const RecordedTable& table) {
    RowBytes bytes;
    Query rows = connection.query("SELECT " + table.columnList() + " FROM \"" + table.name + "\"");
    while (rows.step()) {
        const auto values = bytes.of(rows, table.columns.size());
        const std::uint64_t row = hashOfRow(table.name, table.isKey, values);
        m_sums[groupIn(row)] -= worthOf(row, values);
    }
}

std::vector<RowGroup> HistorySums::odd() const {
    std::vector<RowGroup> groups;
    for (std::size_t group = 0; group < kGroups; ++group)
        if (m_sums[group] != 0)
            groups.push_back(static_cast<RowGroup>(group));
    return groups;
}

} // namespace holdfast::db
