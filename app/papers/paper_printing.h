#pragma once
// The one way to print: on the system's default printer without asking anything, or without a printer as a
// PDF. Printers are asked for and written to beside the window.

#include "app/papers/paper.h"
#include "core/trade/result.h"

#include <QString>

#include <functional>
#include <memory>
#include <string>

class QPrinter;

namespace holdfast::app {

// What is to be printed together.
struct PaperErrand {
    QString title; // "Claim ticket 426": what the person is told, and the name of its PDF
    std::function<std::vector<Paper>()> papers; // put together when asked for, on any thread
};

// The default printer, ready to be drawn to; none: there is no printer. May take long.
std::shared_ptr<QPrinter> usualPrinter(const QString& title);

// Each returns what to tell the person, also where it was stopped. On any thread.

// Small papers share the sheets that the printer has in it.
Result<std::string> printPapersOn(QPrinter& printer, const PaperErrand& errand,
                                  const std::function<bool(double share)>& progress);
// Each on a page of its own size, in a PDF in `folder`, which is made if missing; one of the same name is
// replaced.
Result<std::string> savePapersIn(const QString& folder, const PaperErrand& errand,
                                 const std::function<bool(double share)>& progress);
// On the usual printer, else into the folder.
Result<std::string> printPapers(const PaperErrand& errand, const QString& folder,
                                const std::function<bool(double share)>& progress);

// Where PDFs go for want of a printer.
QString paperFolder();

} // namespace holdfast::app
