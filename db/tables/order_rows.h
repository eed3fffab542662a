// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One row of an order, a garment or a decal as a fact, for all that read them. Each throws UnreadValue.

#include "core/facts/order.h"
#include "db/tables/fact_row.h"

namespace holdfast::db {

// What the three read, from the first column on. Orders are joined to their order_card.
inline constexpr const char* kOrderColumns =
    "shop_order.id, shop_order.number, customer_id, shop_order.state, taken_at, taken_at_place, "
    "shop_order.promised, handed_over_at, shop_order.note, total_minor, paid_minor, tax_kind, tax_rate, "
    "taxed_by, tax_rounding, valid_until ";
inline constexpr const char* kGarmentColumns =
    "garment.id, order_id, position, style_id, size, colour_id, lot_id, price_minor, attempt, "
    "garment.handed_over_at ";
inline constexpr const char* kDecalColumns =
    "decal.id, garment_id, film_id, artwork, wording, face, placement, below_mm, aside_mm, width_mm, "
    "height_mm, layer, confirmed_by, cut_roll_id, cut_at, ";
// After these: the outline that is kept, which is long, or none where nobody draws the decal.
inline constexpr const char* kOutline = "COALESCE(outline, '') AS outline ";
inline constexpr const char* kNoOutline = "'' AS outline ";
inline constexpr int kOrderColumnCount = 16, kGarmentColumnCount = 10, kDecalColumnCount = 16;

inline constexpr const char* kBillLineColumns = "bill_line.id, order_id, kind, words, minor, share ";

Order orderFrom(const FactRow& row); // without its lines
BillLine billLineFrom(const FactRow& row);
Garment garmentFrom(const FactRow& row); // without its decals
Decal decalFrom(const FactRow& row);

} // namespace holdfast::db
