// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What to buy now: blanks and films by their use, what is promised to orders, the lead time and the chance of
// running out that the shop takes (see reorder.h). An estimate.
//
// A blank: use is the garments ordered in recent weeks (kinds_asked.h); there is what nobody has reserved;
// what is promised is garments of confirmed orders that have no blank yet, held or not. Before a fair it is
// bought up to what is to be brought there (what_to_bring.h). A film: use is the length cut in recent weeks;
// there is what its rolls that may be used have beyond what waits to be cut from them, and of a roll whose
// use-by comes before new film, what usual use will take of it; what is promised is decals that no roll
// takes, by their area and the film round them (film_waste.h); whole metres are bought. Quotations are not
// promised. What is ordered and has not arrived is not known.

#include "core/film/usual_use.h"
#include "core/shop/reckoned_shop.h"
#include "core/stock/reorder.h"
#include "core/stock/what_to_bring.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace holdfast {

// Garments ordered, week by week, the last seven days first; as many weeks as the shop has taken orders, at
// most kUseWeeks. One made again counts again.
struct BlankUse {
    std::int64_t weeks = 0;
    std::map<BlankKind, std::int64_t> sold;
    std::map<BlankStyleId, std::vector<std::int64_t>> soldAWeek; // `weeks` numbers each
};

// Weeks before anything is said of what is used: with fewer only what is promised is bought.
inline constexpr std::int64_t kFewestUseWeeks = 3;

enum class WhyBuy {
    Enough,   // nothing is bought
    Promised, // what is there is not enough for orders
    Fair,     // the fair asks for more than the weeks do
    RunsLow,  // at the reorder point or below
};

// Of a film in mm, of blanks counted.
struct ToBuy {
    std::variant<BlankKind, FilmId> what;
    std::string name;     // "Tee, M, Moss", "Marram Soft, Dusk"
    std::string supplier; // empty: not written down
    std::int64_t there = 0;
    std::int64_t promised = 0; // to orders, and not there
    std::int64_t weeks = 0;    // of which its use is known
    bool isUsed = false;       // any of it, in those weeks
    Days leadTime{0};
    double use = 0; // within the lead time, on average; in eight of ten cases from `low` to `high`
    double useLow = 0;
    double useHigh = 0;
    std::int64_t reorderPoint = 0;
    std::int64_t buy = 0;
    Money cost; // of what is bought, at today's cost
    WhyBuy why = WhyBuy::Enough;

    bool isFilm() const { return std::holds_alternative<FilmId>(what); }
    bool isUseKnown() const { return weeks >= kFewestUseWeeks; }
};

struct WhatToBuy {
    // What is used, promised or of unknown use, by supplier, then blanks before films. Nothing retired.
    std::vector<ToBuy> lines;
    std::optional<Fair> fair; // that the lines are for, too

    bool isAnyBought() const;
    Money cost() const;
};

WhatToBuy whatToBuy(const ReckonedShop& shop, const BlankUse& blanks, const std::optional<Fair>& next,
                    const WhatToBring& bring);

} // namespace holdfast
