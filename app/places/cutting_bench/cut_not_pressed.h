// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Decals that are cut and not yet pressed: those that may still be found cut wrong.

#include "app/places/cutting_bench/bench_model.h"

namespace holdfast::app {

// Those of this film first, then the others; in each, the last cut first. Of garments of open orders whose
// pressing has not begun.
std::vector<DecalOnGarment> cutNotPressed(const ReckonedShop& shop, std::optional<FilmId> film);

} // namespace holdfast::app
