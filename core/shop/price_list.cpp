// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/shop/price_list.h"

#include "core/garments/placement_presets.h"
#include "core/holds/assessment.h"
#include "core/press/route.h"
#include "core/shop/garment_cost.h"

#include <algorithm>

namespace holdfast {

namespace {

std::vector<const Film*> filmsFor(const ShopFacts& facts, const BlankStyle& style) {
    std::vector<const Film*> offered;
    for (const Film& film : facts.films)
        if (!film.isRetired && film.recipe)
            offered.push_back(&film);
    std::vector<const Film*> suiting;
    std::ranges::copy_if(offered, std::back_inserter(suiting), [&](const Film* film) {
        return std::ranges::none_of(fitness(*film, style),
                                    [](const Finding& finding) { return finding.grade == Grade::Hold; });
    });
    return suiting.empty() ? offered : suiting;
}

// One of the style in a middle size, with one decal there.
Garment withDecal(const BlankStyle& style, const PlacementPreset& preset, const Film& film) {
    Decal decal;
    decal.film = film.id;
    decal.placement = preset.placement;
    decal.below = preset.below;
    decal.aside = preset.aside;
    decal.width = preset.wide;
    decal.height = std::min(preset.wide, preset.tallest);
    Garment garment;
    garment.style = style.id;
    garment.decals.push_back(std::move(decal));
    return garment;
}

ListedPrice listed(const ShopFacts& facts, const BlankStyle& style, const PlacementPreset& preset,
                   const std::vector<const Film*>& films) {
    ListedPrice price{preset.placement, preset.wide, {}, {}};
    for (const Film* film : films) {
        const Garment garment = withDecal(style, preset, *film);
        const Money asked =
            askedPriceOf(facts, garment, garmentCost(facts, garment, routeOf(facts, garment)));
        price.least = film == films.front() ? asked : std::min(price.least, asked);
        price.most = std::max(price.most, asked);
    }
    return price;
}

} // namespace

std::vector<ListedStyle> priceList(const ShopFacts& facts) {
    std::vector<ListedStyle> list;
    for (const BlankStyle& style : facts.styles) {
        const auto films = filmsFor(facts, style);
        if (style.isRetired || films.empty())
            continue;
        ListedStyle one{style.name, {}};
        const std::string size = style.sizes.empty() ? std::string{} : style.sizes[style.sizes.size() / 2];
        for (const PlacementPreset& usual : presetsFor(style.outline))
            if (const auto preset = presetFor(style.outline, usual.placement, size))
                one.prices.push_back(listed(facts, style, *preset, films));
        if (!one.prices.empty())
            list.push_back(std::move(one));
    }
    std::ranges::stable_sort(list, {}, &ListedStyle::name);
    return list;
}

} // namespace holdfast
