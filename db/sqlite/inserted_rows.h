// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A changeset of new rows of one table, written down row by row: what a session would record of them, without
// its keeping and reading again of each, which for a million rows takes several times as long as writing
// them.
//
// The format is that of SQLite's session extension, as its source describes it (sqlite3session.c, "Changeset
// blob format"): a head of the table, then for each row the operation and its values, numbers big-endian.

#include "db/sqlite/changeset.h"

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace holdfast::db {

class InsertedRows {
public:
    // For each column of the table in its order, its place in the primary key, counted from 1; 0: it is not
    // in it. Where this is not as in the table, applying passes over the rows without a word.
    InsertedRows(std::string_view table, std::span<const std::uint8_t> keyPlaces);

    // A row begins; then its values, one a column, in the table's order.
    void beginRow();
    void integer(std::int64_t number);
    void real(double number);
    void null();

    void reserve(std::size_t rows);
    // Empty where no row was added.
    Changeset take();
    const std::string& table() const { return m_table; }

private:
    void bytes(std::uint64_t bits);

    std::string m_table;
    Changeset m_changeset;
    std::size_t m_head = 0;
    std::size_t m_columns = 0;
};

} // namespace holdfast::db
