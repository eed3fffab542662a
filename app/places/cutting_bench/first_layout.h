// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The first layout of a film's decals as a wish has them, before any search for a shorter one. That of a
// usual film is made at once; that of thousands of decals, or around very many pins, beside the window.

#include "core/cutting/nest.h"
#include "core/shop/films_to_cut.h"

#include <functional>
#include <optional>

namespace holdfast::app {

// Laying decals takes time by their number and, around pins, by the number of both: 10 ms for the most that
// is laid at once, and 3,000 decals without a pin are the most.
bool isSoonLaid(std::size_t decals, std::size_t pins);
void setNothingIsSoonLaid(bool isNothing); // for tests: as if every layout took long

struct FirstLayout {
    Result<FilmNests> laid;
    std::optional<FilmNests> withoutPins; // the same wish without its pins, where it has any
};

// `shouldStop` may be empty; stopped, the decals lie in rows or not at all.
FirstLayout firstLayout(const ReckonedShop& shop, const FilmToCut& film, const NestWish& wish,
                        const std::function<bool()>& shouldStop = {});

} // namespace holdfast::app
