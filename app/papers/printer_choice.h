// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Which printer of this computer takes which papers. Chosen once for labels and once for sheets and kept with
// the settings of this computer, not in the shop: another laptop has other printers.

#include "app/papers/print_queue.h"
#include "core/trade/result.h"

#include <span>

namespace holdfast::app {

// Labels: what goes on a garment, a roll or a bag. Sheets: what is read at the press, at the bench or at
// home.
enum class PaperUse { Labels, Sheets };

struct PrinterChoice {
    QString labels; // empty: nothing was chosen
    QString sheets;

    const QString& of(PaperUse use) const { return use == PaperUse::Labels ? labels : sheets; }
};

PrinterChoice keptPrinters();
// An empty name goes back to the usual printer.
void keepPrinter(PaperUse use, const QString& name);

// The chosen one, or without a choice the usual one, or the only one. Otherwise an error that says why there
// is none and how to choose.
Result<PrintQueue> queueFor(PaperUse use, const PrinterChoice& choice, std::span<const PrintQueue> queues);

} // namespace holdfast::app
