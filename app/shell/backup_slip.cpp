// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/backup_slip.h"

#include "app/desk/formats.h"
#include "app/shell/file_target.h"

#include <QFileInfo>

namespace holdfast::app {

namespace {

// Next to the shop, with the day in its name; a second one of the day gets a number.
QString usualTarget(const std::filesystem::path& shop, LocalDate today) {
    const QFileInfo file(QString::fromStdString(shop.string()));
    const QString stem =
        QStringLiteral("%1/%2-%3").arg(file.absolutePath(), file.completeBaseName(), words(isoDate(today)));
    QString path = stem + QStringLiteral(".holdfast");
    for (int number = 2; QFileInfo::exists(path); ++number)
        path = QStringLiteral("%1-%2.holdfast").arg(stem).arg(number);
    return path;
}

} // namespace

BackupSlip::BackupSlip(ShopDesk& shopDesk, QWidget* parent)
    : FormSlip(shopDesk, tr("Back up the shop"),
               tr("The whole shop in one new file. Keep it on another disk, away from the workshop."),
               parent) {
    askForNewFile(form(), tr("Into the new file"),
                  usualTarget(shopDesk.file().path(), shopDesk.now().today()), tr("Where it goes"));
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
