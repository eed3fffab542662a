// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Papers sent through CUPS's own filters to queues of known pages, and what arrives there measured with
// poppler (pdfinfo, pdftoppm) and read with zbar.

#include "app/papers/paper_printing.h"
#include "tests/app/papers_fixture.h"
#include "tests/printing/print_service.h"

#include <QDir>

namespace holdfast::app::test {

// What arrived, in mm.
struct Arrived {
    int pages = 0;
    QSizeF page;
    QRectF ink;     // of the first page
    QImage picture; // of the first page, at 300 dots an inch

    bool isThere() const { return pages > 0; }
};

class PrintingFixture : public PapersFixture {
protected:
    void SetUp() override {
        PapersFixture::SetUp();
        ASSERT_EQ(service().fault().toStdString(), "");
        for (const auto& [name, page] : kQueues)
            service().addQueue(QLatin1String(name), {page});
    }
    void TearDown() override {
        for (const QString& name : queueNames())
            service().removeQueue(name);
    }

    static PrintService& service() { return PrintService::instance(); }
    static QStringList queueNames() {
        QStringList names;
        for (const auto& [name, page] : kQueues)
            names << QLatin1String(name);
        return names;
    }
    static PrinterChoice bothOn(const QString& queue) { return {queue, queue}; }

    std::string print(const PaperErrand& errand, const PrinterChoice& choice) {
        const auto told = printPapers(errand, printingHere(choice, folder()), {});
        return told.ok() ? *told : "failed: " + told.error().message.english();
    }
    QString folder() const { return fileIn(QStringLiteral("saved")); }
    QStringList savedFiles() const { return QDir(folder()).entryList(QDir::Files); }

    Arrived arrivedAt(const QString& queue) {
        const QString pdf = service().arrivedAt(queue);
        Arrived arrived;
        if (pdf.isEmpty())
            return arrived;
        const auto pages = pagesOf(pdf);
        arrived.pages = static_cast<int>(pages.size());
        if (pages.empty())
            return arrived;
        arrived.page = pages.front() / 72 * 25.4;
        const QString picture = fileIn(QStringLiteral("arrived"));
        outputOf(QStringLiteral("pdftoppm"),
                 {QStringLiteral("-r"), QString::number(kDots), QStringLiteral("-gray"),
                  QStringLiteral("-png"), QStringLiteral("-singlefile"), pdf, picture});
        arrived.picture = QImage(picture + QStringLiteral(".png"));
        arrived.ink = inkOf(arrived.picture);
        return arrived;
    }
    // The smallest box around everything that is not white, in mm.
    static QRectF inkOf(const QImage& picture) {
        constexpr int kGrey = 200;
        const QImage grey = picture.convertToFormat(QImage::Format_Grayscale8);
        QRect box;
        for (int y = 0; y < grey.height(); ++y) {
            const uchar* line = grey.constScanLine(y);
            const auto isInk = [](uchar dot) { return dot < kGrey; };
            const uchar* first = std::find_if(line, line + grey.width(), isInk);
            if (first == line + grey.width())
                continue;
            const auto last =
                std::find_if(std::reverse_iterator(line + grey.width()), std::reverse_iterator(line), isInk);
            box |= QRect(QPoint(static_cast<int>(first - line), y),
                         QPoint(static_cast<int>(last.base() - line) - 1, y));
        }
        constexpr double kMillimetres = 25.4 / kDots;
        return {box.x() * kMillimetres, box.y() * kMillimetres, box.width() * kMillimetres,
                box.height() * kMillimetres};
    }
    // The ink of a paper as it is drawn, with no printer.
    static QSizeF drawn(const Paper& paper) { return inkOf(pictureOf(paper, kDots)).size(); }

    static constexpr int kDots = 300;
    // Rolls of labels and tickets as they are commonly sold (common practice, no source), A4 of ISO 216,
    // Letter of ANSI/ASME Y14.1.
    static constexpr std::array<std::pair<const char*, QueuePage>, 6> kQueues{
        {{"Tape62x29", {62, 29}},
         {"Roll62x100", {62, 100}},
         {"Label70x40", {70, 40}},
         {"Ticket80x200", {80, 200}},
         {"OfficeA4", {210, 297}},
         {"OfficeLetter", {215.9, 279.4}}}};
};

} // namespace holdfast::app::test
