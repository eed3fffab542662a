#include "app/papers/printer_choice.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

#include <algorithm>
#include <string_view>

namespace holdfast::app {

namespace {

struct ChoiceWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PrinterChoice)
};

std::string_view noteOf(PaperUse use) {
    return use == PaperUse::Labels ? "printer for labels" : "printer for sheets";
}

QString keptPrinter(db::Shop& shop, PaperUse use) {
    const auto found = shop.read([&](db::Connection&) { return shop.note(noteOf(use)); });
    return found.ok() && *found ? words(**found) : QString();
}

Error noPrinter(const QString& why) {
    return plainError(plain(why));
}

} // namespace

PrinterChoice keptPrinters(db::Shop& shop) {
    return {keptPrinter(shop, PaperUse::Labels), keptPrinter(shop, PaperUse::Sheets)};
}

void keepPrinter(db::Shop& shop, PaperUse use, const QString& name) {
    if (name.isEmpty())
        shop.dropNote(noteOf(use));
    else
        shop.keepNote(noteOf(use), plain(name));
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
