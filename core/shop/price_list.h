// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The prices that the shop asks at its stall: of each style with one decal of the usual size at each of its
// usual places (core/garments/placement_presets.h), by its price rules, as the fair table asks them.

#include "core/facts/placement.h"
#include "core/facts/shop_facts.h"

#include <string>
#include <vector>

namespace holdfast {

struct ListedPrice {
    Placement placement = Placement::Chest;
    Millimetres width; // of the decal, which is no taller than wide
    // By the film it is cut from; with the tax where prices have it in them.
    Money least;
    Money most;
};

struct ListedStyle {
    std::string name;
    std::vector<ListedPrice> prices; // at least one; the usual place first
};

// Styles that are offered, by name, in a middle size. Films are those that are offered, have a recipe and
// suit the style; where none of them does yet, because its label is not read, any with a recipe. A style of
// which nothing can be asked, for want of a film or a drawing, is left out.
std::vector<ListedStyle> priceList(const ShopFacts& facts);

} // namespace holdfast
