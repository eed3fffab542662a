// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/shared_press.h"

#include "core/press/step_key.h"

namespace holdfast {

namespace {

// On which press it lies under the platen, if on any.
std::optional<PressId> pressOf(const ShopFacts& facts, const Garment& garment) {
    const auto steps = facts.stepsOf(garment);
    const bool isOnPress = !steps.empty() && !steps.back().finishedAt && isHeatKey(steps.back().key);
    return isOnPress ? steps.back().press : std::nullopt;
}

} // namespace

std::vector<SharedPress> sharedPresses(const ShopFacts& facts, OrderId order) {
    std::vector<SharedPress> shared;
    for (const Garment* garment : facts.garmentsOf(order)) {
        const auto press = pressOf(facts, *garment);
        const Press* found = press ? facts.presses.find(*press) : nullptr;
        if (found == nullptr)
            continue;
        for (const Garment& other : facts.garments)
            if (other.id != garment->id && pressOf(facts, other) == press)
                shared.push_back({facts.labelOf(*garment), facts.labelOf(other), found->name});
    }
    return shared;
}

} // namespace holdfast
