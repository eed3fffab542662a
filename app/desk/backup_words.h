// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Backups in words.

#include "app/desk/backups_beside.h"
#include "core/trade/dates.h"

#include <QString>

namespace holdfast::app {

// "today 09:14", "Sat 28 Nov 09:14", "12 Oct 2025 09:14"
QString backupTitle(const db::KeptBackup& backup, const Now& now);
// "for the day", "before news was brought in"
QString reasonWords(db::BackupReason reason);
// "412 orders, 61.4 MB", "61.4 MB, cannot be read"
QString backupContents(const BackupShown& backup);

} // namespace holdfast::app
