// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/care/care_card.h"

#include <array>
#include <utility>

namespace holdfast {

namespace {

// What the trade advises for cloth with film on it: common practice, no source. Cold is up to 30 °C, warm up
// to 40 °C.
constexpr CareLimits kTradeAdvice{.washCelsius = 40,
                                  .agitation = Agitation::Normal,
                                  .tumble = Tumble::Low,
                                  .ironCelsius = 110,
                                  .bleach = Bleach::No,
                                  .cleaning = Cleaning::None};
constexpr int kColdCelsius = 30;

std::string firstWashWords(std::optional<LocalTime> washFrom, std::optional<LocalTime> betterFrom) {
    if (!washFrom)
        return "Let it rest before its first wash; the day is known once it is pressed.";
    std::string words = "Do not wash before " + spokenDay(dateOf(*washFrom)) + ", " + clockTime(*washFrom);
    if (betterFrom && *betterFrom > *washFrom) {
        words += "; better from ";
        // On the same day only the clock tells the two apart.
        words += dateOf(*betterFrom) == dateOf(*washFrom) ? clockTime(*betterFrom)
                                                          : spokenDay(dateOf(*betterFrom));
    }
    return words + ".";
}

std::string washLine(const CareLimits& limits) {
    if (limits.washCelsius <= 0)
        return "Do not wash.";
    const std::string warmth =
        (limits.washCelsius <= kColdCelsius ? "cold, at most " : "cold or warm, at most ") +
        degrees(limits.washCelsius);
    switch (limits.agitation) {
    case Agitation::ByHand:
        return "Wash by hand, " + warmth + ".";
    case Agitation::VeryMild:
        return "Wash " + warmth + ", on a very mild cycle.";
    case Agitation::Mild:
        return "Wash " + warmth + ", on a mild cycle.";
    case Agitation::Normal:
        break;
    }
    return "Wash " + warmth + ".";
}

std::string dryLine(Tumble tumble) {
    return tumble == Tumble::No ? "Dry on a line; do not tumble dry." : "Dry on a line, or tumble dry low.";
}

// The decal takes the stricter of all; the cloth beside it what its own label allows.
std::string ironLine(const CareLimits& limits, const std::optional<CareLimits>& blank) {
    if (blank && blank->ironCelsius <= 0)
        return "Do not iron.";
    const std::string beside =
        blank ? " The cloth beside it: at most " + degrees(blank->ironCelsius) + "." : "";
    if (limits.ironCelsius <= 0)
        return "Never iron the decal." + beside;
    return "Do not iron on the decal; if it must be, through a cloth at low heat." + beside;
}

std::vector<CareLine> plainGarment(const std::optional<CareLimits>& blank) {
    if (!blank)
        return {{CareMatter::Label, "Follow the label sewn into the garment."}};
    // As careWords puts them: one an axis.
    constexpr std::array kAxes{CareMatter::Wash, CareMatter::Dry, CareMatter::Iron, CareMatter::Detergent,
                               CareMatter::DryClean};
    const std::vector<std::string> axes = careWords(*blank);
    std::vector<CareLine> lines;
    for (std::size_t at = 0; at < kAxes.size(); ++at)
        lines.push_back({kAxes[at], axes.at(at) + "."});
    return lines;
}

} // namespace

CareCard careCard(const std::optional<CareLimits>& blank, std::span<const Film* const> films,
                  std::optional<LocalTime> washFrom, std::optional<LocalTime> betterFrom) {
    CareCard card;
    if (films.empty()) {
        card.lines = plainGarment(blank);
        return card;
    }

    CareLimits limits = blank ? stricter(kTradeAdvice, *blank) : kTradeAdvice;
    for (const Film* film : films)
        limits = stricter(limits, film->care);

    const auto add = [&card](CareMatter about, std::string words) {
        card.lines.push_back({about, std::move(words)});
    };
    card.firstWash = firstWashWords(washFrom, betterFrom);
    if (limits.washCelsius > 0) {
        add(CareMatter::InsideOut, "Turn it inside out.");
        add(CareMatter::Wash, washLine(limits));
        add(CareMatter::Detergent, "Mild detergent. No bleach, no softener.");
    } else {
        card.firstWash.clear();
        add(CareMatter::Wash, washLine(limits));
        add(CareMatter::Detergent, "No bleach.");
    }
    add(CareMatter::Dry, dryLine(limits.tumble));
    add(CareMatter::Iron, ironLine(limits, blank));
    add(CareMatter::DryClean, "Do not dry-clean the decal.");
    if (!blank)
        add(CareMatter::Label, "Where the label sewn into the garment is stricter, follow the label.");
    return card;
}

} // namespace holdfast
