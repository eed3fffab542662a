// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/disk/backup_folders.h"

#include "core/trade/unit_words.h"
#include "db/disk/new_file.h"
#include "db/disk/staying.h"

#include <sys/stat.h>
#include <sys/statvfs.h>

#include <cerrno>

namespace holdfast::db {

namespace {

constexpr mode_t kFolderOfOwner = 0700;
// So that the shop itself, its log and whatever else goes on have room too.
constexpr std::uintmax_t kSpared = 8u << 20;
constexpr double kMegabyte = 1e6;

Error notMade(const std::filesystem::path& folder, int reason) {
    if (reason == ENOSPC || reason == EDQUOT)
        return plainError(said("The disk is full: there is no room for the folder {folder}.",
                               {{"folder", folder.string()}}));
    if (reason == ENOENT || reason == ENOTDIR)
        return plainError(said("There is no folder {folder}.", {{"folder", folder.parent_path().string()}}));
    return plainError(said("The folder {folder} cannot be made: see who may write to {parent}.",
                           {{"folder", folder.string()}, {"parent", folder.parent_path().string()}}));
}

void removeAll(const std::vector<KeptBackup>& backups, const ShopMark& mark) {
    for (const KeptBackup& backup : backups)
        if (isOursToRemove(backup, mark))
            removeWithWhatIsBeside(backup.path);
}

} // namespace

Result<Done> makeFolder(const std::filesystem::path& folder) {
    std::error_code unknown;
    if (std::filesystem::is_directory(folder, unknown))
        return Done{};
    if (::mkdir(folder.c_str(), kFolderOfOwner) != 0)
        return errno == EEXIST
                   ? plainError(said(
                         "{folder} is not a folder. Move it away: backups go into a folder of that name.",
                         {{"folder", folder.string()}}))
                   : notMade(folder, errno);
    return Done{};
}

Result<Done> requireRoom(const std::filesystem::path& folder, std::uintmax_t bytes) {
    struct statvfs disk{};
    if (::statvfs(folder.c_str(), &disk) != 0)
        return plainError(said("There is no folder {folder}.", {{"folder", folder.string()}}));
    const std::uintmax_t free = std::uintmax_t{disk.f_bavail} * disk.f_frsize;
    if (free >= kSpared && free - kSpared >= bytes)
        return Done{};
    return plainError(
        said("There is no room for a backup of {bytes} in the folder {folder}: {free} are free.",
             {{"bytes", bytesWords(bytes)}, {"folder", folder.string()}, {"free", bytesWords(free)}}));
}

void removeNamesOf(const std::filesystem::path& shop) {
    std::error_code unknown;
    if (std::filesystem::hard_link_count(shop, unknown) < 2)
        return;
    for (const KeptBackup& backup : namedBackupsIn(backupFolder(shop), shop))
        if (std::filesystem::equivalent(backup.path, shop, unknown))
            std::filesystem::remove(backup.path, unknown);
}

std::string bytesWords(std::uintmax_t bytes) {
    return numberWords(static_cast<double>(bytes) / kMegabyte) + " MB";
}

bool isOursToRemove(const KeptBackup& backup, const ShopMark& mark) {
    const auto found = markOfFile(backup.path);
    const bool isOfTheLaptop = found && (mark.seat == 0 || found->seat == mark.seat);
    return isOfTheLaptop && !found->wasOpened && found->isOfTheShopOf(mark);
}

void removeOutdated(const std::filesystem::path& folder, const std::filesystem::path& shop,
                    const ShopMark& mark, LocalTime now) {
    std::vector<KeptBackup> whole;
    std::vector<KeptBackup> gone;
    bool isNewestOdd = true;
    for (KeptBackup& backup : namedBackupsIn(folder, shop)) {
        if (backup.isWhole) {
            whole.push_back(std::move(backup));
        } else {
            if (!isNewestOdd || dateOf(backup.at) <= dateOf(now) - Days{kDaysKept})
                gone.push_back(std::move(backup));
            isNewestOdd = false;
        }
    }
    std::vector<LocalTime> times;
    for (const KeptBackup& backup : whole)
        times.push_back(backup.at);
    const std::vector<bool> stays = whichStay(times, now);
    for (std::size_t at = 0; at < whole.size(); ++at)
        if (!stays[at])
            gone.push_back(std::move(whole[at]));
    removeAll(gone, mark);
}

} // namespace holdfast::db
