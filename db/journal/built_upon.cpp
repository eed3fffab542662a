// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/built_upon.h"

#include "db/journal/recorded_tables.h"
#include "db/sqlite/changeset.h"
#include "db/sqlite/connection.h"

#include <algorithm>
#include <map>
#include <string>
#include <vector>

namespace holdfast::db {

namespace {

// Larger entries are imports and the like: looking through them takes longer than trying.
constexpr std::int64_t kLookedThrough = 200'000;

// What later entries did: to which columns of which rows, and of which rows they speak.
class LaterWork {
public:
    bool isBuiltOn(ChangesetView changeset) const {
        bool isBuilt = false;
        forEachChange(changeset, [&](const RowChange& change) {
            const auto touched = m_columns.find(rowOf(change));
            isBuilt = (touched != m_columns.end() && shareAColumn(touched->second, change.isChanged)) ||
                      (change.kind == ChangeKind::Insert && m_spokenOf.contains(change.key));
            return !isBuilt;
        });
        return isBuilt;
    }

    void add(ChangesetView changeset) {
        forEachChange(changeset, [&](const RowChange& change) {
            std::vector<bool>& columns = m_columns[rowOf(change)];
            columns.resize(std::max(columns.size(), change.isChanged.size()));
            for (std::size_t column = 0; column < change.isChanged.size(); ++column)
                if (change.isChanged[column])
                    columns[column] = true;
            // Ids are never given twice in a shop: a value that is one speaks of that row.
            for (int column = 0; column < change.columns; ++column)
                if (auto value = change.after(column))
                    m_spokenOf.insert(std::move(*value));
            return true;
        });
    }

private:
    static std::string rowOf(const RowChange& change) {
        return std::string{change.table} + '\n' + change.key;
    }

    static bool shareAColumn(const std::vector<bool>& one, const std::vector<bool>& other) {
        for (std::size_t column = 0; column < std::min(one.size(), other.size()); ++column)
            if (one[column] && other[column])
                return true;
        return false;
    }

    std::map<std::string, std::vector<bool>> m_columns;
    std::set<std::string> m_spokenOf;
};

} // namespace

std::set<EntryId> builtUpon(Connection& connection, std::span<const HistoryEntry> entries) {
    std::set<EntryId> built;
    LaterWork later;
    for (const HistoryEntry& entry : entries) {
        // An undo and what it undid leave nothing behind; nor do a redo and what it did again.
        if (entry.undoes || entry.isUndone() || entry.bytes > kLookedThrough)
            continue;
        Query found = connection.query("SELECT changeset FROM journal_entry WHERE id = ?1", entry.id);
        if (!found.step())
            continue;
        if (later.isBuiltOn(found.bytes(0)) || isForGood(found.bytes(0)))
            built.insert(entry.id);
        later.add(found.bytes(0));
    }
    return built;
}

} // namespace holdfast::db
