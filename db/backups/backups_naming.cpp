// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/backups/backups_naming.h"

#include "db/disk/staying.h"
#include "db/forgetting/personal_columns.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/failure.h"

namespace holdfast::db {

namespace {

// A backup of before schema step 11 cannot know.
bool isForgottenIn(Connection& file, CustomerId customer) {
    return file.number("SELECT COUNT(*) FROM sqlite_schema WHERE name = 'forgotten_customer'") > 0 &&
           file.number("SELECT COUNT(*) FROM forgotten_customer WHERE customer_id = ?1", customer) > 0;
}

// As a row, or in the history alone where the row is gone.
bool names(const KeptBackup& backup, CustomerId customer) {
    try {
        Connection file = Connection::open(backup.path, Access::ReadOnly);
        Query row = file.query("SELECT name FROM customer WHERE id = ?1", customer);
        if (row.step())
            return row.text(0) != kForgottenName;
        if (isForgottenIn(file, customer))
            return false;
        return file.number("SELECT EXISTS (SELECT 1 FROM journal_subject WHERE kind = 'customer' "
                           "AND subject_id = ?1)",
                           customer) != 0;
    } catch (const SqliteFailure&) {
        return true;
    }
}

} // namespace

std::vector<BackupNaming> backupsNaming(std::span<const KeptBackup> backups, CustomerId customer,
                                        LocalTime now) {
    std::vector<LocalTime> times;
    for (const KeptBackup& backup : backups)
        times.push_back(backup.at);
    std::vector<BackupNaming> naming;
    for (std::size_t at = 0; at < backups.size(); ++at)
        if (names(backups[at], customer))
            naming.push_back({backups[at], lastDayOf(times, at, now)});
    return naming;
}

} // namespace holdfast::db
