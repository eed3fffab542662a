// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/care_limits.h"

#include <algorithm>

namespace holdfast {

namespace {

constexpr int kHottestByHand = 40; // °C

std::string washWords(const CareLimits& limits) {
    if (limits.washCelsius <= 0)
        return "Do not wash";
    switch (limits.agitation) {
    case Agitation::ByHand:
        return "Wash by hand at up to " + degrees(std::min(limits.washCelsius, kHottestByHand));
    case Agitation::VeryMild:
        return "Machine wash at " + degrees(limits.washCelsius) + ", very mild cycle";
    case Agitation::Mild:
        return "Machine wash at " + degrees(limits.washCelsius) + ", mild cycle";
    case Agitation::Normal:
        break;
    }
    return "Machine wash at " + degrees(limits.washCelsius);
}

std::string tumbleWords(Tumble tumble) {
    switch (tumble) {
    case Tumble::No:
        return "Do not tumble dry";
    case Tumble::Low:
        return "Tumble dry low";
    case Tumble::Normal:
        break;
    }
    return "Tumble dry at normal heat";
}

std::string ironWords(int celsius) {
    if (celsius <= 0)
        return "Do not iron";
    // The lowest setting of either edition is meant dry.
    return "Iron at up to " + degrees(celsius) + (celsius <= 120 ? ", without steam" : "");
}

std::string bleachWords(Bleach bleach) {
    switch (bleach) {
    case Bleach::No:
        return "Do not bleach";
    case Bleach::OxygenOnly:
        return "Bleach with oxygen only";
    case Bleach::Any:
        break;
    }
    return "Any bleach";
}

std::string cleaningWords(Cleaning cleaning) {
    switch (cleaning) {
    case Cleaning::None:
        return "Do not dry-clean";
    case Cleaning::P:
        return "Dry-clean with solvent P";
    case Cleaning::F:
        return "Dry-clean with solvent F";
    case Cleaning::W:
        return "Professional wet cleaning only";
    case Cleaning::PF:
        return "Dry-clean with solvent P or F";
    case Cleaning::PW:
        return "Dry-clean with solvent P, or professional wet cleaning";
    case Cleaning::FW:
        return "Dry-clean with solvent F, or professional wet cleaning";
    case Cleaning::All:
        break;
    }
    return "Dry-clean with solvent P or F, or professional wet cleaning";
}

// Solvent P is perchloroethylene and all that is gentler, hydrocarbons (F) among them (public GINETEX table).
std::uint8_t solventsOf(Cleaning cleaning) {
    const auto named = static_cast<std::uint8_t>(cleaning);
    const bool hasP = (named & static_cast<std::uint8_t>(Cleaning::P)) != 0;
    return hasP ? named | static_cast<std::uint8_t>(Cleaning::F) : named;
}

// What both allow; as it is named on the labels where that says the same.
Cleaning allowedByBoth(Cleaning one, Cleaning other) {
    const auto named =
        static_cast<Cleaning>(static_cast<std::uint8_t>(one) & static_cast<std::uint8_t>(other));
    const std::uint8_t allowed = solventsOf(one) & solventsOf(other);
    return solventsOf(named) == allowed ? named : static_cast<Cleaning>(allowed);
}

} // namespace

CareLimits stricter(const CareLimits& one, const CareLimits& other) {
    return {
        .washCelsius = std::min(one.washCelsius, other.washCelsius),
        .agitation = std::min(one.agitation, other.agitation),
        .tumble = std::min(one.tumble, other.tumble),
        .ironCelsius = std::min(one.ironCelsius, other.ironCelsius),
        .bleach = std::min(one.bleach, other.bleach),
        .cleaning = allowedByBoth(one.cleaning, other.cleaning),
    };
}

std::vector<std::string> careWords(const CareLimits& limits) {
    return {washWords(limits), tumbleWords(limits.tumble), ironWords(limits.ironCelsius),
            bleachWords(limits.bleach), cleaningWords(limits.cleaning)};
}

std::string degrees(int celsius) {
    return std::to_string(celsius) + " °C";
}

} // namespace holdfast
