// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The rows of an order as taking and changing it write them. All throw SqliteFailure; Shop::act is their
// door.

#include "core/orders/order_draft.h"
#include "core/trade/result.h"
#include "db/actions/order_actions.h"
#include "db/journal/writer.h"

namespace holdfast::db {

// One already known and not forgotten since, or one of the same name and phone number, or a new one. A name
// alone is no proof.
Result<CustomerId> customerFor(Writer& writer, const OrderDraft& draft);

// The order of a draft that is checked, with its garments, reserved blanks and what is paid. `agreed` says
// how the customer agreed to wording and artwork, where the draft says that they did.
Result<OrderTaken> writeOrder(Writer& writer, const OrderDraft& draft, const ShopSettings& settings,
                              const Now& now, const char* agreed);

// With its decals; `confirmedBy` says how the customer agreed to them, empty: not yet. Keeps no blank.
GarmentId addGarment(Writer& writer, OrderId order, const GarmentDraft& draft, int position,
                     const char* confirmedBy);
void addDecal(Writer& writer, GarmentId garment, const DecalDraft& draft, const char* confirmedBy);

// As it was typed, on an order's bill; what is there already is written over.
void addBillLine(Writer& writer, OrderId order, const BillLine& line);
void rewriteBillLine(Writer& writer, const BillLine& line);

// What is taken off an order may not be more than what is left of it when garments leave it.
Result<Done> requireNotBelowNothing(Connection& connection, OrderId order, std::int64_t number);

// All but what was done with it: whether it is confirmed, and cut.
void rewriteDecal(Writer& writer, DecalId decal, const DecalDraft& draft);

} // namespace holdfast::db
