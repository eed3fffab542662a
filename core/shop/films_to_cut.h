// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is on the cutting bench: films with decals to cut, the rolls to cut them from, and their nests.

#include "core/cutting/nest.h"
#include "core/shop/reckoned_shop.h"

#include <set>

namespace holdfast {

// A roll that may be cut from, and why it is where it is, in words with its numbers.
struct RollOffer {
    RollId roll;
    bool mayBeUsed = true; // in date and well kept
    Sentence reason;       // "Use-by 17 Dec, 21 days left"
};

// One film on the bench: decals that may be cut, by promise; those that may not yet, and why; rolls in the
// order they are cut from.
struct FilmToCut {
    FilmId film;
    std::vector<DecalId> waiting;
    std::map<DecalId, Sentence> notYet; // "Wording not confirmed."
    std::vector<RollOffer> rolls;
};

// Decals that may be cut, of every film.
std::size_t decalsToCut(const ReckonedShop& shop);

// Every film that has decals of open, confirmed orders to cut, by its earliest promise.
std::vector<FilmToCut> filmsToCut(const ReckonedShop& shop);

// What the maker wishes for one film on the bench.
struct NestWish : NestRules {
    std::vector<RollId> rolls; // cut from these, in this order; empty: as offered, those that may be used
    std::set<DecalId> leftOut;
};

// As the wish starts out: the shop's gap, every roll offered that may be used.
NestWish usualWish(const ReckonedShop& shop, const FilmToCut& film);

// Nests every waiting decal that is not left out: see nestOnRolls. An error where the film has no roll that
// may be used.
Result<FilmNests> nestFilm(const ReckonedShop& shop, const FilmToCut& film, const NestWish& wish,
                           const StripSearch* search = nullptr, const std::function<bool()>& shouldStop = {});

} // namespace holdfast
