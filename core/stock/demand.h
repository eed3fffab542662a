// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How many to bring of a thing of which nobody knows how many will be asked for: the quantity that earns most
// on the average (the newsvendor's problem).
//
// One too few loses `under`, one too many costs `over`. The best quantity is the least that is enough with
// the probability under / (under + over), the critical ratio (Arrow, Harris & Marschak 1951; as in any
// textbook of stock).
//
// How many are asked for is taken as
//   Poisson            where they spread no more than chance has it (variance = mean);
//   negative binomial  where they spread more: variance = mean + mean²/size;
//   normal             of the same mean and variance, where the mean is above kMostCounted.
// *Limits:* a normal may be below nothing; with a mean that large and the spread of a fair it hardly is.

#include <cstdint>

namespace holdfast {

inline constexpr double kMostCounted = 500;

// REQUIRES: neither below zero, and not both nothing.
double criticalRatio(double under, double over);

// REQUIRES: mean ≥ 0; variance ≥ mean, or it counts as the mean.
struct Demand {
    double mean = 0;
    double variance = 0;
};

// The best quantity of a normal demand, and what will be short of any quantity on the average:
// μ + zσ and σ·L((quantity − μ)/σ), L(z) = φ(z) − z·(1 − Φ(z)). REQUIRES: 0 < ratio < 1, variance > 0.
double normalQuantity(const Demand& demand, double ratio);
double normalShortage(const Demand& demand, double quantity);

// The least quantity that is enough with that probability. REQUIRES: 0 < ratio < 1.
std::int64_t quantityEnough(const Demand& demand, double ratio);

// What a quantity comes to on the average.
struct Brought {
    std::int64_t quantity = 0;
    double shortage = 0; // asked for and not there
    double leftover = 0; // comes home
};

// REQUIRES: quantity ≥ 0.
Brought broughtOf(const Demand& demand, std::int64_t quantity);
// Nothing where nothing is lost by a missing one. A ratio above kSurest counts as that: of what hardly
// anybody asks for none is brought to be quite sure.
inline constexpr double kSurest = 0.995;
Brought bestQuantity(const Demand& demand, double under, double over);

// What is earned compared with the nothing of a sure demand: under × sold − over × leftover.
double expectedProfit(const Demand& demand, double shortage, double leftover, double under, double over);

// Whether counts spread more than chance would have it once in twenty times: Σ(x − x̄)²/x̄ is then above the
// .95 quantile of χ² with `counts` − 1 degrees of freedom (Fisher's index of dispersion; the quantile by
// Wilson & Hilferty 1931). REQUIRES: variance is the sample's, with n − 1.
bool spreadsMoreThanChance(double mean, double variance, std::int64_t counts);
// The .95 quantile of χ². REQUIRES: degrees ≥ 1.
double chiSquared95(std::int64_t degrees);

} // namespace holdfast
