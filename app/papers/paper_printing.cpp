#include "app/papers/paper_printing.h"

#include "app/desk/formats.h"
#include "app/papers/paper_files.h"
#include "app/papers/paper_sheets.h"

#include <QCoreApplication>
#include <QDir>
#include <QPrinter>
#include <QPrinterInfo>
#include <QStandardPaths>

namespace holdfast::app {

namespace {

struct PaperPrinting {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PaperPrinting)
};

} // namespace

std::shared_ptr<QPrinter> usualPrinter(const QString& title) {
    const QPrinterInfo usual = QPrinterInfo::defaultPrinter();
    if (usual.isNull())
        return nullptr;
    auto printer = std::make_shared<QPrinter>(usual, QPrinter::HighResolution);
    printer->setDocName(title);
    return printer;
}

Result<std::string> printPapersOn(QPrinter& printer, const PaperErrand& errand,
                                  const std::function<bool(double)>& progress) {
    const QSizeF sheet = printer.pageLayout().fullRect(QPageLayout::Millimeter).size();
    const auto drawn = drawPapers(printer, laidOnSheets(errand.papers(), sheet), progress);
    if (!drawn.ok())
        return drawn.error();
    return plain(
        *drawn == Drawn::Stopped
            ? PaperPrinting::tr("Stopped; some pages may be printed.")
            : PaperPrinting::tr("%1 is at the printer %2.").arg(errand.title, printer.printerName()));
}

Result<std::string> savePapersIn(const QString& folder, const PaperErrand& errand,
                                 const std::function<bool(double)>& progress) {
    if (!QDir().mkpath(folder))
        return plainError(plain(PaperPrinting::tr("The folder %1 could not be made.").arg(folder)));
    const QString path = QDir(folder).filePath(errand.title + QStringLiteral(".pdf"));
    const auto drawn = writePapers(path, errand.title, errand.papers(), progress);
    if (!drawn.ok())
        return drawn.error();
    return plain(
        *drawn == Drawn::Stopped
            ? PaperPrinting::tr("Stopped; nothing was written.")
            : PaperPrinting::tr("No printer is set up: saved as %1.").arg(QDir::toNativeSeparators(path)));
}

Result<std::string> printPapers(const PaperErrand& errand, const QString& folder,
                                const std::function<bool(double)>& progress) {
    const auto printer = usualPrinter(errand.title);
    return printer ? printPapersOn(*printer, errand, progress) : savePapersIn(folder, errand, progress);
}

QString paperFolder() {
    return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
}

} // namespace holdfast::app
