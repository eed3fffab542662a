// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The values in a changeset, for reading a whole journal: several times faster than change by change with
// SQLite's own reader, and each value as the bytes that it is made of.

#include "db/sqlite/changeset.h"
#include "db/sqlite/query.h"

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

// One byte for its kind (an integer, a real, a text, some bytes, NULL, or 0 for none at all), then what it
// holds, as a changeset writes it.
using ValueBytes = std::span<const std::byte>;

// One change of a row, valid while it is seen. An insert has nothing before, a deletion nothing after; an
// update holds its key before, and of the other columns those that it changes.
struct ValueChange {
    ChangeKind kind;
    std::string_view table;
    const std::vector<bool>& isKey; // by column
    std::span<const ValueBytes> before;
    std::span<const ValueBytes> after;

    // Where its key is.
    std::span<const ValueBytes> keyed() const { return kind == ChangeKind::Insert ? after : before; }
};

// Throws a damage failure, before anything is seen, where the bytes are no whole changeset.
void forEachValue(ChangesetView changeset, const std::function<void(const ValueChange&)>& see);

// The changeset with other values in the place of some: `instead` answers what is to replace a value of the
// change, or nothing where it stays. Throws as forEachValue.
using InsteadOf = std::function<std::optional<std::vector<std::byte>>(const ValueChange& change,
                                                                      std::size_t column, ValueBytes value)>;
Changeset withOtherValues(ChangesetView changeset, const InsteadOf& instead);

// A text, and NULL, as a changeset writes them.
std::vector<std::byte> textValue(std::string_view text);
std::vector<std::byte> nullValue();
// What an integer holds; nothing where the value is none.
std::optional<std::int64_t> integerIn(ValueBytes value);

bool isNothing(ValueBytes value);
bool isNull(ValueBytes value);

// The columns of a row as the same bytes, valid until the next row.
class RowBytes {
public:
    std::span<const ValueBytes> of(const Query& row, std::size_t columns);

private:
    std::vector<std::byte> m_bytes;
    std::vector<std::size_t> m_ends;
    std::vector<ValueBytes> m_values;
};

// As text: "4.5", "Moss"; empty for NULL.
std::string bareWords(ValueBytes value);
// For people: “4.5”, “Moss”, nothing; long ones in brief.
std::string valueWords(ValueBytes value);

// Binds what the bytes hold to a place of the statement.
void bindValue(Query& query, int place, ValueBytes value);

} // namespace holdfast::db
