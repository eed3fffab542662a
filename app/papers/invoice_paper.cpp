// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/invoice_paper.h"

#include "app/desk/formats.h"
#include "app/desk/invoice_words.h"
#include "app/papers/money_paper.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

struct InvoiceWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::InvoicePaper)
};

// Alike ones on one line.
std::vector<MoneyLine> rowLines(const Invoice& invoice) {
    std::vector<MoneyLine> lines;
    std::vector<InvoiceRow> told;
    for (const InvoiceRow& row : invoice.rows) {
        const auto isAlike = [&](const InvoiceRow& other) {
            return other.words == row.words && other.amount == row.amount;
        };
        if (std::ranges::any_of(told, isAlike))
            continue;
        told.push_back(row);
        const auto count = std::ranges::count_if(invoice.rows, isAlike);
        const QString each = words(row.words);
        lines.push_back({count == 1 ? each
                                    : InvoiceWords::tr("%1 × %2, %3 each")
                                          .arg(count)
                                          .arg(each, moneyBare(row.amount, invoice.currency)),
                         moneyBare(row.amount * count, invoice.currency)});
    }
    return lines;
}

std::vector<MoneyLine> sumLines(const Invoice& invoice) {
    const auto bare = [&](Money amount) { return moneyBare(amount, invoice.currency); };
    const bool isNote = invoice.kind == InvoiceKind::CreditNote;
    const MoneyLine total{isNote ? InvoiceWords::tr("Credited") : InvoiceWords::tr("Total"),
                          money(invoice.total, invoice.currency), true};
    const MoneyLine without{InvoiceWords::tr("Without tax"), bare(invoice.total - invoice.taxAmount)};
    const QString tax = words(taxWords(invoice.tax, invoice.taxName));
    std::vector<MoneyLine> sums;
    if (invoice.tax.kind == TaxKind::Added)
        sums = {without, {tax, bare(invoice.taxAmount)}, total};
    else if (invoice.tax.kind == TaxKind::Included)
        sums = {total, {InvoiceWords::tr("of it %1").arg(tax), bare(invoice.taxAmount)}, without};
    else
        sums = {total};
    if (isNote)
        return sums;
    if (invoice.paid > Money{})
        sums.push_back({InvoiceWords::tr("Paid by then"), bare(invoice.paid)});
    if (invoice.paid < invoice.total)
        sums.push_back(
            {InvoiceWords::tr("To pay"), money(invoice.total - invoice.paid, invoice.currency), true});
    else
        sums.push_back({InvoiceWords::tr("Paid in full"), {}, true});
    return sums;
}

} // namespace

std::vector<Paper> invoicePapers(const Invoice& invoice, std::span<const Invoice> all) {
    const bool isNote = invoice.kind == InvoiceKind::CreditNote;
    MoneyPaper paper;
    paper.name = QStringLiteral("%1-%2").arg(
        isNote ? QStringLiteral("credit-note") : QStringLiteral("invoice"), words(invoice.label()));
    paper.shop = QStringList{words(invoice.shopName)} + typedLines(invoice.shopAddress);
    if (!invoice.taxNumber.empty())
        paper.shop.append(InvoiceWords::tr("Tax number %1").arg(words(invoice.taxNumber)));
    paper.title = invoiceTitle(invoice);
    paper.facts = {date(invoice.madeOn), InvoiceWords::tr("Order %1").arg(invoice.orderNumber)};
    if (invoice.handedOverOn)
        paper.facts.append(InvoiceWords::tr("Handed over %1").arg(date(*invoice.handedOverOn)));
    for (const Invoice& other : all)
        if (invoice.corrects == other.id)
            paper.facts.append(
                InvoiceWords::tr("Corrects invoice %1 of %2").arg(words(other.label()), date(other.madeOn)));
    paper.customer = QStringList{words(invoice.customerName)} + typedLines(invoice.customerAddress);
    paper.rows = rowLines(invoice);
    paper.sums = sumLines(invoice);
    if (isNote)
        paper.notes.append(InvoiceWords::tr("Reason: %1").arg(words(invoice.reason)));
    paper.foot = typedLines(invoice.shopLines);
    return moneyPages(paper);
}

} // namespace holdfast::app
