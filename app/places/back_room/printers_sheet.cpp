// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/back_room/printers_sheet.h"

#include "app/papers/page_choice.h"

#include <QCoreApplication>
#include <QStringList>

#include <algorithm>

namespace holdfast::app {

namespace {

class PrinterLines {
    Q_DECLARE_TR_FUNCTIONS(BackRoom)

public:
    explicit PrinterLines(const PrintersHere& printers)
        : m_choice(printers.choice)
        , m_queues(*printers.queues) {}

    // A line for each printer that may take such papers; Enter on it gives them to it.
    void addTo(RoomSheet& sheet, PaperUse use, const QString& heading) const {
        RoomLine head;
        head.isHeading = true;
        head.name = heading;
        sheet.lines.append(head);
        sheet.lines.append(usualLine(use));
        for (const PrintQueue& queue : m_queues)
            sheet.lines.append(queueLine(use, queue));
        if (const QString& chosen = m_choice.of(use); !chosen.isEmpty() && !found(chosen))
            sheet.lines.append(missingLine(chosen));
    }

    static QString summaryOf(const PrinterChoice& choice) {
        QStringList chosen;
        for (const QString& name : {choice.labels, choice.sheets})
            if (!name.isEmpty() && !chosen.contains(name))
                chosen << name;
        return chosen.isEmpty() ? tr("the usual printer") : chosen.join(QStringLiteral(", "));
    }

private:
    const PrintQueue* found(const QString& name) const {
        const auto queue = std::ranges::find(m_queues, name, &PrintQueue::name);
        return queue == m_queues.end() ? nullptr : &*queue;
    }

    void offer(RoomLine& line, PaperUse use, const QString& name, bool isStopped) const {
        if (m_choice.of(use) != name) {
            line.offer = tr("Use this printer");
            line.deed = UsePrinter{use, name};
            return;
        }
        line.tone = isStopped ? Tone::Caution : Tone::Ready;
        line.stateIcon = isStopped ? QStringLiteral("caution") : QStringLiteral("done");
        line.state = isStopped ? tr("used, stopped") : tr("used");
    }

    RoomLine usualLine(PaperUse use) const {
        RoomLine line;
        line.name = tr("The usual printer");
        const auto usual = std::ranges::find(m_queues, true, &PrintQueue::isUsual);
        line.text = usual != m_queues.end() ? tr("now %1").arg(usual->name)
                    : m_queues.size() == 1  ? tr("now %1, the only one").arg(m_queues.front().name)
                                            : tr("none is set on this computer");
        offer(line, use, {}, false);
        // Nothing is printed by a printer that nobody chose.
        if (usual == m_queues.end() && m_queues.size() > 1 && m_choice.of(use).isEmpty()) {
            line.tone = Tone::Caution;
            line.stateIcon = QStringLiteral("caution");
            line.state = tr("choose one below");
        }
        return line;
    }

    RoomLine queueLine(PaperUse use, const PrintQueue& queue) const {
        RoomLine line;
        line.name = queue.name;
        line.text = tr("paper %1").arg(sizeInWords(queue.page));
        const bool isStopped = !queue.trouble.isEmpty() || !queue.takesJobs;
        if (!queue.trouble.isEmpty())
            line.text = tr("%1; it %2").arg(line.text, queue.trouble);
        if (!queue.takesJobs)
            line.text = tr("%1; it takes no work at present").arg(line.text);
        offer(line, use, queue.name, isStopped);
        return line;
    }

    static RoomLine missingLine(const QString& name) {
        RoomLine line;
        line.name = name;
        line.text = tr("chosen before, no longer there: choose another");
        line.tone = Tone::Held;
        line.stateIcon = QStringLiteral("hold");
        line.state = tr("missing");
        return line;
    }

    const PrinterChoice& m_choice;
    const std::vector<PrintQueue>& m_queues;
};

} // namespace

RoomSheet printersSheet(const RoomFile& file) {
    RoomSheet sheet;
    sheet.title = PrinterLines::tr("Printers");
    sheet.summary = PrinterLines::summaryOf(file.printers.choice);
    sheet.acts.append({PrinterLines::tr("Look for printers"), QStringLiteral("search"),
                       QKeySequence(Qt::Key_F), LookForPrinters{}});
    if (!file.printers.queues) {
        sheet.intro = PrinterLines::tr("Looking for the printers of this computer …");
        return sheet;
    }
    if (file.printers.queues->empty()) {
        sheet.intro =
            PrinterLines::tr("No printer is set up on this computer. Papers are saved as PDF in %1.")
                .arg(paperFolder());
        return sheet;
    }
    sheet.intro = PrinterLines::tr(
        "Each paper comes out at its size, turned where it fits better so. What is chosen here is for this "
        "computer alone.");
    const PrinterLines lines(file.printers);
    lines.addTo(sheet, PaperUse::Labels, PrinterLines::tr("Labels: roll labels, bag tags, claim tickets"));
    lines.addTo(sheet, PaperUse::Sheets, PrinterLines::tr("Sheets: day sheets, care cards, cut sheets"));
    sheet.acts.append(testPapers());
    return sheet;
}

QVector<RoomAct> testPapers() {
    return {{PrinterLines::tr("Print a test label"), QStringLiteral("printer"), QKeySequence(Qt::Key_L),
             PrintPaper{PaperName::TestLabel}},
            {PrinterLines::tr("Print a test sheet"), QStringLiteral("printer"), QKeySequence(Qt::Key_S),
             PrintPaper{PaperName::TestSheet}}};
}

} // namespace holdfast::app
