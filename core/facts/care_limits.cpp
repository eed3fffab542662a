// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/care_limits.h"

#include <algorithm>

namespace holdfast {

namespace {

constexpr int kHottestByHand = 40; // °C

Sentence washWords(const CareLimits& limits) {
    if (limits.washCelsius <= 0)
        return said("Do not wash");
    const std::vector<NamedValue> at{{"most", Celsius(limits.washCelsius)}};
    switch (limits.agitation) {
    case Agitation::ByHand:
        return said("Wash by hand at up to {most}",
                    {{"most", Celsius(std::min(limits.washCelsius, kHottestByHand))}});
    case Agitation::VeryMild:
        return said("Machine wash at {most}, very mild cycle", at);
    case Agitation::Mild:
        return said("Machine wash at {most}, mild cycle", at);
    case Agitation::Normal:
        break;
    }
    return said("Machine wash at {most}", at);
}

Sentence tumbleWords(Tumble tumble) {
    switch (tumble) {
    case Tumble::No:
        return said("Do not tumble dry");
    case Tumble::Low:
        return said("Tumble dry low");
    case Tumble::Normal:
        break;
    }
    return said("Tumble dry at normal heat");
}

Sentence ironWords(int celsius) {
    if (celsius <= 0)
        return said("Do not iron");
    // The lowest setting of either edition is meant dry.
    const std::vector<NamedValue> most{{"most", Celsius(celsius)}};
    return celsius <= 120 ? said("Iron at up to {most}, without steam", most)
                          : said("Iron at up to {most}", most);
}

Sentence bleachWords(Bleach bleach) {
    switch (bleach) {
    case Bleach::No:
        return said("Do not bleach");
    case Bleach::OxygenOnly:
        return said("Bleach with oxygen only");
    case Bleach::Any:
        break;
    }
    return said("Any bleach");
}

Sentence cleaningWords(Cleaning cleaning) {
    switch (cleaning) {
    case Cleaning::None:
        return said("Do not dry-clean");
    case Cleaning::P:
        return said("Dry-clean with solvent P");
    case Cleaning::F:
        return said("Dry-clean with solvent F");
    case Cleaning::W:
        return said("Professional wet cleaning only");
    case Cleaning::PF:
        return said("Dry-clean with solvent P or F");
    case Cleaning::PW:
        return said("Dry-clean with solvent P, or professional wet cleaning");
    case Cleaning::FW:
        return said("Dry-clean with solvent F, or professional wet cleaning");
    case Cleaning::All:
        break;
    }
    return said("Dry-clean with solvent P or F, or professional wet cleaning");
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

std::vector<Sentence> careWords(const CareLimits& limits) {
    return {washWords(limits), tumbleWords(limits.tumble), ironWords(limits.ironCelsius),
            bleachWords(limits.bleach), cleaningWords(limits.cleaning)};
}

} // namespace holdfast
