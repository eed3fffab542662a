// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/start_backups.h"

#include "app/desk/backup_words.h"
#include "app/desk/formats.h"
#include "app/slips/pick_list.h"
#include "app/theme/measures.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/label.h"
#include "db/backups/look_at_backup.h"

#include <QVBoxLayout>

namespace holdfast::app {

namespace {

constexpr int kActionHigh = 44;

// Its own window may have it open: then nothing is wrong with it.
bool canBeRead(const std::filesystem::path& shop, const Clock& clock) {
    return db::Shop::openReadOnly(shop, clock.now).ok();
}

} // namespace

StartBackups::StartBackups(Clock clock, QWidget* parent)
    : QWidget(parent)
    , m_clock(std::move(clock))
    , m_about(new Label({}, Type::Body, &Tokens::ink2))
    , m_list(new PickList(tr("Backup of")))
    , m_contents(new Banner)
    , m_action(new Button(tr("Put this backup back"), Button::Kind::Primary)) {
    setObjectName(QStringLiteral("startBackups"));
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    auto* card = new Card(tr("Put back a backup"));
    card->pad();
    whole->addWidget(card);
    card->content()->addWidget(m_about->wrapped());
    m_list->setObjectName(QStringLiteral("startBackup"));
    card->content()->addWidget(m_list);
    m_contents->setObjectName(QStringLiteral("startBackupContents"));
    card->content()->addWidget(m_contents);
    m_action->setObjectName(QStringLiteral("startPutBack"));
    m_action->setTargetHeight(kActionHigh);
    card->content()->addWidget(m_action, 0, Qt::AlignRight);
    connect(m_list, &PickList::currentIndexChanged, this, &StartBackups::look);
    connect(m_action, &QAbstractButton::clicked, this, &StartBackups::begin);
    connect(&m_work, &BackgroundWork::succeeded, this, [this] { end({}); });
    connect(&m_work, &BackgroundWork::failed, this, &StartBackups::end);
    hide();
}

void StartBackups::offer(const std::filesystem::path& shop) {
    m_shop = std::filesystem::absolute(shop);
    m_backups = db::namedBackupsIn(db::backupFolder(m_shop), m_shop);
    if (m_backups.empty() || canBeRead(shop, m_clock))
        return hide();
    std::error_code unknown;
    const QString name = words(shop.string());
    m_about->setText(
        std::filesystem::exists(shop, unknown)
            ? tr("%1 cannot be read. It is kept as it is when a backup takes its place.").arg(name)
            : tr("%1 is gone; its backups are there.").arg(name));
    QVector<PickItem> items;
    for (const db::KeptBackup& backup : m_backups)
        items.append({backupTitle(backup, m_clock.moment())});
    m_list->setItems(items, 0);
    look();
    show();
    m_action->setFocus();
}

// The newest is a small thing to read; it is one file at a time, and nothing else goes on here.
void StartBackups::look() {
    const int at = m_list->currentIndex();
    if (at < 0)
        return;
    const db::KeptBackup& backup = m_backups[static_cast<std::size_t>(at)];
    const BackupShown shown{backup, true, false, db::ordersIn(backup)};
    const QString made = tr("Made %1.").arg(reasonWords(backup.reason));
    m_contents->set(shown.orders && backup.isWhole ? Tone::Plain : Tone::Caution, backupContents(shown),
                    backup.isWhole ? made : tr("%1 Something was found wrong in it.").arg(made));
}

void StartBackups::begin() {
    const int at = m_list->currentIndex();
    if (at < 0)
        return;
    m_prepared = std::make_shared<std::unique_ptr<db::PreparedBackup>>();
    const bool began = m_work.begin(
        {},
        [prepared = m_prepared, backup = m_backups[static_cast<std::size_t>(at)].path, shop = m_shop,
         clock = m_clock.now](const BackgroundWork::Progress& progress) -> Result<std::string> {
            auto ready = db::PreparedBackup::prepare(backup, shop, clock,
                                                     [&](double share, Phrase) { return progress(share); });
            if (!ready.ok())
                return ready.error();
            *prepared = std::make_unique<db::PreparedBackup>(std::move(ready).value());
            return std::string{};
        });
    if (began)
        m_action->setCannot(tr("The backup is being read."));
}

void StartBackups::end(const QString& refusal) {
    m_action->setCannot({});
    if (!refusal.isEmpty()) {
        m_contents->set(Tone::Held, {}, refusal);
        return;
    }
    const auto kept = (*m_prepared)->putInPlace(m_clock.moment().local());
    m_prepared.reset();
    if (!kept.ok())
        m_contents->set(Tone::Held, {}, words(kept.error().message));
    else
        emit putBack(m_shop);
}

} // namespace holdfast::app
