#pragma once
// What no form lets anybody do to an order, and two laptops can bring about between them, or an undo: each in
// a sentence with what can be done about it.

#include "core/orders/order.h"

#include <cstddef>
#include <string>
#include <vector>

namespace holdfast {

// `handedOver`: how many of its garments were. Empty for nearly every order.
std::vector<std::string> orderOdds(const Order& order, std::size_t handedOver, const Currency& currency);

} // namespace holdfast
