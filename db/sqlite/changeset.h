// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A changeset of SQLite's session extension: which rows an action inserted, changed and deleted, with the
// values before and after. It can be read change by change, turned round and applied. Whatever does so throws
// a damage failure, before anything else, where the bytes are no whole changeset (changeset_form.h).

#include <cstddef>
#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

class Connection;

} // namespace holdfast::db

struct sqlite3_changeset_iter;

namespace holdfast::db {

using Changeset = std::vector<std::byte>;
using ChangesetView = std::span<const std::byte>;

enum class ChangeKind { Insert, Update, Delete };

// The values of a primary key as one text, so that rows of any table can be told apart.
std::string keyText(std::span<const std::string> values);

// One change of a row, valid while forEachChange or the conflict hook looks at it.
struct RowChange {
    ChangeKind kind;
    std::string_view table;
    int columns;
    std::string key;             // the primary key's values, as keyText joins them
    std::vector<bool> isChanged; // by column; all true for an insert or a delete
    sqlite3_changeset_iter* at = nullptr;

    // The values of a column, as text; none where it is NULL, or where the change does not hold it: inserts
    // hold nothing before, deletes nothing after, updates only what they change and the key.
    std::optional<std::string> before(int column) const;
    std::optional<std::string> after(int column) const;
};

// A row that is not as the changeset expects it, or that would break a rule.
struct Conflict {
    enum class Kind { Differs, Missing, Exists, Rule };
    Kind kind;
    std::string table;
    std::string key;
    std::vector<bool> isChanged;
};

// Calls `look` for each change in order until it returns false.
void forEachChange(ChangesetView changeset, const std::function<bool(const RowChange&)>& look);

// What undoes the changeset.
Changeset inverseOf(ChangesetView changeset);

// Applies all of it, or stops at the first conflict and returns that. The caller has a transaction open,
// foreign keys switched off, and rolls back after a conflict.
std::optional<Conflict> applyChangeset(Connection& connection, ChangesetView changeset);

} // namespace holdfast::db
