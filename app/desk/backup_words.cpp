// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/backup_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>
#include <QLocale>

namespace holdfast::app {

namespace {

// A day so near is shown without its year.
constexpr Days kNearDays{90};

class BackupWords {
    Q_DECLARE_TR_FUNCTIONS(BackupWords)

public:
    static QString day(LocalDate day, LocalDate today) {
        if (day == today)
            return tr("today");
        const bool isNear = day < today && today - day < kNearDays;
        return isNear ? app::day(day) : date(day);
    }
};

} // namespace

QString backupTitle(const db::KeptBackup& backup, const Now& now) {
    return BackupWords::tr("%1 %2").arg(BackupWords::day(dateOf(backup.at), now.today()), clock(backup.at));
}

QString reasonWords(db::BackupReason reason) {
    switch (reason) {
    case db::BackupReason::OfTheDay:
        break;
    case db::BackupReason::BeforeStep:
        return BackupWords::tr("before a new version of Holdfast changed the file");
    case db::BackupReason::BeforeNews:
        return BackupWords::tr("before news was brought in");
    case db::BackupReason::BeforePuttingBack:
        return BackupWords::tr("before a backup was put back");
    case db::BackupReason::BeforeMending:
        return BackupWords::tr("before the file was mended");
    }
    return BackupWords::tr("for the day");
}

QString backupContents(const BackupShown& backup) {
    const QString size = QLocale().formattedDataSize(static_cast<qint64>(backup.backup.bytes), 1);
    if (!backup.orders)
        return BackupWords::tr("%1, cannot be read").arg(size);
    return BackupWords::tr("%n order, %1|%n orders, %1", nullptr, howMany(*backup.orders)).arg(size);
}

} // namespace holdfast::app
