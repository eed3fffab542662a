// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/holds/cutting_holds.h"

#include <algorithm>
#include <array>

namespace holdfast {

namespace {

// Film that was cut for a cloth that nobody knows may be wasted: it is not known which film suits.
constexpr std::array kStopsTheKnife{Rule::LabelUnread,      Rule::WordingUnconfirmed, Rule::FilmUnfitStretch,
                                    Rule::FilmUnfitCoating, Rule::FilmUnfitHeat,      Rule::FilmUnfitFibre,
                                    Rule::LayersNotAllowed, Rule::DepositShort};

bool concerns(const Finding& finding, const Decal& decal) {
    if (finding.decal)
        return *finding.decal == decal.id;
    return !finding.film || *finding.film == decal.film;
}

} // namespace

const Finding* stopsTheKnife(std::span<const Finding> findings, const Decal& decal) {
    const auto found = std::ranges::find_if(findings, [&](const Finding& finding) {
        return finding.holds() && std::ranges::find(kStopsTheKnife, finding.rule) != kStopsTheKnife.end() &&
               concerns(finding, decal);
    });
    return found == findings.end() ? nullptr : &*found;
}

} // namespace holdfast
