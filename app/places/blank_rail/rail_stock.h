// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What hangs on the rail, counted by style, size and colour from the facts. No widget, no clock.

#include "core/shop/reckoned_shop.h"
#include "db/actions/blank_actions.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::app {

// One size and colour of a style.
struct RailSpot {
    BlankStyleId style;
    std::string size;
    ColourId colour;

    auto operator<=>(const RailSpot&) const = default;
};

struct RailCount {
    std::int64_t washed = 0; // can be pressed
    std::int64_t drying = 0;
    std::int64_t unwashed = 0; // to be washed, or to be washed again
    std::int64_t wanted = 0;   // by open orders, not pressed yet

    std::int64_t all() const { return washed + drying + unwashed; }
    std::int64_t reserved() const { return std::min(wanted, all()); }
    std::int64_t isShort() const { return std::max<std::int64_t>(0, wanted - washed - drying); }
    RailCount& operator+=(const RailCount& other);
};

struct StyleRail {
    std::shared_ptr<const BlankStyle> style;   // with the colours that hang here
    std::vector<std::vector<RailCount>> cells; // by colour, then size, in the style's own order
    std::vector<RailCount> byColour;
    RailCount total;
    std::int64_t spotsShort = 0; // blanks short of washed, over all spots

    const RailCount& at(std::size_t colour, std::size_t size) const { return cells[colour][size]; }
};

// The styles by name. Styles and colours that are retired hang here as long as there are any, or they are
// wanted.
std::vector<StyleRail> countRail(const ReckonedShop& shop);

// Which units of which lots a number of blanks of a spot to be washed are: reserved ones first, then the
// oldest.
std::vector<db::WashPart> partsFor(const ShopFacts& facts, const RailSpot& spot, std::int64_t units);
std::int64_t washableAt(const ShopFacts& facts, const RailSpot& spot);

// Open garments that wait for a washed blank of this spot, earliest promise first.
std::vector<const Garment*> waitingAt(const ReckonedShop& shop, const RailSpot& spot);

// A colour that may bleed in its first wash: dark or strong. An estimate from the shade alone.
bool mayBleed(std::uint32_t rgb);

} // namespace holdfast::app
