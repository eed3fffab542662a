// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/disk/whole_copy.h"

#include "db/disk/incarnation.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/page_check.h"

namespace holdfast::db {

namespace {

// By itself a copy needs no log next to it, and can be read where nothing can be written. It is no longer the
// file it was copied from: whoever opens it goes on as another.
void settleCopy(Connection& copy) {
    copy.script("PRAGMA journal_mode = DELETE");
    if (copy.number("SELECT COUNT(*) FROM pragma_table_info('seat_here') WHERE name = 'incarnation'") > 0)
        dropIncarnation(copy);
}

} // namespace

std::uintmax_t bytesOf(Connection& connection) {
    return static_cast<std::uintmax_t>(connection.number("PRAGMA page_count")) *
           static_cast<std::uintmax_t>(connection.number("PRAGMA page_size"));
}

bool copyAsItIs(Connection& from, const std::filesystem::path& to, const CopyProgress& progress) {
    Connection copy = Connection::open(to, Access::ReadWrite);
    if (!copyOnline(from, copy, progress))
        return false;
    try {
        settleCopy(copy);
    } catch (const SqliteFailure&) {
        // What cannot be written to is another file all the same once it is put back.
    }
    return true;
}

Result<bool> copyWhole(Connection& from, const std::filesystem::path& to, const CopyProgress& progress) {
    Connection copy = Connection::open(to, Access::ReadWrite);
    if (!copyOnline(from, copy, progress))
        return false;
    settleCopy(copy);
    if (!hasWholePages(copy))
        return plainError(
            said("The backup could not be read after it was copied, so it was not kept. Check the "
                 "shop file and the disk; the earlier backups stay."));
    return true;
}

} // namespace holdfast::db
