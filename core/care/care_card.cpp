#include "core/care/care_card.h"

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

std::vector<std::string> plainGarment(const std::optional<CareLimits>& blank) {
    if (!blank)
        return {"Follow the label sewn into the garment."};
    std::vector<std::string> lines = careWords(*blank);
    for (std::string& line : lines)
        line += '.';
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

    card.firstWash = firstWashWords(washFrom, betterFrom);
    if (limits.washCelsius > 0) {
        card.lines.push_back("Turn it inside out.");
        card.lines.push_back(washLine(limits));
        card.lines.push_back("Mild detergent. No bleach, no softener.");
    } else {
        card.firstWash.clear();
        card.lines.push_back(washLine(limits));
        card.lines.push_back("No bleach.");
    }
    card.lines.push_back(dryLine(limits.tumble));
    card.lines.push_back(ironLine(limits, blank));
    card.lines.push_back("Do not dry-clean the decal.");
    if (!blank)
        card.lines.push_back("Where the label sewn into the garment is stricter, follow the label.");
    return card;
}

} // namespace holdfast
