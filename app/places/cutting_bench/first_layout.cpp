// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/first_layout.h"

namespace holdfast::app {

namespace {

// A decal without pins counts for a hundred, and one more for each pin.
constexpr std::uint64_t kCountsFor = 100;
constexpr std::uint64_t kSoonLaid = 300'000;

bool& isNothingSoonLaid() {
    static bool isNothing = false;
    return isNothing;
}

} // namespace

void setNothingIsSoonLaid(bool isNothing) {
    isNothingSoonLaid() = isNothing;
}

bool isSoonLaid(std::size_t decals, std::size_t pins) {
    return !isNothingSoonLaid() && decals * (kCountsFor + pins) <= kSoonLaid;
}

FirstLayout firstLayout(const ReckonedShop& shop, const FilmToCut& film, const NestWish& wish,
                        const std::function<bool()>& shouldStop) {
    FirstLayout layout{nestFilm(shop, film, wish, nullptr, shouldStop), std::nullopt};
    if (!wish.pins.empty() && !(shouldStop && shouldStop())) {
        NestWish free = wish;
        free.pins.clear();
        if (auto known = nestFilm(shop, film, free, nullptr, shouldStop); known.ok())
            layout.withoutPins = std::move(known).value();
    }
    return layout;
}

} // namespace holdfast::app
