// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the bench says of decals, rolls and lengths. Formatted once, here.

#include "app/places/cutting_bench/bench_model.h"

#include <QString>

namespace holdfast::app {

QString decalTitle(const ShopFacts& facts, const DecalOnGarment& decal);  // "418-b Heron, tote"
QString decalNumber(const ShopFacts& facts, const DecalOnGarment& decal); // "418-b"
QString sizeWords(Millimetres width, Millimetres height);                 // "180 × 228 mm"
QString areaWords(const FilmArea& area);                                  // "164 × 148 mm", along first
QString rollLabel(const ShopFacts& facts, RollId roll);                   // "R-09"
QString decalsToCut(std::size_t count);                                   // "9 to cut"

// Why nothing is done with decals that are being laid in the background.
QString beingLaidWords();

// How long the nest is compared with the shortest possible, and what its pins cost: only what is proved for
// what lies there now.
QString lengthWords(const BenchModel& model, const Nest& nest);

// Why a roll has its place among the film's offers; empty where it is none of them.
QString reasonOf(const FilmToCut& film, RollId roll);

} // namespace holdfast::app
