// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How much of a roll decals take.

#include "core/facts/film.h"
#include "core/facts/order.h"
#include "core/facts/settings.h"

#include <optional>
#include <span>

namespace holdfast {

// Length one decal takes along a roll of this width, alone: an edge margin at both edges of the roll, a gap
// after it along the roll; the shorter of its two ways round where the film has no grain. None where it fits
// neither way.
std::optional<Millimetres> lengthFor(const Decal& decal, const Film& film, Millimetres rollWidth,
                                     const ShopSettings& settings);

// Length a set of decals takes in rows side by side (first fit by falling height): the plain way of the
// knife, and quickly calculated; nestedLength is never more. A gap is between neighbours and after each row.
// Decals that fit neither way are left out.
Millimetres lengthInRows(std::span<const Decal* const> decals, const Film& film, Millimetres rollWidth,
                         const ShopSettings& settings);

// Length these decals take on a roll of this width, nested at once; never more than in rows. Decals that fit
// neither way are left out.
Millimetres nestedLength(std::span<const Decal* const> decals, const Film& film, Millimetres rollWidth,
                         const ShopSettings& settings);

// Whether they can be cut from that much of a roll: one after the other, in rows, or nested.
bool fitOnto(std::span<const Decal* const> decals, const Film& film, Millimetres rollWidth, Millimetres left,
             const ShopSettings& settings);

} // namespace holdfast
