// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/promise_again.h"

#include "core/shop/promised_load.h"
#include "core/trade/assertion.h"

#include <algorithm>
#include <optional>

namespace holdfast {

namespace {

Result<Promise> onlyResting(const ReckonedShop& shop, Instant rested) {
    const LocalTime until = shop.now.toLocal(std::max(rested, shop.now.instant));
    const std::optional<LocalTime> ready = handedOverFrom(shop.facts.settings, until);
    if (!ready)
        return plainError(closedForAYear());
    return Promise{*ready, {}, said("Everything of it is pressed.")};
}

} // namespace

AskedGarment stillToDo(const ReckonedShop& shop, const Garment& garment) {
    const Assessment& assessment = shop.of(garment.id);
    AskedGarment asked;
    asked.style = garment.style;
    asked.size = garment.size;
    asked.colour = garment.colour;
    asked.decals = decalsToCut(shop, garment);
    asked.pressTime = pressTime(assessment.route, assessment.progress.finished);
    asked.lot = garment.lot;
    asked.isOnPress = assessment.progress.hasBegun();
    return asked;
}

Result<Promise> promiseAgain(const ReckonedShop& shop, OrderId order) {
    HOLDFAST_ASSERT(shop.facts.orders.find(order));
    std::vector<AskedGarment> asked;
    Instant rested = shop.now.instant;
    for (const Garment* garment : shop.facts.garmentsOf(order)) {
        const Assessment& assessment = shop.of(garment->id);
        if (assessment.restUntil)
            rested = std::max(rested, *assessment.restUntil);
        else if (!garment->handedOverAt)
            asked.push_back(stillToDo(shop, *garment));
    }
    if (asked.empty())
        return onlyResting(shop, rested);
    Result<Promise> promise = promiseFor(asked, shop.facts, promisedLoad(shop, order), shop.now);
    const std::optional<LocalTime> pressedOnes =
        handedOverFrom(shop.facts.settings, shop.now.toLocal(rested));
    if (promise.ok() && pressedOnes)
        promise->readyAt = std::max(promise->readyAt, *pressedOnes);
    return promise;
}

} // namespace holdfast
