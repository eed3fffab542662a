// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/schema_upgrade.h"

#include "db/disk/file_probe.h"
#include "db/journal/carried_entry.h"
#include "db/journal/line.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/foreign_keys.h"
#include "db/sqlite/transaction.h"

#include <string>

namespace holdfast::db {

namespace {

bool hasSeals(Connection& connection) {
    return connection.number("SELECT COUNT(*) FROM sqlite_schema WHERE name = 'journal_seal'") == 1;
}

} // namespace

int appliedSteps(Connection& connection) {
    return static_cast<int>(connection.number("PRAGMA user_version"));
}

void applySteps(Connection& connection, std::span<const char* const> steps) {
    // A step that rebuilds a table must be able to drop the old one while others refer to it.
    const ForeignKeysOff unchecked{connection};
    Transaction transaction{connection};
    const bool hadSeals = hasSeals(connection);
    for (std::size_t step = static_cast<std::size_t>(appliedSteps(connection)); step < steps.size(); ++step)
        connection.script(steps[step]);
    if (!hadSeals && hasSeals(connection)) {
        sealUnsealed(connection);
        markLine(connection);
    }
    if (connection.query("PRAGMA foreign_key_check").step())
        throw SqliteFailure::inWords(said("A row would refer to one that is not there."));
    connection.script("PRAGMA application_id = " + std::to_string(kShopApplicationId));
    connection.script("PRAGMA user_version = " + std::to_string(steps.size()));
    transaction.commit();
}

} // namespace holdfast::db
