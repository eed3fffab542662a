// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is chosen for the next wash: blanks by spot. It outlives the place being left, not the program.

#include "app/places/blank_rail/rail_stock.h"

#include <map>
#include <vector>

namespace holdfast::app {

class WashBasket {
public:
    // Takes in as many as are there to be washed; what is chosen already counts.
    void add(const ShopFacts& facts, const RailSpot& spot, std::int64_t units);
    void set(const ShopFacts& facts, const RailSpot& spot, std::int64_t units); // 0 takes it out
    // Blanks that are gone from the rail, or washed meanwhile, leave the basket.
    void keepWashable(const ShopFacts& facts);
    void clear() { m_units.clear(); }

    bool isEmpty() const { return m_units.empty(); }
    const std::map<RailSpot, std::int64_t>& units() const { return m_units; }
    std::int64_t count() const;
    Grams weight(const ShopFacts& facts) const;
    std::vector<db::WashPart> parts(const ShopFacts& facts) const;
    // The names of colours that may bleed next to others, where there is more than one colour.
    std::vector<std::string> bleeding(const ShopFacts& facts) const;
    // Garments that this wash makes ready, earliest promise first.
    std::vector<const Garment*> frees(const ReckonedShop& shop) const;

private:
    std::map<RailSpot, std::int64_t> m_units;
};

} // namespace holdfast::app
