// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/order_odds.h"

namespace holdfast {

std::vector<std::string> orderOdds(const Order& order, std::size_t handedOver, const Currency& currency,
                                   std::span<const SharedPress> shared) {
    std::vector<std::string> odds;
    const std::string number = std::to_string(order.number);
    const bool isCancelled = order.state == OrderState::Cancelled;
    if (isCancelled && handedOver > 0)
        odds.push_back("Order " + number + " is cancelled, yet " +
                       (handedOver == 1 ? std::string{"a garment of it was"}
                                        : std::to_string(handedOver) + " garments of it were") +
                       " handed over. Put the order back to ask for what is owed.");
    if (!isCancelled && order.paid > order.total)
        odds.push_back(spokenAmount(order.paid, currency) + " was paid for order " + number +
                       ", which costs " + spokenAmount(order.total, currency) + ". Give " +
                       spokenAmount(order.paid - order.total, currency) + " back.");
    for (const SharedPress& each : shared)
        odds.push_back(each.garment + " and " + each.other + " are both under the platen of " + each.press +
                       ", which takes one. Finish the one that lies there, and put the other back on the "
                       "walk.");
    return odds;
}

std::string oddInShort(OrderState state, Money total, Money paid, bool isAnyHandedOver) {
    if (state == OrderState::Cancelled)
        return isAnyHandedOver ? "Cancelled, yet handed over" : "";
    return paid > total ? "Paid too much" : "";
}

} // namespace holdfast
