// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/film.h"

namespace holdfast {

namespace {

constexpr Band<Celsius> kPlaten{{60}, {220}};
constexpr Seconds kLongestDwell{120};
constexpr Seconds kLongestStep{600};

struct NamedTime {
    const char* field;
    Phrase name;
    Seconds time;
};

} // namespace

Result<Done> checkRecipe(const Recipe& recipe) {
    // Written so that a temperature that is no number is refused as well.
    if (!kPlaten.contains(recipe.temperature))
        return fieldError("temperature", said("The platen's temperature must be 60 to 220 °C."));
    if (recipe.dwell < Seconds{1} || recipe.dwell > kLongestDwell)
        return fieldError("dwell", said("The dwell must be 1 to 120 seconds."));
    const NamedTime times[] = {
        {"preheat", phrase("The preheat"), recipe.preheat},
        {"coolBeforePeel", phrase("The wait before the peel"), recipe.coolBeforePeel},
        {"finishFront", phrase("The finishing press on the front"), recipe.finishFront},
        {"finishBack", phrase("The finishing press on the back"), recipe.finishBack},
        {"tack", phrase("The short press of a lower layer"), recipe.tack},
    };
    for (const NamedTime& step : times) {
        if (step.time < Seconds{0} || step.time > kLongestStep)
            return fieldError(step.field, said("{what} must be 0 to 600 seconds.", {{"what", step.name}}));
    }
    return Done{};
}

Phrase pressureName(Pressure pressure) {
    switch (pressure) {
    case Pressure::Light:
        return phrase("light");
    case Pressure::Medium:
        return phrase("medium");
    case Pressure::Firm:
        return phrase("firm");
    }
    return {};
}

Phrase peelName(Peel peel) {
    switch (peel) {
    case Peel::Hot:
        return phrase("hot");
    case Peel::Warm:
        return phrase("warm");
    case Peel::Cool:
        return phrase("cool");
    }
    return {};
}

} // namespace holdfast
