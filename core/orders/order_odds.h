// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What no form lets anybody do to an order, and two laptops can bring about between them, or an undo: each in
// a sentence with what can be done about it.

#include "core/facts/order.h"
#include "core/trade/sentence.h"

#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace holdfast {

// A garment under the platen of a press where another one is too: "423-a", "431-b", "Bench".
struct SharedPress {
    std::string garment;
    std::string other;
    std::string press;
};

// `handedOver`: how many of its garments were. Empty for nearly every order.
std::vector<Sentence> orderOdds(const Order& order, std::size_t handedOver, const Currency& currency,
                                std::span<const SharedPress> shared = {});

// The first of them for a line of a list, "Paid too much"; empty for nearly every order.
Sentence oddInShort(OrderState state, Money total, Money paid, bool isAnyHandedOver);

} // namespace holdfast
