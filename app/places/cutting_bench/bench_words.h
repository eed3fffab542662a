#pragma once
// What the bench says of decals, rolls and lengths. Formatted once, here.

#include "app/places/cutting_bench/bench_model.h"

#include <QString>

namespace holdfast::app {

QString decalTitle(const ShopFacts& facts, const DecalOnGarment& decal);  // "418-b Heron, tote"
QString decalNumber(const ShopFacts& facts, const DecalOnGarment& decal); // "418-b"
QString sizeWords(Millimetres width, Millimetres height);                 // "180 × 228 mm"
QString areaWords(const FilmArea& area);                                  // "164 × 148 mm", along first
QString percent(double share);                                            // "82 %"
QString rollLabel(const ShopFacts& facts, RollId roll);                   // "R-09"
QString decalsToCut(std::size_t count);                                   // "9 to cut"

// What a nest is off the shortest thinkable.
QString aboveLeastWords(const Nest& nest);

// The reason why a roll stands where it does, among the film's offers; empty where it is none of them.
QString reasonOf(const FilmToCut& film, RollId roll);

// Shares in whole percent that add up to a hundred.
struct WholeShares {
    int decals = 0;
    int offcuts = 0;
    int waste = 0;
};
WholeShares wholeShares(const FilmShares& shares);

} // namespace holdfast::app
