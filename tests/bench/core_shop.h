// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A busy workshop as plain facts, for the benches of core.

#include "core/facts/climate.h"
#include "core/facts/shop_facts.h"

#include <string>

namespace holdfast::bench {

// The wall stands at 08:30 UTC of a Wednesday.
Now benchNow();

// Garments of confirmed orders that are ready for the press, one decal each, in films of three temperatures,
// promised over the next three weeks.
ShopFacts readyGarments(int garments);

// A place's readings, a quarter of an hour apart, the last one just now.
ClimateSeries quarterHours(std::size_t readings);

// Facts with nothing but films and rolls that have stood in one of four places since they came, and those
// places' climate of a year and a half, a reading every two hours.
struct RollsInClimate {
    ShopFacts facts;
    ClimateHistory climate;
};
RollsInClimate rollsOnShelves(int rolls);

// A logger's file of so many lines: time, temperature, humidity.
std::string loggerFile(std::size_t lines);

} // namespace holdfast::bench
