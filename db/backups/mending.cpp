// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/backups/mending.h"

#include "db/journal/shop.h"

#include "core/trade/assertion.h"
#include "db/disk/backup_folders.h"
#include "db/disk/new_file.h"
#include "db/disk/whole_copy.h"
#include "db/sqlite/connection.h"

#include <utility>

namespace holdfast::db {

namespace {

constexpr double kCopyingShare = 0.3; // the rest is mending

bool isWhole(Shop& shop) {
    const auto found = checkQuickly(shop);
    return found.ok() && found->isWhole();
}

Error stoppedMending() {
    return plainError(said("Stopped. Nothing was mended."));
}

Result<KeptBackup> keepAsItIs(Shop& shop, LocalTime now, const TellCheck& tell) {
    const std::filesystem::path folder = backupFolder(shop.path());
    if (auto made = makeFolder(folder); !made)
        return made.error();
    if (auto room = requireRoom(folder, bytesOf(shop.connection())); !room)
        return room.error();
    const auto name = freeBackupPath(folder, shop.path(), now, BackupReason::BeforeMending, isWhole(shop));
    auto file = NewFile::begin(name);
    if (!file)
        return file.error();
    const bool isCopied = copyAsItIs(shop.connection(), file->temporaryPath(), [&](int done, int all) {
        return !tell || tell(all > 0 ? kCopyingShare * done / all : 0, phrase("the backup"));
    });
    if (!isCopied)
        return stoppedMending();
    if (auto kept = file->keepAs(name); !kept)
        return kept.error();
    KeptBackup backup = *readBackupName(shop.path(), name);
    std::error_code unknown;
    backup.bytes = std::filesystem::file_size(name, unknown);
    return backup;
}

} // namespace

Result<MendedWithBackup> mendWithBackup(Shop& shop, LocalTime now, const TellCheck& tell) {
    HOLDFAST_ASSERT(!shop.path().empty());
    if (shop.isReadOnly())
        return plainError(said("This shop is open for reading only."));
    try {
        auto before = keepAsItIs(shop, now, tell);
        if (!before)
            return before.error();
        auto mended = mendShop(shop, [&](double share, Phrase words) {
            return !tell || tell(kCopyingShare + (1 - kCopyingShare) * share, words);
        });
        if (!mended)
            return mended.error();
        return MendedWithBackup{std::move(*mended), std::move(*before)};
    } catch (const SqliteFailure& failure) {
        return failure.isStopped() ? stoppedMending() : failure.error();
    }
}

} // namespace holdfast::db
