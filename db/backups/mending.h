// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A shop is mended, and as it was before it is kept as a backup first: mending has no undo, and what is not
// as its history says may still be what a person remembers.

#include "core/trade/result.h"
#include "db/check/mend.h"
#include "db/disk/kept_backup.h"

namespace holdfast::db {

struct MendedWithBackup {
    Mended mended;
    KeptBackup before;
};

// The backup is a copy page by page of whatever is there, and is not read: what is to be mended may not be
// readable. An error, and nothing is mended, where it cannot be made. REQUIRES: the shop has a file.
Result<MendedWithBackup> mendWithBackup(Shop& shop, LocalTime now, const TellCheck& tell = {});

} // namespace holdfast::db
