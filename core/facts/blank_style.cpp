// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/facts/blank_style.h"

#include <algorithm>

namespace holdfast {

Result<Done> checkFibres(std::span<const FibreShare> fibres) {
    if (fibres.empty())
        return fieldError("fibres", said("Name at least one fibre from the label."));
    int sum = 0;
    for (std::size_t at = 0; at < fibres.size(); ++at) {
        const auto& [fibre, percent] = fibres[at];
        if (percent < 1 || percent > 100)
            return fieldError("fibres", said("The share of {fibre} must be 1 to 100 %, not {percent} %.",
                                             {{"fibre", fibreName(fibre)}, {"percent", percent}}));
        if (std::ranges::find(fibres.first(at), fibre, &FibreShare::fibre) !=
            fibres.begin() + static_cast<std::ptrdiff_t>(at))
            return fieldError("fibres", said("The label names {fibre} twice; add its shares together.",
                                             {{"fibre", fibreName(fibre)}}));
        sum += percent;
    }
    if (sum != 100)
        return fieldError("fibres",
                          said("The fibres add to {sum} %; they must add to 100 %.", {{"sum", sum}}));
    return Done{};
}

const Colour* BlankStyle::colour(ColourId colourId) const {
    const auto found = std::ranges::find(colours, colourId, &Colour::id);
    return found == colours.end() ? nullptr : &*found;
}

Phrase fibreName(Fibre fibre) {
    switch (fibre) {
    case Fibre::Cotton:
        return phrase("cotton");
    case Fibre::Linen:
        return phrase("linen");
    case Fibre::Viscose:
        return phrase("viscose");
    case Fibre::Wool:
        return phrase("wool");
    case Fibre::Silk:
        return phrase("silk");
    case Fibre::Polyester:
        return phrase("polyester");
    case Fibre::Polyamide:
        return phrase("polyamide");
    case Fibre::Acrylic:
        return phrase("acrylic");
    case Fibre::Elastane:
        return phrase("elastane");
    case Fibre::Other:
        return phrase("other fibre");
    }
    return {};
}

Sentence fibreText(std::span<const FibreShare> fibres) {
    std::vector<FibreShare> byShare(fibres.begin(), fibres.end());
    std::ranges::stable_sort(byShare, std::ranges::greater{}, &FibreShare::percent);
    std::vector<Sentence> shares;
    for (const auto& [fibre, percent] : byShare)
        shares.push_back(said("{percent} % {fibre}", {{"percent", percent}, {"fibre", fibreName(fibre)}}));
    return said("{shares}", {{"shares", std::move(shares)}});
}

Phrase obstacleName(Obstacle obstacle) {
    switch (obstacle) {
    case Obstacle::Zip:
        return phrase("zip");
    case Obstacle::Buttons:
        return phrase("buttons");
    case Obstacle::Seams:
        return phrase("seams");
    case Obstacle::ThickHem:
        return phrase("thick hem");
    }
    return {};
}

Phrase wayRoundName(WayRound way) {
    switch (way) {
    case WayRound::Pillow:
        return phrase("pressing pillow");
    case WayRound::Turn:
        return phrase("turn the garment");
    case WayRound::SmallPlaten:
        return phrase("small platen");
    }
    return {};
}

} // namespace holdfast
