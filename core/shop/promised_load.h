// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What promises already given will take: hours of the hands, room in the washer, film.

#include "core/orders/promise.h"
#include "core/shop/reckoned_shop.h"

#include <cstddef>
#include <optional>

namespace holdfast {

// The maker's and the platen's time from this step of the route on; waiting takes neither.
Seconds pressTime(const Route& route, std::size_t fromStep = 0);

// The decals of a garment that are still to be cut; those allotted to a roll have their film.
std::vector<DecalToCut> decalsToCut(const ReckonedShop& shop, const Garment& garment);

// Of confirmed orders' garments that are still to be pressed: work, due the rest before its promise (what is
// left of the route, uncut decals, and each film of an order cut once); blanks to be washed, those still to
// be bought from the shop's lead time after the order was taken; and the film that is left on rolls which may
// be used. `except` is ignored, as if that order had not been taken, but film already allotted to it still
// counts as used.
Promised promisedLoad(const ReckonedShop& shop, std::optional<OrderId> except = {});

} // namespace holdfast
