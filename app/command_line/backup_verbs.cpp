// SPDX-License-Identifier: GPL-3.0-or-later
// The backups that are made by themselves: listed, and one put back.
#include "app/command_line/verbs.h"
#include "app/desk/backup_words.h"
#include "app/desk/formats.h"
#include "app/shell/shop_paths.h"
#include "core/trade/unit_words.h"
#include "db/backups/look_at_backup.h"
#include "db/backups/putting_back.h"

namespace holdfast::app {

namespace {

std::string countsOf(const db::OnlyInOne& only) {
    std::string words;
    const auto add = [&words](std::int64_t count, const char* one) {
        if (count > 0)
            words += (words.empty() ? "" : ", ") + countWords(count, one);
    };
    add(only.orders, "order");
    add(only.payments, "payment");
    add(only.garmentsPressed, "pressed garment");
    return words + (words.empty() ? "" : ", in all ") + std::to_string(only.entries) +
           (only.entries == 1 ? " entry of the history" : " entries of the history");
}

std::string titlesOf(const db::OnlyInOne& only) {
    std::string lines;
    for (const Sentence& title : only.newest)
        lines += "\n  " + title.english();
    const auto more = only.entries - static_cast<std::int64_t>(only.newest.size());
    return more > 0 ? lines + "\n  and " + std::to_string(more) + " more" : lines;
}

std::string whatWouldBeLost(const db::LookAtBackup& look) {
    if (!look.isShopRead)
        return "The shop file cannot be read, so it is not known what would be lost. It would stay as it is.";
    std::string words = look.lost.isNothing()
                            ? "Nothing would be lost."
                            : "Would be lost: " + countsOf(look.lost) + "." + titlesOf(look.lost);
    if (!look.comesBack.isNothing())
        words += "\nWould come back: " + countsOf(look.comesBack) + "." + titlesOf(look.comesBack);
    return words;
}

} // namespace

Result<std::string> listBackups(const Arguments& arguments, const Clock& clock) {
    const auto path = shopPath(arguments, clock);
    if (!path.ok())
        return path.error();
    const auto backups = db::backupsOf(*path, secondBackupFolder());
    if (backups.empty())
        return std::string{"There is no backup yet.\n"};
    std::string lines;
    for (const db::KeptBackup& backup : backups) {
        const BackupShown shown{backup, false, false, db::ordersIn(backup)};
        lines += isoLocalMinute(backup.at) + "  " + backup.path.string() + "\n                  " +
                 plain(backupContents(shown)) + ", made " + plain(reasonWords(backup.reason)) +
                 (backup.isWhole ? "\n" : ", not whole\n");
    }
    return lines;
}

Result<std::string> putBack(const Arguments& arguments, const Clock& clock) {
    if (arguments.isDemo)
        return plainError(said("The demo is made again each day: nothing is put back there."));
    const auto path = shopPath(arguments, clock);
    if (!path.ok())
        return path.error();
    const std::filesystem::path shop = std::filesystem::absolute(*path);
    if (!arguments.isSure) {
        const auto look = db::lookAtBackup(arguments.target, shop);
        if (!look.ok())
            return look.error();
        return plainError(
            said("{lost}Nothing was put back yet: add --yes, and what is there now is kept as a backup.",
                 {{"lost", whatWouldBeLost(*look) + "\n"}}));
    }
    auto prepared = db::PreparedBackup::prepare(arguments.target, shop, clock.now);
    if (!prepared.ok())
        return prepared.error();
    const auto kept = prepared->putInPlace(clock.moment().local());
    if (!kept.ok())
        return kept.error();
    return "Put back. " + (kept->path.empty()
                               ? std::string{"There was no file before.\n"}
                               : "What was there before is kept in " + kept->path.string() + "\n");
}

} // namespace holdfast::app
