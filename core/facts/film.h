// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A film (the material: finish and shade), its recipe at the press, what it suits and how it must be kept.
// The recipe comes from the film maker's sheet; the program ships none.

#include "core/facts/blank_style.h"
#include "core/facts/care_limits.h"
#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/money.h"
#include "core/trade/phrase.h"
#include "core/trade/units.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast {

enum class Pressure { Light, Medium, Firm };
enum class Peel { Hot, Warm, Cool };

struct Recipe {
    Celsius temperature;
    Seconds dwell{0};
    Pressure pressure = Pressure::Medium;
    Peel peel = Peel::Warm;
    Seconds preheat{15};       // common practice, no source
    Seconds coolBeforePeel{0}; // 0 for a hot peel
    Seconds finishFront{5};    // common practice, no source
    Seconds finishBack{5};     // common practice, no source
    Seconds tack{5};           // a lower layer's short press before the next is laid on it
    std::string confirmedBy;   // who compared it with the maker's sheet; empty: nobody yet

    bool isConfirmed() const { return !confirmedBy.empty(); }
    bool operator==(const Recipe&) const = default;
};

// 60–220 °C, 1–120 s dwell, the other times 0–600 s; names the field that is not.
Result<Done> checkRecipe(const Recipe& recipe);

struct StorageLimits {
    Band<Humidity> humidity{{30}, {50}};   // common practice, no source
    Band<Celsius> temperature{{10}, {30}}; // steady room temperature: common practice, no source
    Hours allowedOutside{72};

    bool operator==(const StorageLimits&) const = default;
};

// Accelerated ageing by a factor Q10 for each 10 °C above a reference.
struct AgeingModel {
    double q10 = 2.0;
    Celsius reference{22};

    auto operator<=>(const AgeingModel&) const = default;
};

struct Film {
    FilmId id;
    std::string finish; // "Marram Soft"
    std::string shade;  // "Dusk"
    std::uint32_t rgb = 0;
    std::optional<Recipe> recipe;
    Stretch follows = Stretch::Some; // the most stretch it can follow
    bool gripsCoated = false;        // holds on water-repellent or waxed cloth
    std::vector<Fibre> notFor;       // fibres it does not hold on
    CareLimits care;
    std::optional<Days> shelfLife; // none: the maker gives no limit
    StorageLimits storage;
    AgeingModel ageing;
    Days testStripExtends{30};
    bool mayLieUnder = true; // another film may be pressed on it
    bool mayLieOver = true;  // it may be pressed on another film
    bool hasGrain = false;   // decals keep their direction on the roll
    Millimetres rollWidth{500};
    Money costPerMetre;
    std::string supplier{}; // who it is bought from; empty: not written down
    bool isRetired = false; // not offered for new work; its rolls are used up

    std::string name() const { return finish + ", " + shade; }
};

Phrase pressureName(Pressure pressure); // "medium"
Phrase peelName(Peel peel);             // "warm"

} // namespace holdfast
