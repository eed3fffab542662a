// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/order_sum.h"

#include <algorithm>

namespace holdfast {

namespace {

Money worthOf(const BillLine& line, Money garments) {
    const auto* share = std::get_if<Percentage>(&line.worth);
    return share ? partOf(garments, *share, Rounding::HalfUp) : std::get<Money>(line.worth);
}

Money taxOn(Money amount, const TaxRule& tax) {
    switch (tax.kind) {
    case TaxKind::None:
        return {};
    case TaxKind::Included:
        return divided(amount, tax.rate.hundredths, kWholePercentage.hundredths + tax.rate.hundredths,
                       tax.rounding);
    case TaxKind::Added:
        return partOf(amount, tax.rate, tax.rounding);
    }
    return {};
}

} // namespace

OrderSum sumOf(std::span<const Money> prices, std::span<const BillLine> lines, const TaxRule& tax) {
    OrderSum sum;
    for (const Money price : prices)
        sum.garments += price;
    sum.total = sum.garments;
    for (const BillLine& line : lines) {
        sum.lines.push_back(worthOf(line, sum.garments));
        sum.total += sum.lines.back();
    }
    if (tax.by == TaxedBy::Total) {
        sum.tax = taxOn(sum.total, tax);
    } else {
        for (const Money price : prices)
            sum.tax += taxOn(price, tax);
        for (const Money line : sum.lines)
            sum.tax += taxOn(line, tax);
    }
    if (tax.kind == TaxKind::Added)
        sum.total += sum.tax;
    return sum;
}

std::vector<Money> earnedBy(std::span<const Money> prices, const OrderSum& sum) {
    return prices.empty() ? std::vector<Money>{} : sharedOut(sum.withoutTax(), prices);
}

Percentage lessForMany(std::span<const PriceForMany> rules, std::int64_t garments) {
    Percentage less;
    for (const PriceForMany& rule : rules)
        if (garments >= rule.garments)
            less = std::max(less, rule.less);
    return less;
}

std::optional<BillLine> forManyLine(const PriceRules& rules, std::int64_t garments) {
    const Percentage less = lessForMany(rules.forMany, garments);
    if (less == Percentage{})
        return std::nullopt;
    return BillLine{BillLineKind::ForMany, {}, Percentage{-less.hundredths}};
}

std::optional<BillLine> rushLine(const PriceRules& rules, LocalDate wanted, LocalDate today) {
    if (rules.rushWithin <= Days{0} || rules.rushMore == Percentage{} || wanted - today > rules.rushWithin)
        return std::nullopt;
    return BillLine{BillLineKind::Rush, {}, rules.rushMore};
}

} // namespace holdfast
