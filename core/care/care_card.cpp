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

Sentence firstWashWords(std::optional<LocalTime> washFrom, std::optional<LocalTime> betterFrom) {
    if (!washFrom)
        return said("Let it rest before its first wash; the day is known once it is pressed.");
    if (!betterFrom || *betterFrom <= *washFrom)
        return said("Do not wash before {from}.", {{"from", *washFrom}});
    // On the same day only the clock tells the two apart.
    const Value better =
        dateOf(*betterFrom) == dateOf(*washFrom) ? Value{TimeOfDay{*betterFrom}} : Value{dateOf(*betterFrom)};
    return said("Do not wash before {from}; better from {better}.",
                {{"from", *washFrom}, {"better", better}});
}

Sentence washLine(const CareLimits& limits) {
    if (limits.washCelsius <= 0)
        return said("Do not wash.");
    const NamedValue most{"most", Celsius(limits.washCelsius)};
    const std::vector<NamedValue> warmth{{"warmth", limits.washCelsius <= kColdCelsius
                                                        ? said("cold, at most {most}", {most})
                                                        : said("cold or warm, at most {most}", {most})}};
    switch (limits.agitation) {
    case Agitation::ByHand:
        return said("Wash by hand, {warmth}.", warmth);
    case Agitation::VeryMild:
        return said("Wash {warmth}, on a very mild cycle.", warmth);
    case Agitation::Mild:
        return said("Wash {warmth}, on a mild cycle.", warmth);
    case Agitation::Normal:
        break;
    }
    return said("Wash {warmth}.", warmth);
}

Sentence dryLine(Tumble tumble) {
    return tumble == Tumble::No ? said("Dry on a line; do not tumble dry.")
                                : said("Dry on a line, or tumble dry low.");
}

// The decal takes the stricter of all; the cloth next to it what its own label allows.
Sentence ironLine(const CareLimits& limits, const std::optional<CareLimits>& blank) {
    if (blank && blank->ironCelsius <= 0)
        return said("Do not iron.");
    const Sentence decal =
        limits.ironCelsius <= 0
            ? said("Never iron the decal.")
            : said("Do not iron on the decal; if it must be, through a cloth at low heat.");
    if (!blank)
        return decal;
    return oneAfterTheOther(
        decal, said("The cloth around it: at most {most}.", {{"most", Celsius(blank->ironCelsius)}}));
}

std::vector<CareLine> plainGarment(const std::optional<CareLimits>& blank) {
    if (!blank)
        return {{CareMatter::Label, said("Follow the label sewn into the garment.")}};
    // As careWords puts them: one an axis.
    constexpr std::array kAxes{CareMatter::Wash, CareMatter::Dry, CareMatter::Iron, CareMatter::Detergent,
                               CareMatter::DryClean};
    const std::vector<Sentence> axes = careWords(*blank);
    std::vector<CareLine> lines;
    for (std::size_t at = 0; at < kAxes.size(); ++at)
        lines.push_back({kAxes[at], said("{advice}.", {{"advice", axes.at(at)}})});
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

    const auto add = [&card](CareMatter about, Sentence words) {
        card.lines.push_back({about, std::move(words)});
    };
    card.firstWash = firstWashWords(washFrom, betterFrom);
    if (limits.washCelsius > 0) {
        add(CareMatter::InsideOut, said("Turn it inside out."));
        add(CareMatter::Wash, washLine(limits));
        add(CareMatter::Detergent, said("Mild detergent. No bleach, no softener."));
    } else {
        card.firstWash = {};
        add(CareMatter::Wash, washLine(limits));
        add(CareMatter::Detergent, said("No bleach."));
    }
    add(CareMatter::Dry, dryLine(limits.tumble));
    add(CareMatter::Iron, ironLine(limits, blank));
    add(CareMatter::DryClean, said("Do not dry-clean the decal."));
    if (!blank)
        add(CareMatter::Label, said("Where the label sewn into the garment is stricter, follow the label."));
    return card;
}

} // namespace holdfast
