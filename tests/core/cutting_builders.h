// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A bench for tests: decals of one film that wait, and rolls to cut them from.

#include "core/cutting/nest.h"
#include "core/shop/films_to_cut.h"
#include "tests/core/shelf_builders.h"

#include <vector>

namespace holdfast::test {

class CuttingBench : public ShelfOfOneFilm {
public:
    ReckonedShop shop() const {
        ReckonedShop shop;
        shop.now = now;
        shop.facts = facts();
        shop.conditions = conditions();
        shop.allotment = allotment();
        return shop;
    }
    FilmToCut toCut() const {
        const std::vector<FilmToCut> films = filmsToCut(shop());
        return films.empty() ? FilmToCut{film.id, {}, {}, {}} : films.front();
    }
    NestWish usual() const { return usualWish(shop(), toCut()); }
    Result<FilmNests> tryNests(const NestWish& wish, const StripSearch* search = nullptr) const {
        return nestFilm(shop(), toCut(), wish, search);
    }
    FilmNests nests(const NestWish& wish, const StripSearch* search = nullptr) const {
        Result<FilmNests> made = tryNests(wish, search);
        return made.ok() ? std::move(*made) : FilmNests{};
    }
    FilmNests nests() const { return nests(usual()); }
};

// What is wrong with a nest, looked at apart from how it was made: each decal inside the margins and the
// roll's length, a gap between any two, lengths right. Empty: nothing.
inline std::string faultOf(const Nest& nest) {
    const auto away = [](const FilmArea& one, const FilmArea& other, Millimetres gap) {
        return one.across + one.acrossSize + gap <= other.across ||
               other.across + other.acrossSize + gap <= one.across ||
               one.along + one.alongSize + gap <= other.along ||
               other.along + other.alongSize + gap <= one.along;
    };
    Millimetres furthest;
    for (std::size_t index = 0; index < nest.decals.size(); ++index) {
        const FilmArea& lies = nest.decals[index].lies;
        if (lies.across < nest.edge || lies.across + lies.acrossSize + nest.edge > nest.rollWidth)
            return "a decal lies within the edge margin";
        if (lies.along < Millimetres{nest.gap.value / 2})
            return "a decal lies at the cut end";
        furthest = std::max(furthest, lies.along + lies.alongSize);
        for (std::size_t other = index + 1; other < nest.decals.size(); ++other) {
            if (!away(lies, nest.decals[other].lies, nest.gap))
                return "two decals lie nearer than the gap";
        }
        for (const FilmArea& offcut : nest.offcuts) {
            if (!away(lies, offcut, Millimetres{nest.gap.value / 2}))
                return "an offcut reaches into a decal's gap";
        }
    }
    const Millimetres tail{nest.gap.value - nest.gap.value / 2};
    if (nest.length != (nest.decals.empty() ? Millimetres{} : furthest + tail))
        return "the length is not that to the last decal";
    if (nest.length > nest.rollLeft)
        return "the nest is longer than the roll";
    if (nest.leastLength > nest.length)
        return "the least length is above the length";
    for (std::size_t index = 0; index < nest.offcuts.size(); ++index) {
        const FilmArea& offcut = nest.offcuts[index];
        if (offcut.acrossSize < kSmallestOffcut || offcut.alongSize < kSmallestOffcut)
            return "an offcut is too small to keep";
        if (offcut.along + offcut.alongSize > nest.length ||
            offcut.across + offcut.acrossSize > nest.rollWidth)
            return "an offcut lies outside";
        for (std::size_t other = index + 1; other < nest.offcuts.size(); ++other) {
            if (!away(offcut, nest.offcuts[other], Millimetres{}))
                return "two offcuts lie over one another";
        }
    }
    return {};
}

} // namespace holdfast::test
