// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/formats.h"
#include "app/places/back_room/file_sheets.h"
#include "app/slips/slip_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <vector>

namespace holdfast::app {

namespace {

constexpr std::int64_t kFewNumbers = 100;

class LaptopWords {
    Q_DECLARE_TR_FUNCTIONS(BackRoom)

public:
    LaptopWords(const ReckonedShop& shop, const RoomFile& file)
        : m_now(shop.now)
        , m_file(file) {}

    RoomSheet sheet() const {
        RoomSheet sheet;
        sheet.title = tr("Second laptop");
        sheet.summary = summary();
        sheet.intro = intro();
        addHere(sheet);
        for (const OtherLaptop& other : m_file.others)
            addOther(sheet, other);
        addSetAside(sheet);
        addRemarks(sheet);
        if (!m_file.others.empty()) {
            sheet.acts.append(
                {tr("Bring in news"), QStringLiteral("plus"), QKeySequence(Qt::Key_T), Errand::TakeInNews});
            sheet.acts.append(
                {tr("Save news"), QStringLiteral("order-book"), QKeySequence(Qt::Key_W), Errand::WriteNews});
        }
        if (m_file.isTheWorkshop)
            sheet.acts.append({tr("Copy for a laptop"), QStringLiteral("shelf-away"), QKeySequence(Qt::Key_L),
                               Errand::CopyForLaptop});
        else
            sheet.acts.append({tr("Make this the workshop’s copy"), QStringLiteral("back-room"),
                               QKeySequence(Qt::Key_M), Errand::BecomeWorkshop});
        return sheet;
    }

private:
    QString summary() const {
        if (m_file.others.empty())
            return tr("only this laptop");
        if (!m_file.setAside.empty())
            return tr("%n change not done|%n changes not done", nullptr, howMany(m_file.setAside.size()));
        if (!m_file.isTheWorkshop)
            return m_file.entriesToBring == 0 ? tr("nothing new for the workshop")
                                              : tr("%n to bring", nullptr, howMany(m_file.entriesToBring));
        std::int64_t waiting = 0;
        std::vector<QString> unheard; // what they did since their copy was made nobody here knows
        for (const OtherLaptop& other : m_file.others) {
            waiting += other.entriesForIt;
            if (!other.seat.newsTakenInAt)
                unheard.push_back(words(other.seat.name));
        }
        if (waiting > 0)
            return tr("%n to fetch", nullptr, howMany(waiting));
        if (unheard.size() == 1)
            return tr("nothing from %1 yet").arg(unheard.front());
        return unheard.empty() ? tr("up to date")
                               : tr("nothing from %n laptop yet|nothing from %n laptops yet", nullptr,
                                    howMany(unheard.size()));
    }

    QString intro() const {
        if (m_file.others.empty())
            return tr(
                "A laptop for the fair table gets a copy of the shop with order numbers of its own. In the "
                "evening its news comes to the workshop on a stick, and the workshop’s goes back.");
        if (m_file.isTheWorkshop)
            return tr("First bring in the laptop’s news, then save the workshop’s news for it.");
        return tr(
            "Save news for the workshop, carry it there on a stick, and bring back the workshop’s news.");
    }

    QString numbers(const db::Seat& seat) const {
        return tr("order numbers %1 to %2").arg(seat.firstOrderNumber).arg(seat.lastOrderNumber);
    }

    QString when(Instant at) const {
        const LocalTime local = m_now.toLocal(at);
        return tr("%1 %2").arg(dayNear(dateOf(local), m_now.today()), clock(local));
    }

    void addHere(RoomSheet& sheet) const {
        RoomLine line;
        line.name = words(m_file.here.name);
        line.text = tr("This laptop, %1, %2 left").arg(numbers(m_file.here)).arg(m_file.orderNumbersLeft);
        if (m_file.orderNumbersLeft < kFewNumbers) {
            line.tone = Tone::Caution;
            line.stateIcon = QStringLiteral("caution");
            line.state = tr("few numbers left");
        } else if (m_file.entriesToBring > 0) {
            line.tone = Tone::Plain;
            line.stateIcon = QStringLiteral("offline");
            line.state = tr("%n to bring", nullptr, howMany(m_file.entriesToBring));
        }
        sheet.lines.append(line);
    }

    void addOther(RoomSheet& sheet, const OtherLaptop& other) const {
        RoomLine line;
        line.name = words(other.seat.name);
        line.text = tr("%1\n%2").arg(
            numbers(other.seat), other.seat.newsTakenInAt
                                     ? tr("its news last received %1").arg(when(*other.seat.newsTakenInAt))
                                     : tr("nothing received from it yet"));
        if (other.entriesForIt > 0) {
            line.stateIcon = QStringLiteral("offline");
            line.state = tr("%1 to fetch").arg(other.entriesForIt);
        }
        sheet.lines.append(line);
    }

    void addSetAside(RoomSheet& sheet) const {
        if (m_file.setAside.empty())
            return;
        head(sheet, tr("Could not be done here"));
        for (const db::SetAside& each : m_file.setAside) {
            RoomLine line;
            line.name = words(each.title);
            line.text = tr("%1, %2. %3").arg(words(each.seat), when(each.at), words(each.why));
            line.tone = Tone::Caution;
            line.stateIcon = QStringLiteral("caution");
            line.state = tr("not done");
            line.offer = tr("Try again");
            line.deed = DoAgain{each.entry};
            line.otherOffer = tr("Already dealt with: drop it");
            line.otherDeed = LetItGo{each.entry};
            sheet.lines.append(line);
        }
    }

    void addRemarks(RoomSheet& sheet) const {
        if (m_file.remarks.empty())
            return;
        head(sheet, tr("Changed while bringing in"));
        for (const db::Remark& remark : m_file.remarks) {
            RoomLine line;
            line.name = words(remark.title);
            line.text = tr("%1, %2. %3").arg(words(remark.seat), when(remark.at), words(remark.words));
            sheet.lines.append(line);
        }
    }

    static void head(RoomSheet& sheet, const QString& words) {
        RoomLine line;
        line.isHeading = true;
        line.name = words;
        sheet.lines.append(line);
    }

    const Now& m_now;
    const RoomFile& m_file;
};

} // namespace

RoomSheet laptopsSheet(const ReckonedShop& shop, const RoomFile& file) {
    return LaptopWords(shop, file).sheet();
}

} // namespace holdfast::app
