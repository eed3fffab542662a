// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/online_copy.h"

#include "db/sqlite/connection.h"

#include <sqlite3.h>

#include <chrono>
#include <memory>
#include <thread>

namespace holdfast::db {

namespace {

// About 4 MB a step: some milliseconds, so that a window that copies between events stays awake.
constexpr int kPagesAStep = 1024;
constexpr std::chrono::milliseconds kWaitWhenBusy{20};
constexpr int kMostWaits = 250;

} // namespace

bool copyOnline(Connection& from, Connection& to, const CopyProgress& progress) {
    sqlite3_backup* started = sqlite3_backup_init(to.handle(), "main", from.handle(), "main");
    if (started == nullptr)
        throw SqliteFailure::of(to.handle(), sqlite3_errcode(to.handle()));
    std::unique_ptr<sqlite3_backup, decltype(&sqlite3_backup_finish)> copying{started,
                                                                              &sqlite3_backup_finish};

    int waits = 0;
    for (;;) {
        const int code = sqlite3_backup_step(copying.get(), kPagesAStep);
        const int primary = code & 0xff;
        if (primary == SQLITE_BUSY || primary == SQLITE_LOCKED) {
            if (++waits > kMostWaits)
                throw SqliteFailure{code, sqlite3_errstr(code)};
            std::this_thread::sleep_for(kWaitWhenBusy);
            continue;
        }
        if (code != SQLITE_OK && code != SQLITE_DONE)
            throw SqliteFailure{code, sqlite3_errstr(code)};
        const int pages = sqlite3_backup_pagecount(copying.get());
        const bool goOn = !progress || progress(pages - sqlite3_backup_remaining(copying.get()), pages);
        if (code == SQLITE_DONE)
            break;
        if (!goOn)
            return false;
    }
    require(to.handle(), sqlite3_backup_finish(copying.release()));
    return true;
}

} // namespace holdfast::db
