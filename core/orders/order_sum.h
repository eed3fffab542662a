// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What an order comes to: garments, lines and tax, exact to the minor unit. Parts of a percentage are of the
// garments' prices alone, so that the order in which lines were written does not matter; they are rounded
// half up, away from zero.

#include "core/facts/price_rules.h"

#include "core/trade/dates.h"

#include <optional>
#include <span>
#include <vector>

namespace holdfast {

struct OrderSum {
    Money garments;
    std::vector<Money> lines; // as the lines are
    Money tax;                // that is in the total
    Money total;              // what the customer pays

    Money withoutTax() const { return total - tax; }
};

// Tax by line is the sum of the tax of each garment and line, rounded each; of what is taken off, it is below
// zero. Tax of nothing is nothing.
OrderSum sumOf(std::span<const Money> prices, std::span<const BillLine> lines, const TaxRule& tax);

// What each garment brought the shop: the total without tax, shared out over the garments by their prices.
std::vector<Money> earnedBy(std::span<const Money> prices, const OrderSum& sum);

// What an order of so many garments costs less; nothing where the shop has no such rule.
Percentage lessForMany(std::span<const PriceForMany> rules, std::int64_t garments);

// The line that a rule of the shop makes; none where it makes none. `wanted` is the day asked for.
std::optional<BillLine> forManyLine(const PriceRules& rules, std::int64_t garments);
std::optional<BillLine> rushLine(const PriceRules& rules, LocalDate wanted, LocalDate today);

} // namespace holdfast
