// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/standing.h"

#include "db/sqlite/connection.h"

#include <optional>

namespace holdfast::db {

namespace {

std::optional<EntryId> whatItTakesBack(Connection& connection, EntryId entry) {
    Query found = connection.query("SELECT undoes FROM journal_entry WHERE id = ?1", entry);
    return found.step() ? found.optionalId<EntryId>(0) : std::nullopt;
}

} // namespace

void markUndone(Connection& connection, EntryId entry, EntryId by) {
    connection.run("UPDATE journal_entry SET undone_by = ?2 WHERE id = ?1", entry, by);
    if (const auto before = whatItTakesBack(connection, entry))
        markStanding(connection, *before);
}

void markStanding(Connection& connection, EntryId entry) {
    connection.run("UPDATE journal_entry SET undone_by = NULL WHERE id = ?1", entry);
    if (const auto before = whatItTakesBack(connection, entry))
        markUndone(connection, *before, entry);
}

} // namespace holdfast::db
