// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/backups/backups_naming.h"

#include "db/disk/shop_mark.h"
#include "db/disk/staying.h"
#include "db/forgetting/personal_columns.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/failure.h"

#include <algorithm>

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

// As removeOutdated does it: each folder by itself, and what is not whole pushes no other out.
LocalDate lastDayIn(std::span<const KeptBackup> backups, const KeptBackup& which, LocalTime now) {
    if (!which.isWhole)
        return std::max(dateOf(now), dateOf(which.at) + Days{kDaysKept - 1});
    std::vector<LocalTime> times;
    std::size_t at = 0;
    for (const KeptBackup& backup : backups) {
        if (!backup.isWhole || backup.path.parent_path() != which.path.parent_path())
            continue;
        if (backup.path == which.path)
            at = times.size();
        times.push_back(backup.at);
    }
    return lastDayOf(times, at, now);
}

bool goesByItself(const KeptBackup& backup) {
    const auto mark = markOfFile(backup.path);
    return mark && !mark->wasOpened;
}

} // namespace

std::vector<BackupNaming> backupsNaming(std::span<const KeptBackup> backups,
                                        std::span<const CustomerId> rowsOfCustomer, LocalTime now,
                                        const TellProgress& progress) {
    std::vector<BackupNaming> naming;
    double looked = 0;
    for (const KeptBackup& backup : backups) {
        if (progress && !progress(looked++ / static_cast<double>(backups.size())))
            break;
        if (std::ranges::none_of(rowsOfCustomer, [&](CustomerId row) { return names(backup, row); }))
            continue;
        naming.push_back({backup, std::nullopt});
        if (goesByItself(backup))
            naming.back().lastDay = lastDayIn(backups, backup, now);
    }
    return naming;
}

} // namespace holdfast::db
