// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// An order that was taken before, laid out on the fair table to be changed, or to be taken once more.

#include "app/places/fair_table/table_draft.h"
#include "core/orders/order_change.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::app {

// How it stands in the shop. Never changed once made, so that steps of the draft share it.
struct OpenedOrder {
    Order order;
    OrderDraft before;
    std::vector<TableGarment> garments; // the same as the table lays them out
    std::shared_ptr<const TableDraft>
        aside; // what was half typed when it was opened; it comes back afterwards
};

// REQUIRES: an open order of the facts. What is on the table is set aside, unless nothing of an order is.
TableDraft openedDraft(const ShopFacts& facts, OrderId order, const TableDraft& onTable);
// The same garments for the same customer, as an order that is still to be taken.
TableDraft sameAgain(const ShopFacts& facts, OrderId order, const TableDraft& onTable);
// What was set aside for it, or an empty table.
TableDraft afterOpened(const TableDraft& draft);

// The order changed in the shop meanwhile: what the maker did not touch is as it is there now.
TableDraft broughtUpToDate(const TableDraft& draft, const ShopFacts& facts);

// The garment as it was laid out; null: it is new. Copies are not compared.
const TableGarment* asOpened(const TableDraft& draft, const TableGarment& garment);
bool isAsTaken(const TableDraft& draft, const TableGarment& garment);
// Of its copies those that are new, or that are not as they were taken.
int copiesToMake(const TableDraft& draft, const TableGarment& garment);
int blanksWanted(const TableDraft& draft, const TableGarment& garment);

// Why a garment may not be made otherwise; empty: it may.
Sentence whyItStays(const ShopFacts& facts, GarmentId garment);
// Of the step from one draft to the next: the first garment that may not be touched, in words.
Sentence whatStays(const ShopFacts& facts, const TableDraft& from, const TableDraft& to);

} // namespace holdfast::app
