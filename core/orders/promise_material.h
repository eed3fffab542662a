// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// When blanks and films for an order can be at the press: bought, washed, dried.

#include "core/orders/promise.h"
#include "core/orders/promise_hours.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace holdfast {

// The latest of the order's garments on one leg of the way.
struct MaterialLeg {
    PromiseStage stage = PromiseStage::Wash; // BuyBlank, BuyFilm, Wash or Dry
    LocalTime at{};                          // it comes, or goes into the wash, or is dry
    LocalTime doneAt{};                      // what waits for it can go on
    Sentence why;                            // the wait in words
};

struct BlanksReady {
    LocalTime at{};
    std::vector<MaterialLeg> legs; // only those that are waited for, in the order of `at`
};

// `hours` are the shop's, from now on. An error where something comes or is dry only beyond them, or is to be
// washed in a washer that holds nothing.
Result<BlanksReady> blanksFor(std::span<const AskedGarment> asked, const ShopFacts& facts,
                              const ShopSettings& settings, std::span<const PromisedWash> promised,
                              std::span<const OpenStretch> hours, const Now& now);

// When film ordered now can be cut. REQUIRES: some film. An error where it comes only beyond the hours.
Result<MaterialLeg> filmBought(std::span<const FilmId> films, const ShopFacts& facts,
                               std::span<const FreeFilm> onShelf, std::span<const OpenStretch> hours,
                               const Now& now);

} // namespace holdfast
