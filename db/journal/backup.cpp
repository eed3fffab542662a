// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/backup.h"

#include "db/disk/new_file.h"
#include "db/journal/shop.h"
#include "db/sqlite/page_check.h"

namespace holdfast::db {

Result<Done> backup(Shop& shop, const std::filesystem::path& path, const CopyProgress& progress) {
    auto file = NewFile::begin(path);
    if (!file)
        return file.error();
    try {
        Connection copy = Connection::open(file->temporaryPath(), Access::ReadWrite);
        if (!copyOnline(shop.connection(), copy, progress))
            return plainError(said("The backup was stopped. Nothing was left behind."));
        // A backup of a damaged file would push the last good one aside.
        if (!hasWholePages(copy))
            return plainError(
                said("The shop file is damaged, so no backup was made of it. Keep the older ones."));
    } catch (const SqliteFailure& failure) {
        return failure.error();
    }
    return file->keep();
}

} // namespace holdfast::db
