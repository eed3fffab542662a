// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/paper_printing.h"

#include "app/desk/formats.h"
#include "app/papers/page_choice.h"
#include "app/papers/paper_sheets.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QDir>
#include <QPdfWriter>
#include <QStandardPaths>

#include <cmath>
#include <optional>

namespace holdfast::app {

namespace {

struct PaperPrinting {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PaperPrinting)
};

constexpr double kWhiteMargin = 12; // mm, of what has none of its own

using DrawPdf = std::function<Result<Drawn>(QPdfWriter&)>;

// A printer and its page, with how large papers come out there.
struct Destination {
    PrintQueue queue;
    PrintPage page;
    double scale = 1;
};

Destination destinationOn(const PrintQueue& queue, std::span<const Paper> papers) {
    const PrintPage page = pageFor(queue, papers);
    return {queue, page, smallestOn(page, papers)};
}

QString tooSmall(const Destination& destination) {
    return PaperPrinting::tr("The paper in the printer %1, %2, is too small for it.")
        .arg(destination.queue.name, sizeInWords(destination.page));
}

// The printer for such papers; the one for sheets where a label is too small to be read.
Result<Destination> destinationFor(const PaperErrand& errand, std::span<const Paper> papers,
                                   const Printing& printing) {
    const auto chosen = queueFor(errand.use, printing.choice, printing.queues);
    if (!chosen.ok())
        return chosen.error();
    Destination best = destinationOn(*chosen, papers);
    if (best.scale >= kReadable)
        return best;
    if (const auto sheets = queueFor(PaperUse::Sheets, printing.choice, printing.queues); sheets.ok())
        if (Destination other = destinationOn(*sheets, papers); other.scale > best.scale)
            best = std::move(other);
    return best.scale >= kLegible ? Result<Destination>{best} : plainError(inWindow(tooSmall(best)));
}

QString sentWords(const QString& title, const Destination& destination) {
    const PrintQueue& queue = destination.queue;
    QString said =
        queue.trouble.isEmpty()
            ? PaperPrinting::tr("%1 sent to the printer %2.").arg(title, queue.name)
            : PaperPrinting::tr("%1 sent to the printer %2, which %3: nothing is printed until it goes on.")
                  .arg(title, queue.name, queue.trouble);
    if (destination.scale < kReadable)
        said = PaperPrinting::tr("%1 It comes out at %2 % of its size, because the paper there is %3.")
                   .arg(said, QString::number(std::lround(destination.scale * 100)),
                        sizeInWords(destination.page));
    return said;
}

std::string stoppedWords() {
    return plain(PaperPrinting::tr("Stopped; nothing was printed."));
}

// Whole, or nothing where it was stopped.
Result<std::optional<QByteArray>> pdfOf(const QString& title, const DrawPdf& draw) {
    QBuffer written;
    written.open(QIODevice::WriteOnly);
    Result<Drawn> drawn = Drawn::Whole;
    {
        QPdfWriter writer(&written);
        preparePdf(writer, title);
        drawn = draw(writer);
    }
    if (!drawn.ok())
        return drawn.error();
    return *drawn == Drawn::Stopped ? std::optional<QByteArray>{} : std::optional{written.data()};
}

Result<std::string> savePdf(const QString& folder, const QString& title, const QString& why,
                            const DrawPdf& draw) {
    if (!QDir().mkpath(folder))
        return plainError(inWindow(PaperPrinting::tr("The folder %1 could not be made.").arg(folder)));
    const QString path = QDir(folder).filePath(title + QStringLiteral(".pdf"));
    const auto drawn = writePdf(path, title, draw);
    if (!drawn.ok())
        return drawn.error();
    return plain(*drawn == Drawn::Stopped
                     ? PaperPrinting::tr("Stopped; nothing was written.")
                     : PaperPrinting::tr("%1 Saved as %2.").arg(why, QDir::toNativeSeparators(path)));
}

// To the printer; into the folder where the printer takes none.
Result<std::string> sendOrSave(const QString& title, const Destination& destination, const QString& folder,
                               const DrawPdf& draw, const DrawPdf& drawForFile) {
    if (!destination.queue.takesJobs)
        return savePdf(
            folder, title,
            PaperPrinting::tr("The printer %1 takes no work at present.").arg(destination.queue.name),
            drawForFile);
    const auto pdf = pdfOf(title, draw);
    if (!pdf.ok())
        return pdf.error();
    if (!*pdf)
        return stoppedWords();
    const auto sent = sendToQueue(destination.queue, destination.page, title, **pdf);
    if (!sent.ok())
        return savePdf(folder, title, words(sent.error().message), drawForFile);
    return plain(sentWords(title, destination));
}

} // namespace

Printing printingHere(const PrinterChoice& choice, const QString& folder) {
    return {printQueues(), choice, folder};
}

QString paperFolder() {
    return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
}

Result<std::string> printPapers(const PaperErrand& errand, const Printing& printing,
                                const GoesOnDrawing& goesOn) {
    const auto made = errand.papers();
    if (!made.ok())
        return made.error();
    const std::vector<Paper>& papers = *made;
    const DrawPdf drawnForFile = [&](QPdfWriter& writer) { return drawPapers(writer, papers, goesOn); };
    const auto destination = destinationFor(errand, papers, printing);
    if (!destination.ok())
        return savePdf(printing.folder, errand.title, words(destination.error().message), drawnForFile);
    const std::vector<Paper> laid = laidOnSheets(papers, destination->page.size);
    return sendOrSave(
        errand.title, *destination, printing.folder,
        [&](QPdfWriter& writer) { return drawPapers(writer, laid, goesOn); }, drawnForFile);
}

Result<std::string> printSheets(const QString& title,
                                const std::function<Result<Drawn>(QPdfWriter&, const GoesOnDrawing&)>& draw,
                                const Printing& printing, const GoesOnDrawing& goesOn) {
    const auto drawnOn = [&](const QSizeF& page) -> DrawPdf {
        return [&, page](QPdfWriter& writer) {
            setPage(writer, page, kWhiteMargin);
            return draw(writer, goesOn);
        };
    };
    const DrawPdf drawnOnA4 = drawnOn(QPageSize(QPageSize::A4).size(QPageSize::Millimeter));
    const auto queue = queueFor(PaperUse::Sheets, printing.choice, printing.queues);
    if (!queue.ok())
        return savePdf(printing.folder, title, words(queue.error().message), drawnOnA4);
    const Destination destination{*queue, queue->page};
    if (!isSheet(queue->page.size))
        return savePdf(printing.folder, title, tooSmall(destination), drawnOnA4);
    return sendOrSave(title, destination, printing.folder, drawnOn(queue->page.size), drawnOnA4);
}

} // namespace holdfast::app
