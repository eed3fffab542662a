// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/promise_film.h"

#include "core/cutting/cut_length.h"
#include "core/film/use_first.h"

#include <algorithm>
#include <map>

namespace holdfast {

namespace {

using Decals = std::vector<Decal>;

// As many of the decals as the roll takes, from the first on; what is too wide for it stays.
void cutFrom(const FreeFilm& roll, const Film& film, const ShopSettings& settings,
             std::vector<const Decal*>& waiting) {
    std::vector<const Decal*> narrow;
    for (const Decal* decal : waiting) {
        if (lengthFor(*decal, film, roll.width, settings))
            narrow.push_back(decal);
    }
    std::size_t fitting = 0;
    std::size_t tooMany = narrow.size() + 1;
    std::size_t tried = narrow.size(); // mostly all fit
    while (tooMany - fitting > 1) {
        const bool fit = fitOnto(std::span{narrow}.first(tried), film, roll.width, roll.left, settings);
        (fit ? fitting : tooMany) = tried;
        tried = fitting + (tooMany - fitting) / 2;
    }
    narrow.resize(fitting);
    std::erase_if(waiting,
                  [&](const Decal* decal) { return std::ranges::find(narrow, decal) != narrow.end(); });
}

bool suffices(const Decals& decals, const Film& film, std::span<const FreeFilm> rolls, LocalDate pressed,
              const ShopSettings& settings) {
    std::vector<const Decal*> waiting;
    for (const Decal& decal : decals)
        waiting.push_back(&decal);
    for (const FreeFilm& roll : rolls) {
        if (roll.film == film.id && roll.left > Millimetres{} && (!roll.useBy || *roll.useBy >= pressed))
            cutFrom(roll, film, settings, waiting);
        if (waiting.empty())
            return true;
    }
    return false;
}

} // namespace

std::vector<FilmId> filmsToBuy(std::span<const AskedGarment> asked, const ShopFacts& facts,
                               std::span<const FreeFilm> film, LocalDate pressed) {
    std::map<FilmId, Decals> byFilm;
    for (const AskedGarment& garment : asked) {
        for (const DecalToCut& wanted : garment.decals) {
            if (wanted.hasFilm)
                continue;
            Decal decal;
            decal.film = wanted.film;
            decal.width = wanted.width;
            decal.height = wanted.height;
            byFilm[wanted.film].push_back(decal);
        }
    }
    std::vector<FilmId> toBuy;
    for (const auto& [id, decals] : byFilm) {
        const Film* known = facts.films.find(id);
        if (!known || !suffices(decals, *known, film, pressed, facts.settings))
            toBuy.push_back(id);
    }
    return toBuy;
}

} // namespace holdfast
