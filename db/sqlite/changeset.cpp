// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/changeset.h"

#include "core/trade/assertion.h"
#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"

#include <sqlite3.h>

#include <memory>

namespace holdfast::db {

namespace {

// The session functions take bytes they do not change as void*.
void* bytesOf(ChangesetView changeset) {
    return const_cast<std::byte*>(changeset.data());
}

ChangeKind kindOf(int operation) {
    switch (operation) {
    case SQLITE_INSERT:
        return ChangeKind::Insert;
    case SQLITE_DELETE:
        return ChangeKind::Delete;
    default:
        return ChangeKind::Update;
    }
}

// The key is among the old values, or the new ones of an insert.
std::string keyOf(sqlite3_changeset_iter* changes, int operation, int columns) {
    unsigned char* isKey = nullptr;
    require(nullptr, sqlite3changeset_pk(changes, &isKey, nullptr));
    std::vector<std::string> values;
    for (int column = 0; column < columns; ++column) {
        if (isKey[column] == 0)
            continue;
        sqlite3_value* value = nullptr;
        require(nullptr, operation == SQLITE_INSERT ? sqlite3changeset_new(changes, column, &value)
                                                    : sqlite3changeset_old(changes, column, &value));
        const auto* text = value == nullptr ? nullptr : sqlite3_value_text(value);
        values.emplace_back(text == nullptr ? "" : reinterpret_cast<const char*>(text));
    }
    return keyText(values);
}

std::vector<bool> changedColumns(sqlite3_changeset_iter* changes, int operation, int columns) {
    std::vector<bool> changed(static_cast<std::size_t>(columns), true);
    if (operation != SQLITE_UPDATE)
        return changed;
    for (int column = 0; column < columns; ++column) {
        sqlite3_value* value = nullptr;
        require(nullptr, sqlite3changeset_new(changes, column, &value));
        changed[static_cast<std::size_t>(column)] = value != nullptr;
    }
    return changed;
}

RowChange changeAt(sqlite3_changeset_iter* changes) {
    const char* table = nullptr;
    int columns = 0;
    int operation = 0;
    require(nullptr, sqlite3changeset_op(changes, &table, &columns, &operation, nullptr));
    return RowChange{kindOf(operation),
                     table,
                     columns,
                     keyOf(changes, operation, columns),
                     changedColumns(changes, operation, columns),
                     changes};
}

using Iteration = std::unique_ptr<sqlite3_changeset_iter, decltype(&sqlite3changeset_finalize)>;

Iteration iterate(ChangesetView changeset) {
    requireWhole(changeset);
    sqlite3_changeset_iter* changes = nullptr;
    require(nullptr,
            sqlite3changeset_start(&changes, static_cast<int>(changeset.size()), bytesOf(changeset)));
    return Iteration{changes, &sqlite3changeset_finalize};
}

Conflict::Kind conflictKind(int reason) {
    switch (reason) {
    case SQLITE_CHANGESET_DATA:
        return Conflict::Kind::Differs;
    case SQLITE_CHANGESET_NOTFOUND:
        return Conflict::Kind::Missing;
    case SQLITE_CHANGESET_CONFLICT:
        return Conflict::Kind::Exists;
    default:
        return Conflict::Kind::Rule;
    }
}

// A C function calls this: nothing may be thrown out of it.
int noteConflict(void* context, int reason, sqlite3_changeset_iter* changes) noexcept {
    auto& noted = *static_cast<std::optional<Conflict>*>(context);
    if (reason == SQLITE_CHANGESET_FOREIGN_KEY) { // speaks of no row
        noted = Conflict{Conflict::Kind::Rule, {}, {}, {}};
        return SQLITE_CHANGESET_ABORT;
    }
    try {
        const RowChange change = changeAt(changes);
        noted = Conflict{conflictKind(reason), std::string{change.table}, change.key, change.isChanged};
    } catch (...) {
        noted = Conflict{conflictKind(reason), {}, {}, {}};
    }
    return SQLITE_CHANGESET_ABORT;
}

} // namespace

namespace {

std::optional<std::string> textOf(sqlite3_value* value) {
    if (value == nullptr || sqlite3_value_type(value) == SQLITE_NULL)
        return std::nullopt;
    const auto* text = sqlite3_value_text(value);
    return text == nullptr ? std::string{} : reinterpret_cast<const char*>(text);
}

} // namespace

std::optional<std::string> RowChange::before(int column) const {
    sqlite3_value* value = nullptr;
    if (kind != ChangeKind::Insert)
        require(nullptr, sqlite3changeset_old(at, column, &value));
    return textOf(value);
}

std::optional<std::string> RowChange::after(int column) const {
    sqlite3_value* value = nullptr;
    if (kind != ChangeKind::Delete)
        require(nullptr, sqlite3changeset_new(at, column, &value));
    return textOf(value);
}

std::string keyText(std::span<const std::string> values) {
    std::string joined;
    for (const std::string& value : values)
        joined.append(joined.empty() ? "" : "\x1f").append(value);
    return joined;
}

void forEachChange(ChangesetView changeset, const std::function<bool(const RowChange&)>& look) {
    if (changeset.empty())
        return;
    const Iteration changes = iterate(changeset);
    int code = SQLITE_ROW;
    while ((code = sqlite3changeset_next(changes.get())) == SQLITE_ROW)
        if (!look(changeAt(changes.get())))
            return;
    if (code != SQLITE_DONE)
        throw SqliteFailure{code, "a journal entry is damaged"};
}

Changeset inverseOf(ChangesetView changeset) {
    if (changeset.empty())
        return {};
    requireWhole(changeset);
    int size = 0;
    void* bytes = nullptr;
    require(nullptr,
            sqlite3changeset_invert(static_cast<int>(changeset.size()), changeset.data(), &size, &bytes));
    const std::unique_ptr<void, decltype(&sqlite3_free)> owned{bytes, &sqlite3_free};
    const auto* start = static_cast<const std::byte*>(bytes);
    return Changeset(start, start + size);
}

std::optional<Conflict> applyChangeset(Connection& connection, ChangesetView changeset) {
    HOLDFAST_ASSERT(connection.inTransaction() && connection.mayWrite());
    requireWhole(changeset);
    std::optional<Conflict> noted;
    const int code =
        sqlite3changeset_apply_v2(connection.handle(), static_cast<int>(changeset.size()), bytesOf(changeset),
                                  nullptr, &noteConflict, &noted, nullptr, nullptr, 0);
    if (noted)
        return noted;
    require(connection.handle(), code);
    return std::nullopt;
}

} // namespace holdfast::db
