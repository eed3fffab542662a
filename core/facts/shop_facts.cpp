// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/shop_facts.h"

#include <algorithm>
#include <tuple>

namespace holdfast {

std::vector<const Garment*> ShopFacts::garmentsOf(OrderId order) const {
    std::vector<const Garment*> found;
    for (const Garment& garment : garments)
        if (garment.order == order)
            found.push_back(&garment);
    std::ranges::sort(found, {}, &Garment::position);
    return found;
}

std::span<const StepRecord> ShopFacts::stepsOf(const Garment& garment) const {
    const auto attemptOf = [](const StepRecord& record) {
        return std::tuple(record.garment, record.attempt);
    };
    return std::ranges::equal_range(steps, std::tuple(garment.id, garment.attempt), {}, attemptOf);
}

std::span<const Waiver> ShopFacts::waiversOf(GarmentId garment) const {
    return std::ranges::equal_range(waivers, garment, {}, &Waiver::garment);
}

const PressCheck* ShopFacts::lastCheck(PressId press) const {
    const PressCheck* last = nullptr;
    for (const PressCheck& check : pressChecks)
        if (check.press == press && (!last || last->at < check.at))
            last = &check;
    return last;
}

const WashLoad* ShopFacts::lastLoadOf(const BlankLot& lot) const {
    return lot.lastLoad ? loads.find(*lot.lastLoad) : nullptr;
}

namespace {

// A garment takes its unit out of the lot with its first step at the press; what is pressed, handed over or
// cancelled keeps nothing back any more.
bool stillToTakeItsUnit(const ShopFacts& facts, const Garment& garment) {
    if (garment.handedOverAt || !facts.stepsOf(garment).empty())
        return false;
    const Order* order = facts.orders.find(garment.order);
    return order && order->isOpen();
}

} // namespace

std::int64_t ShopFacts::freeUnits(const BlankLot& lot) const {
    const auto kept = std::ranges::count_if(garments, [&](const Garment& garment) {
        return garment.lot == lot.id && stillToTakeItsUnit(*this, garment);
    });
    return std::max<std::int64_t>(0, lot.unitsLeft - kept);
}

} // namespace holdfast
