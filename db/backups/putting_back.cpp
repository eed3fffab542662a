// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/backups/putting_back.h"

#include "db/disk/backup_folders.h"
#include "db/disk/file_probe.h"
#include "db/disk/incarnation.h"
#include "db/disk/shop_lock.h"
#include "db/journal/schema_upgrade.h"
#include "db/sqlite/online_copy.h"

#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <optional>
#include <utility>

namespace holdfast::db {

namespace {

constexpr double kReading = 0.4; // the copying; then the copy is checked, and then the shop
constexpr double kReadingBoth = 0.7;
// Of numbers that nobody knows any more a full hundred and a hundred more are passed over.
constexpr std::int64_t kNumbersPassedOver = 100;

struct Numbers {
    std::int64_t seat = 0;
    std::int64_t next = 0;
};

std::optional<Numbers> numbersIn(Connection& connection) {
    Query here = connection.query("SELECT seat_id, next_order_number FROM seat_here");
    return here.step() ? std::optional{Numbers{here.integer(0), here.integer(1)}} : std::nullopt;
}

std::optional<Numbers> numbersOf(const std::filesystem::path& shop) {
    try {
        Connection present = Connection::open(shop, Access::ReadOnly);
        return numbersIn(present);
    } catch (const SqliteFailure&) {
        return std::nullopt;
    }
}

// So that no number comes twice, also where nobody can read any more which were given.
void goOnAboveNumbersOf(const std::filesystem::path& shop, Connection& copy) {
    const auto here = numbersIn(copy);
    if (!here)
        throw SqliteFailure::inWords(said("The backup is damaged: it does not say which laptop it is of."));
    const auto present = numbersOf(shop);
    std::int64_t next = here->next;
    if (!present)
        next = ((here->next - 1) / kNumbersPassedOver + 2) * kNumbersPassedOver + 1;
    else if (present->seat == here->seat)
        next = std::max(next, present->next);
    copy.run("UPDATE seat_here SET next_order_number = MAX(next_order_number, MIN(?1, "
             "(SELECT last_order_number + 1 FROM seat WHERE seat.id = seat_id)))",
             next);
}

Result<Done> copyForPuttingBack(const std::filesystem::path& backup, const std::filesystem::path& shop,
                                const std::filesystem::path& to, const TellCheck& tell, Shop::Steps steps) {
    Connection from = Connection::open(backup, Access::Untrusted);
    const auto bytes = static_cast<std::uintmax_t>(from.number("PRAGMA page_count")) *
                       static_cast<std::uintmax_t>(from.number("PRAGMA page_size"));
    if (auto room = requireRoom(shop.parent_path(), bytes); !room)
        return room;
    Connection copy = Connection::open(to, Access::ReadWrite);
    const bool isCopied = copyOnline(from, copy, [&tell](int done, int all) {
        return !tell || tell(all > 0 ? kReading * done / all : 0, phrase("the backup"));
    });
    if (!isCopied)
        return plainError(said("Stopped. Nothing was put back."));
    copy.script("PRAGMA journal_mode = DELETE");
    if (appliedSteps(copy) < static_cast<int>(steps.size()))
        applySteps(copy, steps);
    dropIncarnation(copy);
    goOnAboveNumbersOf(shop, copy);
    return Done{};
}

Result<QuickFindings> checkedFrom(const std::filesystem::path& path, const Clock& clock, double begun,
                                  double share, const TellCheck& tell, Shop::Steps steps) {
    auto opened = Shop::openReadOnly(path, clock, steps);
    if (!opened)
        return opened.error();
    return checkQuickly(**opened,
                        [&](double of, Phrase words) { return !tell || tell(begun + share * of, words); });
}

std::filesystem::path withEnd(std::filesystem::path path, const char* end) {
    return path += end;
}

// The file alone, with its log merged, and no longer the one it was: whoever opens it again goes on as
// another. False where it cannot be read; then it is kept as it is.
bool settlePresent(const std::filesystem::path& shop, int newestStep) {
    if (!probeHeader(shop, newestStep).ok())
        return false;
    try {
        Connection present = Connection::open(shop, Access::ReadWrite);
        present.script("PRAGMA journal_mode = DELETE");
        dropIncarnation(present);
        return true;
    } catch (const SqliteFailure&) {
        return false;
    }
}

// What of a file that cannot be read was written last is in its log.
void moveLogs(const std::filesystem::path& from, const std::filesystem::path& to) {
    for (const char* end : {"-wal", "-journal"})
        ::rename(withEnd(from, end).c_str(), withEnd(to, end).c_str());
}

// Under another name as well: no byte is copied. A disk without such links gets a copy.
Result<Done> keepUnder(const std::filesystem::path& shop, const std::filesystem::path& name) {
    if (::link(shop.c_str(), name.c_str()) == 0)
        return Done{};
    std::error_code error;
    const std::uintmax_t bytes = std::filesystem::file_size(shop, error);
    if (auto room = requireRoom(name.parent_path(), bytes); !room)
        return room;
    auto file = NewFile::begin(name);
    if (!file)
        return file.error();
    std::filesystem::copy_file(shop, file->temporaryPath(), std::filesystem::copy_options::overwrite_existing,
                               error);
    if (error)
        return plainError(said("The shop as it is could not be kept in {folder}, so nothing was put back.",
                               {{"folder", name.parent_path().string()}}));
    return file->keep();
}

} // namespace

PreparedBackup::PreparedBackup(NewFile file, std::filesystem::path backup, std::filesystem::path shop)
    : m_file(std::move(file))
    , m_backup(std::move(backup))
    , m_shop(std::move(shop)) {}

Result<PreparedBackup> PreparedBackup::prepare(const std::filesystem::path& backup,
                                               const std::filesystem::path& shop, const Clock& clock,
                                               const TellCheck& tell, Shop::Steps steps) {
    if (auto probed = probeFile(backup); !probed)
        return probed.error();
    if (auto header = probeHeader(backup, static_cast<int>(steps.size())); !header)
        return header.error();
    auto file = NewFile::begin(withEnd(shop, ".put-back"));
    if (!file)
        return file.error();
    const std::filesystem::path copy = file->temporaryPath();
    PreparedBackup prepared{std::move(file).value(), backup, shop};
    prepared.m_newestStep = static_cast<int>(steps.size());
    try {
        if (auto copied = copyForPuttingBack(backup, shop, copy, tell, steps); !copied)
            return copied.error();
    } catch (const SqliteFailure& failure) {
        return failure.isDamage() ? damagedShop(backup) : failure.error();
    }
    auto found = checkedFrom(copy, clock, kReading, kReadingBoth - kReading, tell, steps);
    if (!found)
        return found.error();
    prepared.m_found = std::move(*found);
    // A shop that cannot be read is kept all the same.
    const auto present = checkedFrom(shop, clock, kReadingBoth, 1 - kReadingBoth, tell, steps);
    prepared.m_isPresentWhole = present.ok() && present->isWhole();
    if (tell && !tell(1, phrase("the backup")))
        return plainError(said("Stopped. Nothing was put back."));
    return prepared;
}

Result<KeptBackup> PreparedBackup::putInPlace(LocalTime now) {
    auto lock = ShopLock::take(m_shop);
    if (!lock)
        return lock.error();
    KeptBackup kept;
    std::error_code unknown;
    if (std::filesystem::exists(std::filesystem::symlink_status(m_shop, unknown))) {
        const auto folder = backupFolder(m_shop);
        if (auto made = makeFolder(folder); !made)
            return made.error();
        const bool isRead = settlePresent(m_shop, m_newestStep);
        const auto name =
            freeBackupPath(folder, m_shop, now, BackupReason::BeforePuttingBack, isRead && m_isPresentWhole);
        if (auto held = keepUnder(m_shop, name); !held)
            return held.error();
        moveLogs(m_shop, name);
        ::unlink(withEnd(m_shop, "-shm").c_str());
        kept = *readBackupName(m_shop, name);
        kept.bytes = std::filesystem::file_size(name, unknown);
    }
    if (auto placed = m_file.replace(m_shop); !placed) {
        if (!kept.path.empty()) {
            moveLogs(kept.path, m_shop);
            ::unlink(kept.path.c_str());
        }
        return placed.error();
    }
    return kept;
}

} // namespace holdfast::db
