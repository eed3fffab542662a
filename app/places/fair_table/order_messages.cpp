// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/order_messages.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/team_garments.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class OrderWords {
    Q_DECLARE_TR_FUNCTIONS(OrderWords)
};

} // namespace

void sayDeposit(const TableSums& sums, const ShopSettings& settings, std::vector<TableMessage>& messages) {
    if (settings.depositPercent <= 0 || sums.total.minor <= 0)
        return;
    const Money due = sums.depositAsked;
    // What is only asked for is offered where it is paid; here it is said once less is paid.
    if (sums.deposit >= due || (!settings.depositHolds && sums.deposit.minor == 0))
        return;
    TableMessage& message = messages.emplace_back();
    message.tone = settings.depositHolds ? Tone::Held : Tone::Caution;
    message.lead = OrderWords::tr("Deposit below %1.").arg(money(due, settings.currency));
    if (settings.depositHolds)
        message.leavesDayOpen =
            OrderWords::tr("Work waits for the deposit of %1.").arg(money(due, settings.currency));
    message.text = settings.depositHolds ? OrderWords::tr("Work waits until it is paid.")
                                         : OrderWords::tr("The shop asks for it before work starts.");
}

void sayMany(const TableDraft& draft, const ShopFacts& facts, std::vector<TableMessage>& messages) {
    const auto pattern = patternAt(draft);
    if (!(draft.garment() == TableGarment{}) || !pattern)
        return;
    const auto offer = [&](TableMessage::Offer what, const QString& lead, const QString& text) {
        TableMessage& message = messages.emplace_back();
        message.lead = lead;
        message.text = text;
        message.offer = what;
    };
    offer(TableMessage::Offer::SameAgain, OrderWords::tr("The same again?"),
          garmentWords(draft.garments[*pattern], facts));
    offer(TableMessage::Offer::TeamList, OrderWords::tr("A whole team?"),
          OrderWords::tr("Names, numbers and sizes, typed or pasted."));
}

} // namespace holdfast::app
