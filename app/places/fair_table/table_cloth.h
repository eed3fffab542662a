// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where the decals of a garment on the table lie on its cloth.

#include "app/places/fair_table/table_draft.h"
#include "core/orders/decal_on_cloth.h"

#include <optional>
#include <string>

namespace holdfast::app {

// "It runs 24 mm over the lower edge."; empty: it lies on the cloth.
Sentence offClothOf(const TableGarment& garment, const BlankStyle& style, std::size_t decal);

// A better spot for one that does not, clear of the garment's other decals.
std::optional<DecalSpot> spotOnCloth(const TableGarment& garment, const BlankStyle& style, std::size_t decal);

void layOn(TableDecal& decal, const DecalSpot& spot);

} // namespace holdfast::app
