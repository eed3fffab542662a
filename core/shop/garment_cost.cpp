#include "core/shop/garment_cost.h"

#include "core/orders/film_waste.h"

namespace holdfast {

Cost garmentCost(const ShopFacts& facts, const Garment& garment, const Route& route) {
    std::vector<DecalOnFilm> decals;
    for (const Decal& decal : garment.decals)
        if (const Film* film = facts.films.find(decal.film))
            decals.push_back(
                {film, decal.width, decal.height, std::holds_alternative<Wording>(decal.content)});
    const BlankStyle& style = facts.styleOf(garment);
    const ShopSettings settings = pricingSettings(facts);
    return costOf(style, decals, handsFor(route, decals, style, settings), settings);
}

} // namespace holdfast
