// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The air a roll was in: the readings of its places, one after the other, and its spells outside the film's
// bands.

#include "app/places/film_shelf/climate_chart.h"
#include "core/film/climate_window.h"
#include "core/shop/reckoned_shop.h"

#include <vector>

namespace holdfast::app {

// From when on exposure counts: its last passed strip, or the day it came.
Instant exposureSince(const ReckonedShop& shop, const FilmRoll& roll);

// Outside a band since then, in order of time.
std::vector<Spell> spellsOutside(const ReckonedShop& shop, const FilmRoll& roll, Measure measure,
                                 Instant from, Instant to);

// A window of time, with the hours outside the humidity band in all of it.
struct RollPicture {
    ClimatePicture picture;
    double humidityHoursOutside = 0;
};

// The air of its first place is shown from before it came too, to judge the place by.
RollPicture pictureOf(const ReckonedShop& shop, const FilmRoll& roll, const ClimateWindow& window);

// The marks below a chart: where it begins, its middle, its end.
std::vector<DayMark> dayMarks(const ReckonedShop& shop, const ClimateWindow& window);

// The longest of a measure’s spells, each with its hours.
void addLongest(std::vector<Spell> spells, Measure measure, std::vector<LabelledSpell>& labelled);

} // namespace holdfast::app
