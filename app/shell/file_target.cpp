// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/file_target.h"

#include "app/desk/formats.h"
#include "app/desk/shop_desk.h"
#include "app/slips/form.h"
#include "app/widgets/button.h"
#include "app/widgets/long_field.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>

namespace holdfast::app {

namespace {

class TargetWords {
    Q_DECLARE_TR_FUNCTIONS(FileTarget)
};

} // namespace

QString usualNewFile(ShopDesk& desk, const QString& what, const QString& ending) {
    const QFileInfo shop(words(desk.file().path().string()));
    QStringList parts{shop.completeBaseName(), words(isoDate(desk.now().today()))};
    if (!what.isEmpty())
        parts.insert(1, what);
    const QString stem = QDir(shop.absolutePath()).filePath(parts.join(u'-'));
    QString path = QStringLiteral("%1.%2").arg(stem, ending);
    for (int number = 2; QFileInfo::exists(path); ++number)
        path = QStringLiteral("%1-%2.%3").arg(stem).arg(number).arg(ending);
    return path;
}

void askForNewFile(Form& form, const QString& label, const QString& path, const QString& caption) {
    LongField* field = form.longLine("path", label, path);
    auto* browse = new Button(TargetWords::tr("Choose a folder"), QStringLiteral("search"));
    browse->setObjectName(QStringLiteral("browseFolder"));
    QObject::connect(browse, &QAbstractButton::clicked, field, [field, caption] {
        const QFileInfo now(field->text());
        const QString folder = QFileDialog::getExistingDirectory(field, caption, now.absolutePath(),
                                                                 QFileDialog::DontUseNativeDialog);
        if (!folder.isEmpty())
            field->setText(QDir(folder).filePath(now.fileName()));
    });
    form.add(browse);
}

std::filesystem::path newFileIn(Form& form) {
    const QString path = form.text("path");
    if (path.isEmpty())
        form.setError("path", TargetWords::tr("Say where it goes: a folder and a new file’s name."));
    else if (QFileInfo::exists(path))
        form.setError("path", TargetWords::tr("There is a file of this name already. Choose another name."));
    else if (!QFileInfo(QFileInfo(path).absolutePath()).isDir())
        form.setError("path", TargetWords::tr("There is no folder %1.").arg(QFileInfo(path).absolutePath()));
    return form.isSound() ? std::filesystem::path(plain(path)) : std::filesystem::path{};
}

} // namespace holdfast::app
