// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Which blanks to bring to a fair, by what was asked for at those before it. An estimate.
//
// Days of fairs before today count alike, whichever fair they were of, also those on which nothing was sold;
// the coming fair counts as that many such days; how often a size and colour is asked for in them, see
// kinds_asked.h. A missing blank loses the mean price of the style at fairs less its mean cost; one that
// comes home costs ShopSettings::keepingPercent of the blank, no more, because it keeps. *Limits:* who went
// away without an order is not known; fairs differ, and days of one fair may be alike; what was never sold at
// a fair is not proposed.

#include "core/fairs/fair_sales.h"
#include "core/stock/kinds_asked.h"

#include <algorithm>

namespace holdfast {

// What was asked for on days of fairs.
struct FairDemand {
    std::int64_t fairs = 0; // a place on days in a row, or a fair of the list
    std::int64_t days = 0;
    std::map<BlankKind, std::int64_t> sold;
    std::map<BlankStyleId, std::vector<std::int64_t>> soldADay; // one number for each day
    std::map<BlankStyleId, double> margin;                      // minor units, of one garment
};

// Days from `from` until yesterday.
FairDemand fairDemand(std::span<const FairOrder> orders, std::span<const Fair> fairs, LocalDate from,
                      LocalDate today);

inline constexpr std::int64_t kFewDays = 6; // fewer fair days say little

struct ToBring {
    BlankKind kind;
    std::string name; // "Tee, M, Moss"
    Demand asked;
    Brought brought;
    std::int64_t ready = 0;  // free on the rail, washed or in the wash, or of a style that is not
    std::int64_t toWash = 0; // free on the rail, still to be washed

    std::int64_t onRail() const { return ready + toWash; }
    std::int64_t missing() const { return std::max<std::int64_t>(0, brought.quantity - onRail()); }
};

struct WhatToBring {
    std::int64_t fairs = 0; // that it is reckoned from
    std::int64_t days = 0;
    std::int64_t comingDays = 1;
    std::vector<ToBring> kinds; // of which any is to be brought: by style, then its sizes and colours

    // Of all that was ever sold at a fair, also of kinds of which none is to be brought.
    double asked = 0;
    double shortage = 0;
    double leftover = 0;

    bool isFromFew() const { return days < kFewDays; }
};

// REQUIRES: comingDays ≥ 1.
WhatToBring whatToBring(const FairDemand& demand, const ShopFacts& facts, std::int64_t comingDays);

} // namespace holdfast
