// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/change_messages.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/opened_order.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class ChangeWords {
    Q_DECLARE_TR_FUNCTIONS(ChangeWords)
};

TableMessage messageOf(Tone tone, const QString& lead, const QString& text, const QString& icon = {}) {
    TableMessage message;
    message.tone = tone;
    message.lead = lead;
    message.text = text;
    message.iconName = icon;
    return message;
}

// Of the garment at hand; one that has been at the press can be made again.
void sayWhatStays(const TableDraft& draft, const ReckonedShop& shop, std::vector<TableMessage>& messages) {
    const TableGarment& garment = draft.garment();
    if (!garment.taken || garment.isMadeAgain)
        return;
    const Sentence why = whyItStays(shop.facts, *garment.taken);
    if (why.empty())
        return;
    TableMessage& message = messages.emplace_back(messageOf(Tone::Plain, words(why), {}));
    TableDraft again = draft;
    again.garment().isMadeAgain = true;
    message.makesAgain = whatStays(shop.facts, draft, again).empty();
    message.garment = draft.garmentAt;
}

void sayWhatIsLost(const TableDraft& draft, const TableSums& sums, const ReckonedShop& shop,
                   std::vector<TableMessage>& messages) {
    for (const WorkLost& lost : workLost(draft.opened->before, orderOf(draft, sums, false), shop.facts))
        messages.push_back(messageOf(Tone::Caution, words(lostWords(lost, shop.facts)), {}));
}

void sayPromise(const TableDraft& draft, const TableSums& sums, const ReckonedShop& shop,
                std::vector<TableMessage>& messages) {
    if (!sums.promise || sums.isAsPromised)
        return;
    const QString before = promise(draft.opened->order.promised, shop.now.today());
    messages.push_back(messageOf(Tone::Caution, ChangeWords::tr("The promise moves."),
                                 ChangeWords::tr("It was %1. Tell the customer.").arg(before),
                                 QStringLiteral("clock")));
}

void sayMoney(const TableSums& sums, const Currency& currency, std::vector<TableMessage>& messages) {
    if (sums.owed < Money{})
        messages.push_back(messageOf(
            Tone::Caution, ChangeWords::tr("%1 too much is paid then.").arg(money(-sums.owed, currency)),
            ChangeWords::tr("Pay it back under Money in the order book."), QStringLiteral("coin")));
}

} // namespace

void sayChange(const TableDraft& draft, const TableSums& sums, const ReckonedShop& shop,
               std::vector<TableMessage>& messages) {
    sayWhatStays(draft, shop, messages);
    sayWhatIsLost(draft, sums, shop, messages);
    sayPromise(draft, sums, shop, messages);
    sayMoney(sums, shop.facts.settings.currency, messages);
}

} // namespace holdfast::app
