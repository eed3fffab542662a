// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/backup_folder_slip.h"

#include "app/desk/backups_beside.h"
#include "app/desk/formats.h"
#include "app/desk/machine_settings.h"
#include "app/widgets/button.h"
#include "app/widgets/long_field.h"

#include <QDir>
#include <QFileDialog>

namespace holdfast::app {

BackupFolderSlip::BackupFolderSlip(ShopDesk& shopDesk, QWidget* parent)
    : FormSlip(shopDesk, tr("Choose a second backup folder"),
               tr("On another disk, such as a stick that stays in this computer. The newest backup is copied "
                  "into a folder “Holdfast backups” in it, whenever it is there. Leave it empty for none."),
               parent) {
    auto* folder = form().longLine("folder", tr("Folder"), machineSetting(kBackupFolderSetting));
    folder->setPlaceholder(tr("the whole path"));
    form().optional("folder");
    auto* browse = new Button(tr("Choose a folder"), QStringLiteral("search"));
    browse->setObjectName(QStringLiteral("browseBackupFolder"));
    connect(browse, &QAbstractButton::clicked, this, [this, folder] {
        const QString start = folder->text().isEmpty() ? QDir::homePath() : folder->text();
        const QString chosen = QFileDialog::getExistingDirectory(this, tr("Where backups go a second time"),
                                                                 start, QFileDialog::DontUseNativeDialog);
        if (!chosen.isEmpty())
            folder->setText(chosen);
    });
    form().add(browse);
    beginAt("folder");
    setAction(tr("Use this folder"));
}

void BackupFolderSlip::act() {
    const QString typed = form().text("folder");
    if (typed.isEmpty()) {
        desk().backups().setSecondFolder({});
        desk().say(tr("Backups go into one folder only."));
        return finish();
    }
    if (!QDir::isAbsolutePath(typed))
        return form().setError("folder", tr("Say the whole path, beginning with /."));
    const std::filesystem::path chosen = plain(typed);
    if (const auto made = db::makeSecondFolder(chosen); !made.ok())
        return say(made.error());
    desk().backups().setSecondFolder(chosen);
    desk().say(tr("Backups go to %1 as well.").arg(typed));
    finish();
}

} // namespace holdfast::app
