// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How long decals hold: the share without a fault after a number of washes or days, where most were only
// watched for a while and had none until then.
//
// Kaplan and Meier 1958: S(t) = Π (1 − dᵢ/nᵢ) over the times up to t at which faults came, n being those
// still watched; who left without a fault at the same time was watched. Standard error by Greenwood,
// S·√(Σ dᵢ/(nᵢ(nᵢ−dᵢ))); the ends of each step hold in 95 of 100 cases, reckoned on log(−log S) (Kalbfleisch
// and Prentice 1980 [M]), so that they never leave 0 … 1. Where all that were still watched failed, the upper
// end is that of the step before times Wilson's of none of as many: one garment proves nothing.

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace holdfast {

struct Watched {
    double until = 0; // washes or days; no fault before
    bool hadFault = false;
};

// From this time on, until the next step's.
struct SurvivalStep {
    double at = 0;
    std::size_t watched = 0; // just before
    std::size_t faults = 0;
    double share = 1;
    double standardError = 0;
    double low = 0;
    double high = 1;
};

struct Survival {
    std::vector<SurvivalStep> steps; // a step for each time at which faults came
    double watchedUntil = 0;         // nobody was watched for longer; nothing is said of later

    // The step that holds at a time; before the first one nobody has failed.
    SurvivalStep at(double time) const;
    std::optional<double> median() const; // the first time at which half or fewer are without a fault
};

Survival survivalOf(std::span<const Watched> cases);

} // namespace holdfast
