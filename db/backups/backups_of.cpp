// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/backups/backups.h"
#include "db/disk/shop_mark.h"

#include <algorithm>

namespace holdfast::db {

namespace {

// Backups of another shop, or of another laptop on the same stick, bear no other names.
void leaveOutForeign(std::vector<KeptBackup>& backups, const ShopMark& mark) {
    std::erase_if(backups, [&](const KeptBackup& backup) {
        const auto found = markOfFile(backup.path);
        return found && (!found->isOfTheShopOf(mark) || (mark.seat != 0 && found->seat != mark.seat));
    });
}

} // namespace

std::vector<KeptBackup> backupsOf(const std::filesystem::path& shop,
                                  const std::filesystem::path& secondFolder) {
    auto own = namedBackupsIn(backupFolder(shop), shop);
    auto second = secondFolder.empty() ? std::vector<KeptBackup>{} : namedBackupsIn(secondFolder, shop);
    if (auto mark = markOfFile(shop)) {
        leaveOutForeign(second, *mark);
        mark->seat = 0;
        leaveOutForeign(own, *mark);
    }
    own.insert(own.end(), second.begin(), second.end());
    std::ranges::stable_sort(own, std::greater{}, &KeptBackup::at);
    return own;
}

std::optional<std::int64_t> ordersIn(const KeptBackup& backup) {
    const auto mark = markOfFile(backup.path);
    return mark ? std::optional{mark->orders} : std::nullopt;
}

} // namespace holdfast::db
