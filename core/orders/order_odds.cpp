// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/order_odds.h"

namespace holdfast {

std::vector<Sentence> orderOdds(const Order& order, std::size_t handedOver, const Currency& currency,
                                std::span<const SharedPress> shared) {
    std::vector<Sentence> odds;
    const NamedValue number{"order", Numeral{order.number}};
    const bool isCancelled = order.state == OrderState::Cancelled;
    if (isCancelled && handedOver > 0)
        odds.push_back(
            said("Order {order} is cancelled, yet a garment of it was handed over. Put the order back "
                 "to ask for what is owed.|Order {order} is cancelled, yet {n} garments of it were "
                 "handed over. Put the order back to ask for what is owed.",
                 {number, {"n", handedOver}}));
    if (!isCancelled && order.paid > order.total)
        odds.push_back(said("{paid} was paid for order {order}, which costs {total}. Give {over} back.",
                            {{"paid", Amount{order.paid, currency}},
                             number,
                             {"total", Amount{order.total, currency}},
                             {"over", Amount{order.paid - order.total, currency}}}));
    for (const SharedPress& each : shared)
        odds.push_back(
            said("{garment} and {other} are both under the platen of {press}, which takes one. Finish "
                 "the one that lies there, and put the other back on the walk.",
                 {{"garment", each.garment}, {"other", each.other}, {"press", each.press}}));
    return odds;
}

Sentence oddInShort(OrderState state, Money total, Money paid, bool isAnyHandedOver) {
    if (state == OrderState::Cancelled)
        return isAnyHandedOver ? said("Cancelled, yet handed over") : Sentence{};
    return paid > total ? said("Paid too much") : Sentence{};
}

} // namespace holdfast
