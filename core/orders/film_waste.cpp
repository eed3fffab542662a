// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/film_waste.h"

#include <algorithm>
#include <cmath>

namespace holdfast {

namespace {

constexpr double kMostWaste = 500; // percent

} // namespace

FilmWaste filmWaste(const CuttingHistory& history, const ShopSettings& settings) {
    if (history.cuts < kFewestCuts || history.decals <= 0)
        return {settings.filmWastePercent, false};
    const double between = static_cast<double>(history.film - history.decals);
    const double percent = std::ceil(between * 100 / static_cast<double>(history.decals));
    return {static_cast<int>(std::clamp(percent, 0.0, kMostWaste)), true};
}

ShopSettings pricingSettings(const ShopFacts& facts) {
    ShopSettings measured = facts.settings;
    measured.filmWastePercent = filmWaste(facts.cutting, facts.settings).percent;
    return measured;
}

} // namespace holdfast
