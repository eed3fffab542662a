// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/blank_rail/wash_basket.h"

#include <algorithm>

namespace holdfast::app {

void WashBasket::add(const ShopFacts& facts, const RailSpot& spot, std::int64_t units) {
    const auto found = m_units.find(spot);
    set(facts, spot, (found == m_units.end() ? 0 : found->second) + units);
}

void WashBasket::set(const ShopFacts& facts, const RailSpot& spot, std::int64_t units) {
    const std::int64_t kept = std::clamp<std::int64_t>(units, 0, washableAt(facts, spot));
    if (kept == 0)
        m_units.erase(spot);
    else
        m_units[spot] = kept;
}

void WashBasket::keepWashable(const ShopFacts& facts) {
    const auto before = m_units;
    for (const auto& [spot, units] : before)
        set(facts, spot, units);
}

std::int64_t WashBasket::count() const {
    std::int64_t all = 0;
    for (const auto& [spot, units] : m_units)
        all += units;
    return all;
}

Grams WashBasket::weight(const ShopFacts& facts) const {
    Grams weight;
    for (const auto& [spot, units] : m_units)
        weight = weight + facts.styles.at(spot.style).weight * units;
    return weight;
}

std::vector<db::WashPart> WashBasket::parts(const ShopFacts& facts) const {
    std::vector<db::WashPart> all;
    for (const auto& [spot, units] : m_units) {
        const auto parts = partsFor(facts, spot, units);
        all.insert(all.end(), parts.begin(), parts.end());
    }
    return all;
}

std::vector<std::string> WashBasket::bleeding(const ShopFacts& facts) const {
    std::vector<std::string> names;
    std::vector<std::string> all;
    for (const auto& [spot, units] : m_units) {
        const Colour* colour = facts.styles.at(spot.style).colour(spot.colour);
        if (!colour || std::ranges::find(all, colour->name) != all.end())
            continue;
        all.push_back(colour->name);
        if (mayBleed(colour->rgb))
            names.push_back(colour->name);
    }
    return all.size() > 1 ? names : std::vector<std::string>{};
}

std::vector<const Garment*> WashBasket::frees(const ReckonedShop& shop) const {
    std::vector<const Garment*> freed;
    for (const auto& [spot, units] : m_units) {
        auto waiting = waitingAt(shop, spot);
        if (std::ssize(waiting) > units)
            waiting.resize(static_cast<std::size_t>(units));
        freed.insert(freed.end(), waiting.begin(), waiting.end());
    }
    std::ranges::stable_sort(freed, {},
                             [&](const Garment* garment) { return shop.facts.orderOf(*garment).promised; });
    return freed;
}

} // namespace holdfast::app
