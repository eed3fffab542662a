#include "app/desk/formats.h"
#include "app/places/back_room/file_sheets.h"

#include <QCoreApplication>
#include <QLocale>

namespace holdfast::app {

namespace {

// Longer without a copy is worth a word. Common practice, no source.
constexpr Days kCopiedLately{7};

class CopyWords {
    Q_DECLARE_TR_FUNCTIONS(BackRoom)

public:
    static QString ago(Days days) {
        if (days.count() <= 0)
            return tr("today");
        return days.count() == 1 ? tr("yesterday") : tr("%1 ago").arg(dayCount(days));
    }

    static QString last(const Now& now, const LastBackup& backup) {
        const LocalTime when = now.toLocal(backup.at);
        return tr("%1 at %2\n%3").arg(date(dateOf(when)), clock(when), words(backup.path.string()));
    }
};

} // namespace

RoomSheet copiesSheet(const ReckonedShop& shop, const RoomFile& file) {
    RoomSheet sheet;
    sheet.title = CopyWords::tr("The file and its copies");
    sheet.intro = CopyWords::tr(
        "One file holds the shop. A copy on another disk, away from the workshop, outlives fire, "
        "theft and a spilt cup.");
    RoomLine where;
    where.name = CopyWords::tr("The shop’s file");
    where.text = file.path.empty()
                     ? CopyWords::tr("This shop stands in no file.")
                     : CopyWords::tr("%1\n%2").arg(
                           words(file.path.string()),
                           QLocale(QLocale::English).formattedDataSize(static_cast<qint64>(file.bytes), 1));
    if (file.isReadByOthers) {
        where.tone = Tone::Caution;
        where.stateIcon = QStringLiteral("caution");
        where.state = CopyWords::tr("others can read it");
        where.text +=
            CopyWords::tr("\nOthers with an account on this computer can read the names and telephone "
                          "numbers in it. Holdfast "
                          "puts that right when it opens a shop; on a stick that keeps no owners it cannot.");
    }
    where.offer = CopyWords::tr("Check it");
    where.deed = Errand::CheckFile;
    sheet.lines.append(where);
    RoomLine copy;
    copy.name = CopyWords::tr("Last copied here");
    copy.offer = CopyWords::tr("Back up");
    copy.deed = Errand::BackUp;
    if (file.lastBackup) {
        const Days since = std::chrono::floor<Days>(shop.now.instant - file.lastBackup->at);
        copy.text = CopyWords::last(shop.now, *file.lastBackup);
        sheet.summary = CopyWords::tr("copied %1").arg(CopyWords::ago(since));
        const bool isLately = since <= kCopiedLately;
        copy.tone = isLately ? Tone::Ready : Tone::Caution;
        copy.stateIcon = isLately ? QStringLiteral("done") : QStringLiteral("caution");
        copy.state = CopyWords::ago(since);
    } else {
        copy.text = CopyWords::tr("Never, as far as this laptop knows.");
        sheet.summary = CopyWords::tr("no copy yet");
        copy.tone = Tone::Caution;
        copy.stateIcon = QStringLiteral("caution");
        copy.state = CopyWords::tr("no copy");
    }
    sheet.lines.append(copy);
    if (!shop.facts.unread.empty()) {
        RoomLine wrong;
        wrong.name = CopyWords::tr("What is wrong in it");
        wrong.text = CopyWords::tr("Rows that cannot be read are left out of every list and every sum.");
        wrong.tone = Tone::Held;
        wrong.stateIcon = QStringLiteral("hold");
        wrong.state = CopyWords::tr("%1 left out").arg(shop.facts.unread.size());
        wrong.offer = CopyWords::tr("Show it");
        wrong.deed = Errand::ShowWrong;
        sheet.lines.append(wrong);
    }
    RoomLine mend;
    mend.name = CopyWords::tr("Mend the file");
    mend.text = CopyWords::tr("Writes rows again as their history has them where they are not, and makes the "
                              "lines of the order book and the search again.");
    mend.offer = CopyWords::tr("Mend it");
    mend.deed = Errand::MendFile;
    sheet.lines.append(mend);
    RoomLine save;
    save.name = CopyWords::tr("Save what can be saved");
    save.text = CopyWords::tr("Brings what can be read of a damaged file into a new one beside it, and says "
                              "what could not be.");
    save.offer = CopyWords::tr("Save it");
    save.deed = Errand::SaveWhatCanBe;
    sheet.lines.append(save);
    sheet.acts.append(
        {CopyWords::tr("Back up"), QStringLiteral("shelf-away"), QKeySequence(Qt::Key_B), Errand::BackUp});
    sheet.acts.append({CopyWords::tr("Check the file"), QStringLiteral("done"), QKeySequence(Qt::Key_C),
                       Errand::CheckFile});
    sheet.acts.append({CopyWords::tr("Open another shop"), QStringLiteral("order-book"),
                       QKeySequence(Qt::Key_O), Errand::OpenAnother});
    return sheet;
}

} // namespace holdfast::app
