// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/blank_style.h"

#include <algorithm>

namespace holdfast {

Result<Done> checkFibres(std::span<const FibreShare> fibres) {
    if (fibres.empty())
        return fieldError("fibres", "Name at least one fibre from the label.");
    int sum = 0;
    for (std::size_t at = 0; at < fibres.size(); ++at) {
        const auto& [fibre, percent] = fibres[at];
        if (percent < 1 || percent > 100)
            return fieldError("fibres", "The share of " + fibreName(fibre) + " must be 1 to 100 %, not " +
                                            std::to_string(percent) + " %.");
        if (std::ranges::find(fibres.first(at), fibre, &FibreShare::fibre) !=
            fibres.begin() + static_cast<std::ptrdiff_t>(at))
            return fieldError("fibres",
                              "The label names " + fibreName(fibre) + " twice; add its shares together.");
        sum += percent;
    }
    if (sum != 100)
        return fieldError("fibres",
                          "The fibres add to " + std::to_string(sum) + " %; they must add to 100 %.");
    return Done{};
}

const Colour* BlankStyle::colour(ColourId colourId) const {
    const auto found = std::ranges::find(colours, colourId, &Colour::id);
    return found == colours.end() ? nullptr : &*found;
}

std::string fibreName(Fibre fibre) {
    switch (fibre) {
    case Fibre::Cotton:
        return "cotton";
    case Fibre::Linen:
        return "linen";
    case Fibre::Viscose:
        return "viscose";
    case Fibre::Wool:
        return "wool";
    case Fibre::Silk:
        return "silk";
    case Fibre::Polyester:
        return "polyester";
    case Fibre::Polyamide:
        return "polyamide";
    case Fibre::Acrylic:
        return "acrylic";
    case Fibre::Elastane:
        return "elastane";
    case Fibre::Other:
        return "other fibre";
    }
    return {};
}

std::string fibreText(std::span<const FibreShare> fibres) {
    std::vector<FibreShare> byShare(fibres.begin(), fibres.end());
    std::ranges::stable_sort(byShare, std::ranges::greater{}, &FibreShare::percent);
    std::string text;
    for (const auto& [fibre, percent] : byShare) {
        if (!text.empty())
            text += ", ";
        text += std::to_string(percent) + " % " + fibreName(fibre);
    }
    return text;
}

std::string obstacleName(Obstacle obstacle) {
    switch (obstacle) {
    case Obstacle::Zip:
        return "zip";
    case Obstacle::Buttons:
        return "buttons";
    case Obstacle::Seams:
        return "seams";
    case Obstacle::ThickHem:
        return "thick hem";
    }
    return {};
}

std::string wayRoundName(WayRound way) {
    switch (way) {
    case WayRound::Pillow:
        return "pressing pillow";
    case WayRound::Turn:
        return "turn the garment";
    case WayRound::SmallPlaten:
        return "small platen";
    }
    return {};
}

} // namespace holdfast
