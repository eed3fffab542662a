// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How often each size and colour of a style is asked for, by what was sold of it in periods that count alike:
// days of fairs, or weeks.
//   garments in one  x̄ over all periods. Where they spread more than chance has it (see demand.h), the
//                    negative binomial of their variance s²: size = x̄²/(s² − x̄) in one.
//   a size and colour's share p* = (x + Kλ)/(N + K): of N sold x were of it; λ is the share of its size times
//                    the share of its colour, K = (N² − Σx²)/Σ(x − Nλ)². So a cell with few is drawn toward
//                    what the style's sizes and colours tell, the more so the less they contradict it
//                    (Fienberg & Holland 1973, pseudo-Bayes estimators of cell probabilities).
// Over n periods a cell is asked for n·x̄·p* times on the average (a share of Poisson or negative binomial
// counts is such a count again, of the same size).

#include "core/facts/blank_style.h"
#include "core/stock/demand.h"

#include <map>
#include <span>
#include <string>
#include <vector>

namespace holdfast {

struct BlankKind {
    BlankStyleId style;
    std::string size;
    ColourId colour;

    auto operator<=>(const BlankKind&) const = default;
};

// The shares p* of a style's cells, by sizes and colours in the table's order. REQUIRES: rows of equal
// length.
std::vector<std::vector<double>> drawnTogether(const std::vector<std::vector<std::int64_t>>& sold);

// Of each of the style's sizes, then colours, over that many periods to come. `ofStyle` is what was sold of
// the style in each period.
std::vector<std::vector<Demand>> kindsAsked(const BlankStyle& style,
                                            const std::map<BlankKind, std::int64_t>& sold,
                                            std::span<const std::int64_t> ofStyle, double periods);

} // namespace holdfast
