// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is said of the order as a whole: its deposit, and how many more garments are made after one.

#include "app/places/fair_table/table_messages.h"

namespace holdfast::app {

// Less is paid than the shop asks for.
void sayDeposit(const TableSums& sums, const ShopSettings& settings, std::vector<TableMessage>& messages);

// Nothing is chosen yet for the garment at hand, and another one is there to be made after.
void sayMany(const TableDraft& draft, const ShopFacts& facts, std::vector<TableMessage>& messages);

} // namespace holdfast::app
