// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/quotation_paper.h"

#include "app/desk/bill_words.h"
#include "app/desk/formats.h"
#include "app/papers/money_paper.h"
#include "core/orders/invoicing.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace holdfast::app {

namespace {

struct QuotationWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::QuotationPaper)
};

// Head of either paper, of the shop as it is now.
MoneyPaper paperOf(const ReckonedShop& shop, const Order& order, const QString& title) {
    const ShopSettings& settings = shop.facts.settings;
    MoneyPaper paper;
    paper.shop = QStringList{words(settings.shopName)} + typedLines(settings.address);
    if (!settings.prices.taxNumber.empty())
        paper.shop.append(QuotationWords::tr("Tax number %1").arg(words(settings.prices.taxNumber)));
    paper.title = title;
    paper.customer = {words(shop.facts.customers.at(order.customer).name)};
    return paper;
}

std::vector<MoneyLine> billedLines(const ReckonedShop& shop, OrderId order) {
    const Currency& currency = shop.facts.settings.currency;
    const std::vector<BilledRow> rows = billedRows(shop.facts, order);
    std::vector<MoneyLine> lines;
    std::vector<const BilledRow*> told;
    for (const BilledRow& row : rows) {
        const auto isAlike = [&](const BilledRow& other) {
            return other.words == row.words && other.amount == row.amount;
        };
        if (std::ranges::any_of(told, [&](const BilledRow* other) { return isAlike(*other); }))
            continue;
        told.push_back(&row);
        const auto count = std::ranges::count_if(rows, isAlike);
        lines.push_back({count == 1 ? words(row.words)
                                    : QuotationWords::tr("%1 × %2, %3 each")
                                          .arg(count)
                                          .arg(words(row.words), moneyBare(row.amount, currency)),
                         moneyBare(row.amount * count, currency)});
    }
    return lines;
}

std::optional<MoneyLine> taxLine(const ReckonedShop& shop, const Order& order) {
    if (order.tax.kind == TaxKind::None)
        return std::nullopt;
    const BillWords tax = billWords(shop.facts, order).back();
    return MoneyLine{tax.words, tax.amount};
}

QString moveWords(const db::MoneyMove& move, const Now& now) {
    const std::array received{QuotationWords::tr("%1, in cash"), QuotationWords::tr("%1, by card"),
                              QuotationWords::tr("%1, by transfer")};
    const std::array paidBack{QuotationWords::tr("%1, paid back in cash"),
                              QuotationWords::tr("%1, paid back by card"),
                              QuotationWords::tr("%1, paid back by transfer")};
    const auto how = static_cast<std::size_t>(move.how);
    return (move.amount < Money{} ? paidBack : received)[how].arg(date(dateOf(now.toLocal(move.at))));
}

} // namespace

std::vector<Paper> quotationPapers(const ReckonedShop& shop, OrderId id) {
    const Order& order = shop.facts.orders.at(id);
    const Currency& currency = shop.facts.settings.currency;
    MoneyPaper paper = paperOf(shop, order, QuotationWords::tr("Quotation %1").arg(order.number));
    paper.name = QStringLiteral("quotation-%1").arg(order.number);
    paper.facts = {date(dateOf(shop.now.toLocal(order.takenAt)))};
    if (order.validUntil)
        paper.facts.append(order.isPastItsDay(shop.now.today())
                               ? QuotationWords::tr("Was valid until %1").arg(date(*order.validUntil))
                               : QuotationWords::tr("Valid until %1").arg(date(*order.validUntil)));
    paper.rows = billedLines(shop, id);
    const auto tax = taxLine(shop, order);
    const MoneyLine total{QuotationWords::tr("Total"), money(order.total, currency), true};
    if (tax && order.tax.kind == TaxKind::Added)
        paper.sums = {*tax, total};
    else if (tax)
        paper.sums = {total, *tax};
    else
        paper.sums = {total};
    paper.notes.append(QuotationWords::tr("Ordered today it would be ready %1.")
                           .arg(promise(order.promised, shop.now.today())));
    paper.notes.append(QuotationWords::tr("This is a quotation, and not an order yet."));
    return moneyPages(paper);
}

std::vector<Paper> receiptPapers(const ReckonedShop& shop, OrderId id, std::span<const db::MoneyMove> moves) {
    const Order& order = shop.facts.orders.at(id);
    const Currency& currency = shop.facts.settings.currency;
    MoneyPaper paper = paperOf(shop, order, QuotationWords::tr("Receipt, order %1").arg(order.number));
    paper.name = QStringLiteral("receipt-%1").arg(order.number);
    paper.facts = {date(shop.now.today())};
    for (const db::MoneyMove& move : moves)
        paper.rows.push_back({moveWords(move, shop.now), moneyBare(move.amount, currency)});
    paper.sums = {{QuotationWords::tr("Received"), money(order.paid, currency), true}};
    if (order.state == OrderState::Cancelled) {
        paper.notes.append(QuotationWords::tr("The order is cancelled."));
        return moneyPages(paper);
    }
    paper.sums.push_back({QuotationWords::tr("The order comes to"), moneyBare(order.total, currency)});
    if (const auto tax = taxLine(shop, order))
        paper.sums.push_back(
            {order.tax.kind == TaxKind::Added ? QuotationWords::tr("of it %1").arg(tax->words) : tax->words,
             tax->amount});
    if (order.owed() > Money{})
        paper.sums.push_back({QuotationWords::tr("Still to pay"), money(order.owed(), currency), true});
    else
        paper.sums.push_back({QuotationWords::tr("Paid in full"), {}, true});
    return moneyPages(paper);
}

} // namespace holdfast::app
