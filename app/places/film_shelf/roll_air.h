#pragma once
// The air a roll stood in: the readings of its places, one after the other, and its spells outside the film's
// bands.

#include "app/places/film_shelf/climate_chart.h"
#include "core/shop/reckoned_shop.h"

#include <vector>

namespace holdfast::app {

// From when on exposure counts: its last passed strip, or the day it came.
Instant exposureSince(const ReckonedShop& shop, const FilmRoll& roll);

// Outside a band since then, in order of time.
std::vector<Spell> spellsOutside(const ReckonedShop& shop, const FilmRoll& roll, Measure measure,
                                 Instant from, Instant to);

// The last so many days, with the hours outside the humidity band in all of them.
struct RollPicture {
    ClimatePicture picture;
    double humidityHoursOutside = 0;
};

// The air of its first place is shown from before it came too, to judge the place by.
RollPicture pictureOf(const ReckonedShop& shop, const FilmRoll& roll, Days window);

} // namespace holdfast::app
