// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Backups in which a customer still has a name: of one who was forgotten, or is about to be.

#include "core/trade/ids.h"
#include "db/disk/kept_backup.h"
#include "db/journal/shop.h"

#include <optional>
#include <span>
#include <vector>

namespace holdfast::db {

struct BackupNaming {
    KeptBackup backup;
    // The last day on which it is still there, if one is made each day from now on. None: it does not go by
    // itself, for somebody worked in it, or it cannot be read.
    std::optional<LocalDate> lastDay;
};

// Of those backups, in their order. One that cannot be read counts as holding the name. Stopped, those that
// were looked at by then.
// Those that have any of the customer's rows by name.
std::vector<BackupNaming> backupsNaming(std::span<const KeptBackup> backups,
                                        std::span<const CustomerId> rowsOfCustomer, LocalTime now,
                                        const TellProgress& progress = {});

} // namespace holdfast::db
