#pragma once
// The hours at the press that promises already given will take.

#include "core/orders/promise.h"
#include "core/shop/reckoned_shop.h"

#include <cstddef>
#include <vector>

namespace holdfast {

// The maker's and the platen's time from this step of the route on; waiting takes neither.
Seconds pressTime(const Route& route, std::size_t fromStep = 0);

// Each garment of a confirmed order that is still to be pressed: due the rest before its promise, with what
// is left of its route.
std::vector<PressLoad> promisedLoad(const ReckonedShop& shop);

} // namespace holdfast
