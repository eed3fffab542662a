// SPDX-License-Identifier: GPL-3.0-or-later
// Backups are made: copied, read as the program reads a shop, and only then given their names.
#include "db/backups/backups.h"
#include "db/disk/backup_folders.h"
#include "db/disk/new_file.h"
#include "db/disk/whole_copy.h"
#include "db/journal/schema_upgrade.h"
#include "db/journal/shop.h"

#include <algorithm>
#include <fstream>
#include <iterator>

namespace holdfast::db {

namespace {

// The copying, of the work of both; the rest is the check of the copy.
constexpr double kCopying = 0.5;

Error stoppedBackup() {
    return plainError(said("The backup was stopped. Nothing was left behind."));
}

CopyProgress toldOfCopying(const TellCheck& tell) {
    return [&tell](int done, int all) {
        return !tell || tell(all > 0 ? kCopying * done / all : 0, phrase("the backup"));
    };
}

// As the window reads it. Of an older schema only an older program reads what is in the tables.
Result<QuickFindings> readAsTheProgramDoes(const std::filesystem::path& copy, Shop& shop,
                                           const TellCheck& tell) {
    {
        Connection connection = Connection::open(copy, Access::Immutable);
        if (appliedSteps(connection) < static_cast<int>(shop.steps().size()))
            return QuickFindings{};
    }
    auto opened = Shop::openReadOnly(copy, [at = shop.now()] { return at; }, shop.steps());
    if (!opened)
        return opened.error();
    return checkQuickly(**opened, [&](double share, Phrase words) {
        return !tell || tell(kCopying + (1 - kCopying) * share, words);
    });
}

// Into the folder, under the name that `nameFor(isWhole)` gives it.
template <class NameFor>
Result<BackupMade> copyInto(const std::filesystem::path& folder, Connection& from, Shop& shop,
                            const NameFor& nameFor, const TellCheck& tell) {
    if (auto room = requireRoom(folder, bytesOf(from)); !room)
        return room.error();
    auto file = NewFile::begin(nameFor(true));
    if (!file)
        return file.error();
    const auto copied = copyWhole(from, file->temporaryPath(), toldOfCopying(tell));
    if (!copied)
        return copied.error();
    if (!*copied)
        return stoppedBackup();
    auto found = readAsTheProgramDoes(file->temporaryPath(), shop, tell);
    if (!found)
        return found.error();
    if (tell && !tell(1, phrase("the backup")))
        return stoppedBackup();
    const std::filesystem::path name = nameFor(found->isWhole());
    if (auto kept = file->keepAs(name); !kept)
        return kept.error();
    BackupMade made{*readBackupName(shop.path(), name), std::move(*found)};
    std::error_code unknown;
    made.backup.bytes = std::filesystem::file_size(name, unknown);
    return made;
}

// Of this laptop, in whatever folder.
ShopMark ownMark(Shop& shop) {
    return markIn(shop.connection());
}

// In its own folder also what it made when it was another laptop's.
ShopMark markOfOwnFolder(Shop& shop) {
    ShopMark mark = ownMark(shop);
    mark.seat = 0;
    return mark;
}

} // namespace

Result<BackupMade> makeBackup(Shop& shop, BackupReason reason, LocalTime now, const TellCheck& tell) {
    const std::filesystem::path folder = backupFolder(shop.path());
    if (auto made = makeFolder(folder); !made)
        return made.error();
    try {
        auto made = copyInto(
            folder, shop.connection(), shop,
            [&](bool isWhole) { return freeBackupPath(folder, shop.path(), now, reason, isWhole); }, tell);
        if (made)
            removeOutdated(folder, shop.path(), markOfOwnFolder(shop), now);
        return made;
    } catch (const SqliteFailure& failure) {
        return failure.isStopped() ? stoppedBackup() : failure.error();
    }
}

Result<std::filesystem::path> makeSecondFolder(const std::filesystem::path& chosen) {
    std::error_code unknown;
    if (!std::filesystem::is_directory(chosen, unknown))
        return fieldError("folder", said("There is no folder {chosen}.", {{"chosen", chosen.string()}}));
    const auto folder = secondBackupFolder(chosen);
    if (auto made = makeFolder(folder); !made)
        return fieldError("folder", made.error().message);
    return folder;
}

Result<std::optional<KeptBackup>> copyToSecondFolder(Shop& shop, const std::filesystem::path& secondFolder,
                                                     LocalTime now, const TellCheck& tell) {
    std::error_code unknown;
    if (!std::filesystem::is_directory(secondFolder, unknown))
        return plainError(said("The folder {folder} is not there.", {{"folder", secondFolder.string()}}));
    const auto own = namedBackupsIn(backupFolder(shop.path()), shop.path());
    const auto newest =
        std::ranges::find_if(own, [&](const KeptBackup& each) { return each.isWhole && each.at <= now; });
    if (newest == own.end())
        return std::optional<KeptBackup>{};
    const auto target = secondFolder / newest->path.filename();
    if (std::filesystem::exists(std::filesystem::symlink_status(target)))
        return std::optional<KeptBackup>{};
    try {
        Connection from = Connection::open(newest->path, Access::Immutable);
        auto made = copyInto(secondFolder, from, shop, [&](bool) { return target; }, tell);
        if (!made)
            return made.error();
        removeOutdated(secondFolder, shop.path(), ownMark(shop), now);
        return std::optional{made->backup};
    } catch (const SqliteFailure& failure) {
        return failure.isStopped() ? stoppedBackup() : failure.error();
    }
}

} // namespace holdfast::db
