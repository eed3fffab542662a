// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/journal/shop_file.h"

#include "db/disk/backup_before_step.h"
#include "db/disk/backup_folders.h"
#include "db/disk/file_probe.h"
#include "db/disk/incarnation.h"
#include "db/disk/new_file.h"
#include "db/disk/wall_clock.h"
#include "db/journal/schema_upgrade.h"
#include "db/sqlite/page_check.h"

#include <fcntl.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cstdint>
#include <string>

namespace holdfast::db {

namespace {

// Long enough for another program's commit, short enough for a person at the desk.
constexpr int kBusyMilliseconds = 500;

// The whole file is read for it: up to this size nobody notices.
constexpr std::uintmax_t kCheckedAtOpening = 8u << 20;

using Steps = std::span<const char* const>;

std::uintmax_t sizeOf(const std::filesystem::path& path) {
    std::error_code error;
    const auto size = std::filesystem::file_size(path, error);
    return error ? 0 : size;
}

std::filesystem::path beside(std::filesystem::path path, const char* part) {
    return path += part;
}

bool hasUnmergedLog(const std::filesystem::path& path) {
    return sizeOf(beside(path, "-wal")) > 0;
}

bool keepsLogOnClose(Connection& connection, bool keeps) {
    return sqlite3_db_config(connection.handle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, keeps ? 1 : 0, nullptr) ==
           SQLITE_OK;
}

void configure(Connection& connection) {
    sqlite3_busy_timeout(connection.handle(), kBusyMilliseconds);
    connection.script("PRAGMA foreign_keys = ON;"
                      "PRAGMA synchronous = FULL;"
                      "PRAGMA secure_delete = ON;"
                      "PRAGMA temp_store = MEMORY;"
                      "PRAGMA cache_size = -16000;"
                      "PRAGMA journal_size_limit = 16777216;");
}

// Before the first table: the file can then be made smaller in the midst of its use.
constexpr const char* kGivesPagesBack = "PRAGMA auto_vacuum = INCREMENTAL";

// What SQLite says while a file is being opened, about the file rather than about an action.
Error openingError(const std::filesystem::path& path, const SqliteFailure& failure) {
    if (failure.primaryCode() == SQLITE_NOTADB)
        return notAShop(path);
    if (failure.isDamage() || failure.primaryCode() == SQLITE_ERROR) // a table of ours is missing
        return damagedShop(path);
    if (failure.isBusy())
        return plainError(
            said("Another program is using {path}. Close it there first.", {{"path", path.string()}}));
    if (failure.isOfTheDisk())
        return plainError(
            said("The disk could not be read or written. See that it is connected and has room, then "
                 "open the shop again."));
    if (failure.primaryCode() == SQLITE_FULL)
        return plainError(said("The disk is full. Make room on it, then open the shop again."));
    return failure.error();
}

// Whole, ours and not newer. Reads only.
Result<Done> examine(Connection& connection, const std::filesystem::path& path, Steps steps) {
    if (connection.number("PRAGMA application_id") != kShopApplicationId)
        return notAShop(path);
    if (appliedSteps(connection) > static_cast<int>(steps.size()))
        return fromNewerVersion(path);
    if (sizeOf(path) <= kCheckedAtOpening && !hasWholePages(connection))
        return damagedShop(path);
    if (appliedSteps(connection) < 1 || connection.number("SELECT COUNT(*) FROM seat_here") != 1)
        return damagedShop(path);
    return Done{};
}

// An older one is backed up first, among the backups that are made by themselves.
Result<Done> bringUpToDate(Connection& connection, const std::filesystem::path& path, Steps steps,
                           Instant now) {
    if (appliedSteps(connection) == static_cast<int>(steps.size()))
        return Done{};
    const auto backup = backUpBeforeStep(connection, path, wallTime(now));
    if (!backup)
        return backup.error();
    try {
        applySteps(connection, steps);
    } catch (const SqliteFailure& failure) {
        if (failure.isNotKnown())
            return plainError(said("The disk failed while the shop file was being brought up to this version "
                                   "of Holdfast. Whether it was can be seen only when the shop is opened "
                                   "again: see to the disk first. As it was before, it is in {backup}.",
                                   {{"backup", backup->string()}}));
        std::error_code left; // the file itself is still what the backup holds
        std::filesystem::remove(*backup, left);
        std::filesystem::remove(backup->parent_path(), left); // where it is empty
        return plainError(
            said("The shop file could not be brought up to this version of Holdfast, and is as it was. {why}",
                 {{"why", failure.error().message}}));
    }
    return Done{};
}

// A shop that came from a stick or by plain copying may be open to everybody on this computer. A disk that
// keeps no owners leaves it so: isReadByOthers says it.
void keepForTheOwner(const std::filesystem::path& path) {
    for (const char* part : {"", "-wal", "-shm", "-journal"})
        if (isReadByOthers(beside(path, part)))
            (void)::chmod(beside(path, part).c_str(), S_IRUSR | S_IWUSR);
}

// Of a change that a killed program had only begun to note down. SQLite has read the file by now, and so has
// taken back what was half written; notes that are still there tell of nothing that was.
void removeNotes(const std::filesystem::path& path) {
    std::error_code unknown;
    std::filesystem::remove(beside(path, "-journal"), unknown);
}

Result<std::filesystem::path> foundFile(const std::filesystem::path& path) {
    if (auto probed = probeFile(path); !probed)
        return probed.error();
    std::error_code error;
    auto canonical = std::filesystem::canonical(path, error);
    if (error)
        return plainError(said("There is no file {path}.", {{"path", path.string()}}));
    return canonical;
}

// In a folder that cannot be written to there is no room for SQLite's own notes next to the file. Where no
// log is left to be read, nobody is writing, and the file can be read as it is.
Access readingAccess(const std::filesystem::path& path) {
    const bool mayWriteBeside = faccessat(AT_FDCWD, path.parent_path().c_str(), W_OK, AT_EACCESS) == 0;
    return mayWriteBeside || hasUnmergedLog(path) ? Access::ReadOnly : Access::Immutable;
}

// What a killed program was about to write is next to the file, and only who may write can take it back.
Result<Done> takeBackHalfWritten(const std::filesystem::path& path, Steps steps) {
    if (sizeOf(beside(path, "-journal")) == 0)
        return Done{};
    if (auto writable = probeWritable(path); !writable)
        return writable;
    auto lock = ShopLock::take(path);
    if (!lock)
        return Done{}; // a window has it open, and takes back what there is to take back
    if (auto header = probeHeader(path, static_cast<int>(steps.size())); !header)
        return header;
    (void)Connection::open(path, Access::ReadWrite).number("SELECT COUNT(*) FROM sqlite_schema");
    return Done{};
}

// A new file that cannot be opened is no shop yet.
struct GoneUnlessOpened {
    std::filesystem::path path;
    bool isOpened = false;

    ~GoneUnlessOpened() {
        if (isOpened)
            return;
        for (const char* part : {"", "-wal", "-shm", "-journal"})
            ::unlink(beside(path, part).c_str());
    }
};

} // namespace

Result<ShopFile> openShopFile(const std::filesystem::path& path, Steps steps, Instant now) {
    auto found = foundFile(path);
    if (!found)
        return found.error();
    if (auto writable = probeWritable(*found); !writable)
        return writable.error();
    auto lock = ShopLock::take(*found);
    if (!lock)
        return lock.error();
    removeLeftOver(found->parent_path());
    removeLeftOver(backupFolder(*found));
    removeNamesOf(*found);
    keepForTheOwner(*found);
    if (auto header = probeHeader(*found, static_cast<int>(steps.size())); !header)
        return header.error();

    // Closing a file merges its log. One that is refused must keep both as they are.
    const bool hadLog = hasUnmergedLog(*found);
    try {
        Connection connection = Connection::open(*found, Access::ReadWrite);
        keepsLogOnClose(connection, hadLog);
        configure(connection);
        if (auto examined = examine(connection, *found, steps); !examined)
            return examined.error();
        if (auto current = bringUpToDate(connection, *found, steps, now); !current)
            return current.error();
        connection.script("PRAGMA journal_mode = WAL");
        removeNotes(*found);
        keepsLogOnClose(connection, false);
        const std::int64_t incarnation = settleIncarnation(connection, *found);
        return ShopFile{std::move(lock).value(), std::move(connection), *found, false, incarnation};
    } catch (const SqliteFailure& failure) {
        return openingError(*found, failure);
    }
}

Result<ShopFile> openShopFileReadOnly(const std::filesystem::path& path, Steps steps) {
    auto found = foundFile(path);
    if (!found)
        return found.error();
    try {
        if (auto taken = takeBackHalfWritten(*found, steps); !taken)
            return taken.error();
        Connection connection = Connection::open(*found, readingAccess(*found));
        configure(connection);
        if (auto examined = examine(connection, *found, steps); !examined)
            return examined.error();
        if (appliedSteps(connection) < static_cast<int>(steps.size()))
            return plainError(said("{found} was written by an older version of Holdfast. Open it once in the "
                                   "window, which brings it up to date and keeps a copy.",
                                   {{"found", found->string()}}));
        return ShopFile{ShopLock{}, std::move(connection), *found, true, 0};
    } catch (const SqliteFailure& failure) {
        return openingError(*found, failure);
    }
}

Result<ShopFile> openShopFileBeside(const std::filesystem::path& path) {
    try {
        Connection connection = Connection::open(path, Access::ReadWrite);
        configure(connection);
        return ShopFile{ShopLock{}, std::move(connection), path, false, 0};
    } catch (const SqliteFailure& failure) {
        return openingError(path, failure);
    }
}

Result<ShopFile> createShopFile(const std::filesystem::path& path, Steps steps) {
    std::filesystem::path wanted = std::filesystem::absolute(path).lexically_normal();
    auto file = NewFile::begin(wanted);
    if (!file)
        return file.error();
    wanted = std::filesystem::canonical(wanted.parent_path()) / wanted.filename();
    auto lock = ShopLock::take(wanted);
    if (!lock)
        return lock.error();
    try {
        {
            Connection connection = Connection::open(file->temporaryPath(), Access::ReadWrite);
            configure(connection);
            connection.script(kGivesPagesBack);
            applySteps(connection, steps);
            connection.script("PRAGMA journal_mode = WAL");
        }
        if (auto kept = file->keep(); !kept)
            return kept.error();
        GoneUnlessOpened made{wanted};
        Connection connection = Connection::open(wanted, Access::ReadWrite);
        configure(connection);
        const std::int64_t incarnation = settleIncarnation(connection, wanted);
        made.isOpened = true;
        return ShopFile{std::move(lock).value(), std::move(connection), wanted, false, incarnation};
    } catch (const SqliteFailure& failure) {
        std::error_code error;
        if (std::filesystem::exists(wanted, error)) // it cannot even be removed again
            return plainError(said("The new shop file {wanted} could not be opened, and is there all the "
                                   "same. See to the disk, then open it.",
                                   {{"wanted", wanted.string()}}));
        return failure.error();
    }
}

ShopFile createShopInMemory(Steps steps) {
    Connection connection = Connection::openInMemory();
    configure(connection);
    connection.script(kGivesPagesBack);
    applySteps(connection, steps);
    return ShopFile{ShopLock{}, std::move(connection), {}, false, 0};
}

} // namespace holdfast::db
