// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The bill of the draft: its garments, what the maker wrote besides, and what follows from the shop's rules.

#include "app/places/fair_table/table_draft.h"
#include "core/facts/settings.h"
#include "core/orders/order_sum.h"

#include <span>
#include <vector>

namespace holdfast::app {

struct TableBill {
    std::vector<BillLine> lines;
    OrderSum sum;
};

// `prices` are of one of each garment. The lines of an order that was taken stay; that many cost less, and
// that a short day costs more, is added by the shop's rules as they are now, and is never less favourable
// than what was agreed.
TableBill billOf(const TableDraft& draft, std::span<const Money> prices, const ShopSettings& settings,
                 LocalDate today);

// A line that follows from a rule is left off, or any other is taken away.
void removeLine(TableDraft& draft, const BillLine& line);

// What was typed as a discount: "10 %" or an amount; none where it is neither, or not above nothing.
std::optional<std::variant<Money, Percentage>> readDiscount(const std::string& typed,
                                                            const Currency& currency);
// The discount of the draft, of which there is one; a null takes it away.
const BillLine* discountOf(const TableDraft& draft);
void giveDiscount(TableDraft& draft, const std::optional<std::variant<Money, Percentage>>& worth,
                  const std::string& why);

} // namespace holdfast::app
