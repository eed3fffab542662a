#include "app/shell/backup_slip.h"

#include "app/desk/formats.h"
#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"

#include <QBoxLayout>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>

namespace holdfast::app {

namespace {

// Beside the shop, with the day in its name; a second one of the day gets a number.
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

BackupSlip::BackupSlip(ShopDesk& desk, QWidget* parent)
    : Slip(parent)
    , m_desk(desk) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(kSpace16, kSpace16, kSpace16, kSpace8);
    column->setSpacing(kSpace12);
    column->addWidget(new Label(title(), Type::CardTitle));
    column->addWidget(
        (new Label(tr("A whole copy of the shop in one new file. Keep it on another disk, away from "
                      "the workshop."),
                   Type::Support, &Tokens::ink2))
            ->wrapped());
    m_path = new Field(tr("To"));
    m_path->setObjectName(QStringLiteral("backupPath"));
    m_path->setText(usualTarget(desk.file().path(), desk.now().today()));
    connect(m_path, &Field::accepted, this, &BackupSlip::start);
    connect(m_path, &Field::edited, this, [this] { m_path->setError({}); });
    column->addWidget(m_path);
    auto* browse = new Button(tr("Choose a folder"), QStringLiteral("search"));
    browse->setObjectName(QStringLiteral("backupBrowse"));
    connect(browse, &QAbstractButton::clicked, this, &BackupSlip::choosePath);
    column->addWidget(browse);
    column->addStretch();
    auto* action = new Button(tr("Back up"), Button::Kind::Primary);
    action->setObjectName(QStringLiteral("backupStart"));
    action->setKey(QKeySequence(Qt::CTRL | Qt::Key_Return));
    connect(action, &QAbstractButton::clicked, this, &BackupSlip::start);
    column->addWidget(action);
}

QString BackupSlip::title() const {
    return tr("Back up the shop");
}

void BackupSlip::begin() {
    m_path->setFocus();
    m_path->selectAll();
}

void BackupSlip::choosePath() {
    const QFileInfo now(m_path->text());
    const QString folder = QFileDialog::getExistingDirectory(
        this, tr("Where the copy goes"), now.absolutePath(), QFileDialog::DontUseNativeDialog);
    if (!folder.isEmpty())
        m_path->setText(QDir(folder).filePath(now.fileName()));
}

void BackupSlip::start() {
    const QString path = m_path->text().trimmed();
    if (path.isEmpty()) {
        m_path->setError(tr("Say where the copy goes: a folder and a new file's name."));
        return;
    }
    if (m_desk.file().path().empty()) {
        m_path->setError(tr("This shop stands in no file, so there is nothing to copy."));
        return;
    }
    if (QFileInfo::exists(path)) {
        m_path->setError(tr("There is a file of this name already. Choose another name."));
        return;
    }
    emit backupAsked(std::filesystem::path(plain(path)));
    emit finished();
}

} // namespace holdfast::app
