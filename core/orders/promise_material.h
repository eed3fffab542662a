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
    std::string why;                         // the wait in words
};

struct Material {
    LocalTime readyAt{};
    std::vector<MaterialLeg> legs; // only those that are waited for, in the order of `at`
};

// `hours` are the shop's, from now on. None: something comes or is dry only beyond them.
std::optional<Material> materialFor(std::span<const AskedGarment> asked, const ShopFacts& facts,
                                    std::span<const OpenStretch> hours, const Now& now);

} // namespace holdfast
