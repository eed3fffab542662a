// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is said of an order that was taken while it is changed: what stays, what is lost by the change,
// whether the promise can be kept, and what was paid too much.

#include "app/places/fair_table/table_messages.h"

namespace holdfast::app {

// REQUIRES: draft.opened.
void sayChange(const TableDraft& draft, const TableSums& sums, const ReckonedShop& shop,
               std::vector<TableMessage>& messages);

} // namespace holdfast::app
