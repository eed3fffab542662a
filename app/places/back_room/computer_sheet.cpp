// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/back_room/computer_sheet.h"

#include "app/places/back_room/printers_sheet.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class ComputerLines {
    Q_DECLARE_TR_FUNCTIONS(BackRoom)

public:
    explicit ComputerLines(const RoomFile& file)
        : m_file(file) {}

    QVector<RoomLine> all() const {
        return {heading(tr("Printers")),
                printer(tr("Labels"), tr("roll labels, bag tags, claim tickets"), PaperUse::Labels),
                printer(tr("Sheets"), tr("day sheets, care cards, cut sheets"), PaperUse::Sheets),
                heading(tr("Scanner")),
                scanner(),
                heading(tr("Text size")),
                textSize(),
                heading(tr("Sound at the end of a count")),
                loudness(Loudness::Loud, tr("Loud"), tr("heard over a fan"), tr("Make it loud")),
                loudness(Loudness::Soft, tr("Soft"), tr("for a quiet room"), tr("Make it soft")),
                loudness(Loudness::Off, tr("Off"), tr("only the screen says it"), tr("Turn it off")),
                heading(tr("Program")),
                program()};
    }

    QString summary() const {
        return tr("text %1 %, sound %2").arg(m_file.textPercent).arg(words(m_file.loudness));
    }

private:
    static RoomLine heading(const QString& name) {
        RoomLine line;
        line.isHeading = true;
        line.name = name;
        return line;
    }

    RoomLine printer(const QString& name, const QString& papers, PaperUse use) const {
        RoomLine line;
        line.name = name;
        const QString& chosen = m_file.printers.choice.of(use);
        line.text = chosen.isEmpty() ? tr("the usual printer") : chosen;
        line.detail = papers;
        line.offer = tr("Choose a printer");
        line.deed = TurnToSection{RoomSection::Printers};
        return line;
    }

    RoomLine scanner() const {
        RoomLine line;
        line.name = tr("Before a code");
        line.text = m_file.scannerPrefix.isEmpty() ? tr("it types nothing") : m_file.scannerPrefix;
        line.detail = tr("Only a slow scanner needs a sign there.");
        line.offer = tr("Set up a scanner");
        line.deed = OpenSlip{SlipName::Scanner, {}};
        return line;
    }

    RoomLine textSize() const {
        RoomLine line;
        line.name = tr("Text");
        line.text = m_file.textPercent == kUsualTextSize ? tr("%1 %, as usual").arg(m_file.textPercent)
                                                         : tr("%1 %").arg(m_file.textPercent);
        line.detail = tr("Ctrl with +, − or 0 does the same in every place. The window opens again for it, "
                         "where it was.");
        const auto size = [&](int steps) { return nextTextSize(m_file.textPercent, steps); };
        const bool canGrow = size(1) != m_file.textPercent;
        line.offer = canGrow ? tr("Larger") : tr("Smaller");
        line.deed = MakeTextAsLarge{size(canGrow ? 1 : -1)};
        if (canGrow && size(-1) != m_file.textPercent) {
            line.otherOffer = tr("Smaller");
            line.otherDeed = MakeTextAsLarge{size(-1)};
        }
        return line;
    }

    RoomLine loudness(Loudness loudness, const QString& name, const QString& text,
                      const QString& offer) const {
        RoomLine line;
        line.name = name;
        line.text = text;
        if (loudness == m_file.loudness) {
            line.state = tr("chosen");
            line.stateIcon = QStringLiteral("done");
            line.tone = Tone::Ready;
        } else {
            line.offer = offer;
            line.deed = MakeAsLoud{loudness};
        }
        return line;
    }

    static RoomLine program() {
        RoomLine line;
        line.name = tr("Holdfast");
        line.text = tr("version %1").arg(QCoreApplication::applicationVersion());
        line.detail = tr("Free software. Ctrl+K and “about” lead to its licence and what it is made with.");
        return line;
    }

    static QString words(Loudness loudness) {
        switch (loudness) {
        case Loudness::Off:
            return tr("off");
        case Loudness::Soft:
            return tr("soft");
        case Loudness::Loud:
            break;
        }
        return tr("loud");
    }

    const RoomFile& m_file;
};

} // namespace

RoomSheet computerSheet(const RoomFile& file) {
    const ComputerLines lines(file);
    RoomSheet sheet;
    sheet.title = ComputerLines::tr("This computer");
    sheet.summary = lines.summary();
    sheet.intro = ComputerLines::tr("These belong to this computer, whatever shop is open on it. Another "
                                    "laptop has its own.");
    sheet.lines = lines.all();
    sheet.acts = testPapers();
    sheet.acts.append(
        {ComputerLines::tr("Play sound"), QStringLiteral("stopwatch"), QKeySequence(Qt::Key_H), HearKnock{}});
    sheet.note = ComputerLines::tr(
        "When a count at the press ends, two knocks on wood are heard, and the screen says what to do. When "
        "a garment has been under heat too long, they are heard three times. While another window is in "
        "front, the desktop shows a notice as well; choosing it brings the press walk to the front.");
    return sheet;
}

} // namespace holdfast::app
