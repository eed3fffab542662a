// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The care text that goes with a garment, in words: the stricter of blank and films, the film trade's own
// advice, and the day from which it may be washed.

#include "core/facts/care_limits.h"
#include "core/facts/film.h"
#include "core/trade/dates.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace holdfast {

// What a line is about, for the picture next to it.
enum class CareMatter { InsideOut, Wash, Detergent, Dry, Iron, DryClean, Label };

struct CareLine {
    CareMatter about = CareMatter::Label;
    Sentence words;
};

struct CareCard {
    Sentence firstWash;          // "Do not wash before Fri 13 Nov 10:30; better from Sun 15 Nov."
    std::vector<CareLine> lines; // in reading order
};

// A blank without a read label gives no limits: pass none, and the card says that its own label rules.
CareCard careCard(const std::optional<CareLimits>& blank, std::span<const Film* const> films,
                  std::optional<LocalTime> washFrom, std::optional<LocalTime> betterFrom);

} // namespace holdfast
