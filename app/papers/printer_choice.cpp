// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/printer_choice.h"

#include "app/desk/formats.h"
#include "app/desk/machine_settings.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

struct ChoiceWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PrinterChoice)
};

const QString& settingOf(PaperUse use) {
    return use == PaperUse::Labels ? kLabelPrinterSetting : kSheetPrinterSetting;
}

Error noPrinter(const QString& why) {
    return plainError(inWindow(why));
}

} // namespace

PrinterChoice keptPrinters() {
    return {machineSetting(settingOf(PaperUse::Labels)), machineSetting(settingOf(PaperUse::Sheets))};
}

void keepPrinter(PaperUse use, const QString& name) {
    keepMachineSetting(settingOf(use), name);
}

Result<PrintQueue> queueFor(PaperUse use, const PrinterChoice& choice, std::span<const PrintQueue> queues) {
    if (queues.empty())
        return noPrinter(ChoiceWords::tr("No printer is set up on this computer."));
    if (const QString& chosen = choice.of(use); !chosen.isEmpty()) {
        const auto found = std::ranges::find(queues, chosen, &PrintQueue::name);
        if (found == queues.end())
            return noPrinter(
                ChoiceWords::tr("The printer %1 is no longer there; choose another in Back room, Printers.")
                    .arg(chosen));
        return *found;
    }
    const auto usual = std::ranges::find(queues, true, &PrintQueue::isUsual);
    if (usual != queues.end())
        return *usual;
    if (queues.size() == 1)
        return queues.front();
    return noPrinter(
        ChoiceWords::tr("There are %1 printers and none is chosen; choose one in Back room, Printers.")
            .arg(queues.size()));
}

} // namespace holdfast::app
