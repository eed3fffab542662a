// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Whether the film that promises leave over is enough for what is being ordered.

#include "core/orders/promise.h"

#include <span>
#include <vector>

namespace holdfast {

// Films that must be bought: their free rolls that are in date until `pressed` do not take all decals, laid
// in rows or nested. A film the shop does not know is bought.
std::vector<FilmId> filmsToBuy(std::span<const AskedGarment> asked, const ShopFacts& facts,
                               std::span<const FreeFilm> film, LocalDate pressed);

} // namespace holdfast
