// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/bill_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>
#include <QStringList>

namespace holdfast::app {

namespace {

class BillText {
    Q_DECLARE_TR_FUNCTIONS(BillText)
};

} // namespace

std::vector<BillWords> billWords(std::span<const BillLine> lines, const OrderSum& sum, const TaxRule& tax,
                                 const ShopSettings& settings) {
    std::vector<BillWords> bill;
    for (std::size_t at = 0; at < lines.size(); ++at)
        bill.push_back({words(lineName(lines[at])), moneyBare(sum.lines[at], settings.currency)});
    if (tax.kind == TaxKind::None)
        return bill;
    const QString name = words(taxWords(tax, settings.prices.taxName));
    bill.push_back({tax.kind == TaxKind::Included ? BillText::tr("of it %1").arg(name) : name,
                    moneyBare(sum.tax, settings.currency)});
    return bill;
}

std::vector<BillWords> billWords(const ShopFacts& facts, const Order& order) {
    std::vector<Money> prices;
    for (const Garment* garment : facts.garmentsOf(order.id))
        prices.push_back(garment->price);
    return billWords(order.lines, sumOf(prices, order.lines, order.tax), order.tax, facts.settings);
}

QString billInLine(const std::vector<BillWords>& bill) {
    QStringList parts;
    for (const BillWords& each : bill)
        parts.append(QStringLiteral("%1 %2").arg(each.words, each.amount));
    return parts.join(QStringLiteral(" · "));
}

} // namespace holdfast::app
