// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/backup_words.h"
#include "app/desk/formats.h"
#include "app/places/back_room/file_sheets.h"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>

namespace holdfast::app {

namespace {

// Longer without a copy is worth a word. Common practice, no source.
constexpr Days kCopiedLately{7};

class CopyLines {
    Q_DECLARE_TR_FUNCTIONS(BackRoom)

public:
    CopyLines(const ReckonedShop& shop, const RoomFile& file)
        : m_shop(shop)
        , m_file(file) {}

    RoomSheet sheet() const {
        RoomSheet sheet;
        sheet.title = tr("The file and its backups");
        sheet.intro = tr("One file holds the shop. A backup on another disk, away from the workshop, "
                         "survives fire, theft and a spilt cup.");
        sheet.summary = summary();
        sheet.lines.append(where());
        sheet.lines.append(copiedByHand());
        if (!m_shop.facts.unread.empty())
            sheet.lines.append(wrong());
        addBackups(sheet);
        sheet.lines.append(heading(tr("When the file is damaged")));
        sheet.lines.append(mend());
        sheet.lines.append(save());
        sheet.lines.append(heading(tr("For other programs")));
        sheet.lines.append(dueDays());
        addActs(sheet);
        return sheet;
    }

private:
    static RoomLine heading(const QString& words) {
        RoomLine line;
        line.isHeading = true;
        line.name = words;
        return line;
    }

    static QString ago(Days days) {
        if (days.count() <= 0)
            return tr("today");
        return days.count() == 1 ? tr("yesterday") : tr("%1 ago").arg(dayCount(days));
    }

    static void setState(RoomLine& line, bool isWell, const QString& words) {
        line.tone = isWell ? Tone::Ready : Tone::Caution;
        line.stateIcon = isWell ? QStringLiteral("done") : QStringLiteral("caution");
        line.state = words;
    }

    // ── the file, and copies by hand ──
    QString summary() const {
        if (m_file.backups && m_file.makesBackups) {
            const BackupsKnown& backups = *m_file.backups;
            if (!backups.secondFolder.empty() && !backups.isSecondThere)
                return tr("second folder not there");
            if (const auto days = daysSinceWhole())
                return tr("backed up %1").arg(ago(*days));
        }
        return m_file.lastBackup ? tr("backed up by hand %1").arg(ago(daysSinceCopied()))
                                 : tr("no backup yet");
    }

    Days daysSinceCopied() const {
        return std::chrono::floor<Days>(m_shop.now.instant - m_file.lastBackup->at);
    }

    RoomLine where() const {
        RoomLine line;
        line.name = tr("The shop’s file");
        line.text = m_file.path.empty()
                        ? tr("This shop has no file yet.")
                        : tr("%1\n%2").arg(words(m_file.path.string()),
                                           QLocale().formattedDataSize(static_cast<qint64>(m_file.bytes), 1));
        if (m_file.isReadByOthers) {
            setState(line, false, tr("others can read it"));
            line.text += tr("\nOthers with an account on this computer can read the names and phone numbers "
                            "in it. Holdfast puts that right when it opens a shop; on a stick that does not "
                            "note whose a file is it cannot.");
        }
        line.offer = tr("Check file");
        line.deed = Errand::CheckFile;
        return line;
    }

    // A copy elsewhere is a caution only where no second folder has one.
    RoomLine copiedByHand() const {
        RoomLine line;
        line.name = tr("Last backed up by hand");
        line.offer = tr("Back up");
        line.deed = Errand::BackUp;
        const bool isCopiedElsewhere =
            m_file.backups && m_file.backups->isSecondThere && m_file.backups->secondRefusal.empty();
        if (!m_file.lastBackup) {
            line.text = tr("Never, as far as this laptop knows.");
            if (!isCopiedElsewhere)
                setState(line, false, tr("no backup"));
            return line;
        }
        const LocalTime when = m_shop.now.toLocal(m_file.lastBackup->at);
        line.text =
            tr("%1 %2\n%3").arg(date(dateOf(when)), clock(when), words(m_file.lastBackup->path.string()));
        const Days since = daysSinceCopied();
        if (since <= kCopiedLately || !isCopiedElsewhere)
            setState(line, since <= kCopiedLately, ago(since));
        return line;
    }

    static RoomLine mend() {
        RoomLine line;
        line.name = tr("Mend the file");
        line.text = tr("Writes rows again as their history has them where they are not, and makes the lines "
                       "of the order book and the search again.");
        line.offer = tr("Mend file");
        line.deed = Errand::MendFile;
        return line;
    }

    static RoomLine save() {
        RoomLine line;
        line.name = tr("Save what can be saved");
        line.text = tr("Brings what can be read of a damaged file into a new one next to it, and says what "
                       "could not be.");
        line.offer = tr("Save to a new file");
        line.deed = Errand::SaveWhatCanBe;
        return line;
    }

    static RoomLine dueDays() {
        RoomLine line;
        line.name = tr("Due days");
        line.text = tr("The promised day of each open order in a file that any calendar can open.");
        line.offer = tr("Save the due days");
        line.deed = Errand::SaveDueDays;
        return line;
    }

    RoomLine wrong() const {
        RoomLine line;
        line.name = tr("What is wrong in it");
        line.text = tr("Rows that cannot be read are left out of every list and every sum.");
        line.tone = Tone::Held;
        line.stateIcon = QStringLiteral("hold");
        line.state = tr("%1 left out").arg(m_shop.facts.unread.size());
        line.offer = tr("Show rows");
        line.deed = Errand::ShowWrong;
        return line;
    }

    // ── backups that are made by themselves ──
    std::optional<Days> daysSinceWhole() const {
        for (const BackupShown& each : m_file.backups->all)
            if (each.backup.isWhole && dateOf(each.backup.at) <= m_shop.now.today())
                return m_shop.now.today() - dateOf(each.backup.at);
        return std::nullopt;
    }

    void addBackups(RoomSheet& sheet) const {
        sheet.lines.append(heading(tr("Backups made by themselves")));
        if (!m_file.makesBackups) {
            RoomLine none;
            none.name = tr("None here");
            none.text = tr("The demo, and a shop that is open for reading only, make none.");
            sheet.lines.append(none);
        } else {
            sheet.lines.append(ownFolder());
        }
        sheet.lines.append(secondFolder());
        if (!m_file.backups)
            return;
        for (const BackupShown& each : m_file.backups->all)
            sheet.lines.append(backup(each));
    }

    RoomLine ownFolder() const {
        RoomLine line;
        line.name = tr("Folder");
        line.text = words(db::backupFolder(m_file.path).string());
        line.detail =
            tr("One a day, and one before news is brought in or a backup is put back. All of the last 14 "
               "days are kept, then one a week for 8 weeks and one a month for 12 months.");
        if (!m_file.backups)
            return line;
        const Sentence& refusal = m_file.backups->refusal;
        const auto days = daysSinceWhole();
        if (!refusal.empty()) {
            line.detail = words(refusal);
            setState(line, false, tr("none today"));
        } else if (days) {
            setState(line, days->count() <= 1, ago(*days));
        }
        return line;
    }

    RoomLine secondFolder() const {
        RoomLine line;
        line.name = tr("Second folder");
        line.deed = Errand::ChooseBackupFolder;
        line.offer = tr("Choose a folder");
        if (!m_file.backups || m_file.backups->secondFolder.empty()) {
            line.text =
                m_file.backups
                    ? tr("None. Backups on another disk, such as a stick, survive the loss of this one.")
                    : tr("Looking for it.");
            return line;
        }
        const BackupsKnown& backups = *m_file.backups;
        line.text = words(backups.secondFolder.string());
        line.offer = tr("Choose another folder");
        if (!backups.isSecondThere) {
            const QString soon = tr("The newest backup is copied there as soon as it is.");
            line.detail = m_file.secondUpToDateOn
                              ? tr("Not there since %1. %2").arg(day(*m_file.secondUpToDateOn), soon)
                              : soon;
            setState(line, false, tr("not there"));
        } else if (!backups.secondRefusal.empty()) {
            line.detail = words(backups.secondRefusal);
            setState(line, false, tr("not copied"));
        } else {
            setState(line, true, tr("up to date"));
        }
        return line;
    }

    RoomLine backup(const BackupShown& shown) const {
        RoomLine line;
        line.name = backupTitle(shown.backup, m_shop.now);
        line.text = backupContents(shown);
        const QString place = !shown.isHere      ? tr("in the second folder only")
                              : shown.isInSecond ? tr("in both folders")
                                                 : QString();
        line.detail = place.isEmpty() ? tr("Made %1").arg(reasonWords(shown.backup.reason))
                                      : tr("Made %1, %2").arg(reasonWords(shown.backup.reason), place);
        if (!shown.backup.isWhole)
            setState(line, false, tr("not whole"));
        if (shown.orders) {
            line.offer = tr("Put back");
            line.deed = PutBackBackup{shown.backup.path};
        }
        return line;
    }

    static void addActs(RoomSheet& sheet) {
        sheet.acts.append(
            {tr("Back up"), QStringLiteral("shelf-away"), QKeySequence(Qt::Key_B), Errand::BackUp});
        sheet.acts.append(
            {tr("Check the file"), QStringLiteral("done"), QKeySequence(Qt::Key_C), Errand::CheckFile});
        sheet.acts.append({tr("Put back a backup"), QStringLiteral("undo"), QKeySequence(Qt::Key_P),
                           Errand::PutBackBackup});
        sheet.acts.append({tr("Save the due days"), QStringLiteral("order-book"), QKeySequence(Qt::Key_D),
                           Errand::SaveDueDays});
        sheet.acts.append({tr("Take orders from a file"), QStringLiteral("plus"), QKeySequence(Qt::Key_T),
                           OpenSlip{SlipName::OrdersFile, {}}});
        sheet.acts.append({tr("Open another shop"), QStringLiteral("order-book"), QKeySequence(Qt::Key_O),
                           Errand::OpenAnother});
    }

    const ReckonedShop& m_shop;
    const RoomFile& m_file;
};

} // namespace

RoomSheet copiesSheet(const ReckonedShop& shop, const RoomFile& file) {
    return CopyLines(shop, file).sheet();
}

} // namespace holdfast::app
