// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The one way to print: on the printer chosen for such papers, without asking anything, at the size of the
// papers. Where no printer takes them, as a PDF. Printers are asked for and written to in the background.

#include "app/papers/paper.h"
#include "app/papers/paper_files.h"
#include "app/papers/printer_choice.h"
#include "core/trade/result.h"

#include <QString>

#include <functional>
#include <string>
#include <vector>

namespace holdfast::app {

// What is to be printed together.
struct PaperErrand {
    QString title; // "Claim ticket 426": what the person reads, and the name of its PDF
    std::function<Result<std::vector<Paper>>()> papers; // put together when asked for, on any thread
    PaperUse use = PaperUse::Labels;
};

// What prints: the printers that are there, the choice among them, and the folder for PDFs.
struct Printing {
    std::vector<PrintQueue> queues;
    PrinterChoice choice;
    QString folder;
};
// Asks for the printers: may take seconds.
Printing printingHere(const PrinterChoice& choice, const QString& folder);
// Where PDFs go.
QString paperFolder();

// Each returns what to tell the person, also where it was stopped. On any thread.

// Small papers share the sheets that the printer has in it. As a PDF each has a page of its own size; a file
// of the same name is replaced.
Result<std::string> printPapers(const PaperErrand& errand, const Printing& printing,
                                const GoesOnDrawing& goesOn);
// What is laid out for the page that it is given.
Result<std::string> printSheets(const QString& title,
                                const std::function<Result<Drawn>(QPdfWriter&, const GoesOnDrawing&)>& draw,
                                const Printing& printing, const GoesOnDrawing& goesOn);

} // namespace holdfast::app
