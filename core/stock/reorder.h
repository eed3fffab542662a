// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// When to buy more of what is kept in stock, and how much.
//
//   reorder point  x̄·L + z·σ·√L            what is enough until what is bought now arrives
//   bought up to   x̄·(L + R) + z·σ·√(L + R)  and for R more
// x̄ and σ are mean and standard deviation of what is used in a period, L the lead time in periods, R how long
// a purchase is to last, z the quantile of the unit normal at 1 − the chance of running out that is taken;
// z·σ·√L is the safety stock. Bought is when what is there, less what is promised, is at the reorder point or
// below (Silver, Pyke & Thomas, Inventory and Production Management in Supply Chains, 4th ed. 2017, chapter
// 6, the order-point, order-up-to-level system with the probability of no stockout in a cycle chosen; from
// memory). Of things that are counted the quantiles are those of demand.h, Poisson or negative binomial, as
// the same book has it for slow movers. *Limits:* periods are taken as independent and the lead time as
// known.

#include "core/stock/demand.h"

#include <cstdint>

namespace holdfast {

// Of the demand until what is bought arrives, and until that is used up.
struct ReorderLevels {
    double point = 0;
    double upTo = 0; // ≥ point

    // Nothing where `position` (what is there less what is promised) is above the reorder point.
    double toBuy(double position) const { return position > point ? 0 : upTo - position; }
};

// Of a demand of which `inPeriod` is the mean and the variance of one period.
Demand overPeriods(const Demand& inPeriod, double periods);

// Measured, as metres are: normal. A chance of one half needs no safety stock. REQUIRES: 0 < runOut ≤ 0.5.
ReorderLevels measuredLevels(const Demand& inLead, const Demand& inLeadAndAfter, double runOut);
// Counted, as blanks are: whole numbers.
ReorderLevels countedLevels(const Demand& inLead, const Demand& inLeadAndAfter, double runOut);

} // namespace holdfast
