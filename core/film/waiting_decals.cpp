// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/waiting_decals.h"

#include <algorithm>
#include <tuple>

namespace holdfast {

namespace {

std::vector<WaitingDecal> uncutDecals(const ShopFacts& facts, OrderState state) {
    std::vector<WaitingDecal> waiting;
    for (const Garment& garment : facts.garments) {
        const Order* order = facts.orders.find(garment.order);
        if (!order || order->state != state || garment.handedOverAt)
            continue;
        for (const Decal& decal : garment.decals) {
            if (!decal.isCut())
                waiting.push_back(
                    {&decal, facts.films.find(decal.film), &garment, order->promised, order->number});
        }
    }
    std::ranges::stable_sort(waiting, [](const WaitingDecal& one, const WaitingDecal& other) {
        return std::tuple{one.promised, one.orderNumber, one.garment->position, one.decal->layer,
                          one.decal->id} < std::tuple{other.promised, other.orderNumber,
                                                      other.garment->position, other.decal->layer,
                                                      other.decal->id};
    });
    return waiting;
}

} // namespace

std::vector<WaitingDecal> waitingDecals(const ShopFacts& facts) {
    return uncutDecals(facts, OrderState::Confirmed);
}

std::vector<WaitingDecal> quotedDecals(const ShopFacts& facts) {
    return uncutDecals(facts, OrderState::Quoted);
}

} // namespace holdfast
