// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/tour_backups.h"

namespace holdfast::app {

BackupsKnown backupsForPictures(const Now& now) {
    const std::filesystem::path folder = "/home/maker/.local/share/holdfast/shop backups";
    BackupsKnown known;
    known.secondFolder = db::secondBackupFolder("/media/maker/stick");
    const auto add = [&](int daysAgo, std::chrono::minutes time, db::BackupReason reason, int orders) {
        db::KeptBackup backup;
        backup.at = LocalTime{now.today() - Days{daysAgo}} + time;
        backup.reason = reason;
        backup.path = db::freeBackupPath(folder, "shop.holdfast", backup.at, reason, true);
        backup.bytes = static_cast<std::uintmax_t>(orders) * 15'000;
        known.all.push_back({backup, true, false, orders});
    };
    add(0, Minutes{8 * 60 + 52}, db::BackupReason::OfTheDay, 131);
    add(1, Minutes{8 * 60 + 47}, db::BackupReason::OfTheDay, 129);
    add(3, Minutes{18 * 60 + 5}, db::BackupReason::BeforeNews, 118);
    for (const int daysAgo : {3, 4, 5, 11, 18, 25, 55, 86})
        add(daysAgo, Minutes{8 * 60 + 40 + daysAgo % 7}, db::BackupReason::OfTheDay, 118 - daysAgo);
    return known;
}

} // namespace holdfast::app
