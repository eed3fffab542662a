// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Backups in which a customer who was forgotten still has a name.

#include "core/trade/ids.h"
#include "db/disk/kept_backup.h"

#include <span>
#include <vector>

namespace holdfast::db {

struct BackupNaming {
    KeptBackup backup;
    LocalDate lastDay{}; // on which it is still there, if one is made each day from now on
};

// Of those backups, in their order. One that cannot be read counts as holding the name.
std::vector<BackupNaming> backupsNaming(std::span<const KeptBackup> backups, CustomerId customer,
                                        LocalTime now);

} // namespace holdfast::db
