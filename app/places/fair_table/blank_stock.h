// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How many blanks of each style, size and colour are free on the rail, washed or not: what the tiles say.

#include "core/facts/shop_facts.h"

#include <compare>
#include <map>
#include <string>

namespace holdfast::app {

struct BlankStock {
    std::int64_t washed = 0;   // can be pressed today: washed and dry, or of a style that is not washed first
    std::int64_t drying = 0;   // in a load that is not dry
    std::int64_t unwashed = 0; // needs a wash, or another one without softener

    std::int64_t total() const { return washed + drying + unwashed; }
    BlankStock& operator+=(const BlankStock& other);
    // As many fewer, as a garment takes them: washed ones first, unwashed ones last.
    BlankStock without(std::int64_t units) const;
};

struct BlankKind {
    BlankStyleId style;
    std::string size;
    ColourId colour;

    auto operator<=>(const BlankKind&) const = default;
};

class BlankRailStock {
public:
    BlankRailStock() = default;
    explicit BlankRailStock(const ShopFacts& facts);

    BlankStock of(const BlankKind& kind) const;
    BlankStock ofSize(BlankStyleId style, const std::string& size) const; // all colours
    BlankStock ofColour(BlankStyleId style, ColourId colour) const;       // all sizes

    // The blank a customer most likely gets where size or colour are still open: most washed, then most.
    BlankKind likeliest(const BlankStyle& style, const std::string& size, ColourId colour) const;

private:
    std::map<BlankKind, BlankStock> m_stock;
};

} // namespace holdfast::app
