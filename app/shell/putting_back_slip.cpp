// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/putting_back_slip.h"

#include "app/desk/backup_words.h"
#include "app/desk/formats.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"

#include <algorithm>

namespace holdfast::app {

PuttingBackSlip::PuttingBackSlip(ShopDesk& shopDesk, const std::filesystem::path& backup, QWidget* parent)
    : FormSlip(shopDesk, tr("Put back a backup"),
               tr("The shop becomes what it was then. What is here now is kept as a backup first: putting "
                  "that one back undoes it."),
               parent)
    , m_wanted(backup)
    , m_lost(new Banner)
    , m_comesBack(new Banner) {
    auto* list = form().list("backup", tr("Backup of"), {});
    connect(list, &PickList::currentIndexChanged, this, &PuttingBackSlip::look);
    m_lost->setObjectName(QStringLiteral("wouldBeLost"));
    m_comesBack->setObjectName(QStringLiteral("wouldComeBack"));
    for (Banner* banner : {m_lost, m_comesBack}) {
        banner->hide();
        form().add(banner);
    }
    connect(&m_looking, &BackgroundWork::succeeded, this, [this] { endLook({}); });
    connect(&m_looking, &BackgroundWork::failed, this, &PuttingBackSlip::endLook);
    connect(&shopDesk.backups(), &BackupsBeside::changed, this, &PuttingBackSlip::fillList);
    beginAt("backup");
    setAction(tr("Put this backup back"));
    fillList();
    if (!shopDesk.backups().isLookedAt())
        shopDesk.backups().look();
}

// The newest that is whole, unless another was wanted; a backup more or less leaves the chosen one chosen.
void PuttingBackSlip::fillList() {
    if (const BackupShown* before = chosen())
        m_wanted = before->backup.path;
    m_backups = desk().backups().known().all;
    QVector<PickItem> items;
    const auto usual = std::ranges::find_if(
        m_backups, [](const BackupShown& each) { return each.backup.isWhole && each.orders; });
    int at = m_backups.empty()          ? -1
             : usual == m_backups.end() ? 0
                                        : static_cast<int>(usual - m_backups.begin());
    for (std::size_t each = 0; each < m_backups.size(); ++each) {
        items.append({backupTitle(m_backups[each].backup, desk().now())});
        if (m_backups[each].backup.path == m_wanted)
            at = static_cast<int>(each);
    }
    form().findChild<PickList*>(QStringLiteral("backup"))->setItems(items, at);
    if (m_backups.empty())
        action()->setCannot(desk().backups().isLookedAt() ? tr("There is no backup yet.")
                                                          : tr("The backups are being looked for."));
    else if (chosen()->backup.path != m_lookedAt)
        look();
}

const BackupShown* PuttingBackSlip::chosen() const {
    const auto* list = form().findChild<PickList*>(QStringLiteral("backup"));
    const int at = list->currentIndex();
    return at >= 0 && at < static_cast<int>(m_backups.size()) ? &m_backups[static_cast<std::size_t>(at)]
                                                              : nullptr;
}

// On a thread of its own: both journals are read.
void PuttingBackSlip::look() {
    const BackupShown* backup = chosen();
    if (backup == nullptr)
        return;
    m_isSeen = false;
    m_lost->hide();
    m_comesBack->hide();
    action()->setCannot(tr("The backup is being read."));
    if (m_looking.isBusy()) {
        m_looking.stop(); // and the one chosen since is looked at when that ends
        return;
    }
    m_lookedAt = backup->backup.path;
    m_look = std::make_shared<std::optional<db::LookAtBackup>>();
    m_looking.begin({},
                    [look = m_look, from = m_lookedAt, shop = desk().file().path()](
                        const BackgroundWork::Progress& progress) -> Result<std::string> {
                        auto found = db::lookAtBackup(from, shop, progress);
                        if (!found.ok())
                            return found.error();
                        *look = std::move(*found);
                        return std::string{};
                    });
}

void PuttingBackSlip::endLook(const QString& refusal) {
    const BackupShown* backup = chosen();
    if (backup == nullptr)
        return;
    if (backup->backup.path != m_lookedAt)
        return look();
    if (!refusal.isEmpty()) {
        action()->setCannot(refusal);
        m_lost->set(Tone::Held, tr("This backup cannot be read."), refusal);
        m_lost->show();
        return;
    }
    const db::LookAtBackup& look = **m_look;
    if (!look.isShopRead)
        m_lost->set(Tone::Caution, tr("The shop file cannot be read,"),
                    tr("so it is not known what it has beyond this backup. It stays as it is."));
    else if (look.lost.isNothing())
        m_lost->set(Tone::Ready, tr("Nothing would be lost."),
                    tr("All that was done here is in this backup too."));
    else
        m_lost->set(Tone::Caution, tr("Would be lost: %1.").arg(onlyInOneWords(look.lost)),
                    onlyInOneNewest(look.lost));
    m_lost->show();
    m_comesBack->setVisible(!look.comesBack.isNothing());
    if (!look.comesBack.isNothing())
        m_comesBack->set(Tone::Plain, tr("Would come back: %1.").arg(onlyInOneWords(look.comesBack)),
                         onlyInOneNewest(look.comesBack));
    m_isSeen = true;
    action()->setCannot({});
}

void PuttingBackSlip::act() {
    if (m_isSeen && chosen() != nullptr)
        emit puttingBackAsked(chosen()->backup.path);
}

QString onlyInOneWords(const db::OnlyInOne& only) {
    QStringList parts;
    if (const int orders = howMany(only.orders); orders > 0)
        parts.append(PuttingBackSlip::tr("%n order|%n orders", nullptr, orders));
    if (const int payments = howMany(only.payments); payments > 0)
        parts.append(PuttingBackSlip::tr("%n payment|%n payments", nullptr, payments));
    if (const int pressed = howMany(only.garmentsPressed); pressed > 0)
        parts.append(PuttingBackSlip::tr("%n garment pressed|%n garments pressed", nullptr, pressed));
    const QString entries =
        PuttingBackSlip::tr("%n thing done|%n things done", nullptr, howMany(only.entries));
    return parts.isEmpty()
               ? entries
               : PuttingBackSlip::tr("%1, in all %2").arg(parts.join(QStringLiteral(", ")), entries);
}

QString onlyInOneNewest(const db::OnlyInOne& only) {
    QStringList titles;
    for (const Sentence& title : only.newest)
        titles.append(words(title));
    const auto more = only.entries - static_cast<std::int64_t>(only.newest.size());
    const QString named = PuttingBackSlip::tr("The newest: %1").arg(titles.join(QStringLiteral("; ")));
    return more > 0 ? PuttingBackSlip::tr("%1; and %n more.", nullptr, howMany(more)).arg(named)
                    : PuttingBackSlip::tr("%1.").arg(named);
}

} // namespace holdfast::app
