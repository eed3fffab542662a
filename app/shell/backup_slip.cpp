// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/backup_slip.h"

#include "app/shell/file_target.h"

namespace holdfast::app {

BackupSlip::BackupSlip(ShopDesk& shopDesk, QWidget* parent)
    : FormSlip(shopDesk, tr("Back up the shop"),
               tr("The whole shop in one new file. Keep it on another disk, away from the workshop."),
               parent) {
    askForNewFile(form(), tr("Into the new file"), usualNewFile(shopDesk, {}, QStringLiteral("holdfast")),
                  tr("Where it goes"));
    beginAt("path");
    setAction(tr("Back up the shop"));
}

void BackupSlip::act() {
    if (desk().file().path().empty())
        return form().setError("path", tr("This shop has no file yet, so there is nothing to back up."));
    const std::filesystem::path target = newFileIn(form());
    if (target.empty())
        return;
    emit backupAsked(target);
}

} // namespace holdfast::app
