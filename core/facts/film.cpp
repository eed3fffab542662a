// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/film.h"

namespace holdfast {

namespace {

constexpr Band<Celsius> kPlaten{{60}, {220}};
constexpr Seconds kLongestDwell{120};
constexpr Seconds kLongestStep{600};

struct NamedTime {
    const char* field;
    const char* name;
    Seconds time;
};

} // namespace

Result<Done> checkRecipe(const Recipe& recipe) {
    // Written so that a temperature that is no number is refused as well.
    if (!kPlaten.contains(recipe.temperature))
        return fieldError("temperature", "The platen's temperature must be 60 to 220 °C.");
    if (recipe.dwell < Seconds{1} || recipe.dwell > kLongestDwell)
        return fieldError("dwell", "The dwell must be 1 to 120 seconds.");
    const NamedTime times[] = {
        {"preheat", "preheat", recipe.preheat},
        {"coolBeforePeel", "wait before the peel", recipe.coolBeforePeel},
        {"finishFront", "finishing press on the front", recipe.finishFront},
        {"finishBack", "finishing press on the back", recipe.finishBack},
        {"tack", "short press of a lower layer", recipe.tack},
    };
    for (const NamedTime& step : times) {
        if (step.time < Seconds{0} || step.time > kLongestStep)
            return fieldError(step.field, std::string("The ") + step.name + " must be 0 to 600 seconds.");
    }
    return Done{};
}

std::string pressureName(Pressure pressure) {
    switch (pressure) {
    case Pressure::Light:
        return "light";
    case Pressure::Medium:
        return "medium";
    case Pressure::Firm:
        return "firm";
    }
    return {};
}

std::string peelName(Peel peel) {
    switch (peel) {
    case Peel::Hot:
        return "hot";
    case Peel::Warm:
        return "warm";
    case Peel::Cool:
        return "cool";
    }
    return {};
}

} // namespace holdfast
