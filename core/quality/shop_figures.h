// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// All that the figures of a shop are reckoned from, for one span of days.

#include "core/facts/unread_row.h"
#include "core/fairs/fair_sales.h"
#include "core/orders/till.h"
#include "core/quality/figures.h"
#include "core/stock/what_to_buy.h"
#include "core/trade/money.h"
#include "core/trade/units.h"

#include <algorithm>
#include <string>
#include <vector>

namespace holdfast {

// Of one film, over the span: its rolls together.
struct FilmUse {
    std::string film;
    Millimetres received;
    Millimetres cut;
    Millimetres testStrips;
    Millimetres wasted; // left over when a roll was used up, and found missing

    // Of what left the shelf, the share that became nothing a customer has. None where nothing left it.
    std::optional<double> shareWasted() const {
        const auto gone = static_cast<double>((cut + testStrips + wasted).value);
        return gone > 0 ? std::optional{static_cast<double>((testStrips + wasted).value) / gone}
                        : std::nullopt;
    }
};

// Orders that were taken at one place: a fair, or the workshop.
struct PlaceTakings {
    std::string place;
    std::int64_t days = 0; // on which any was taken
    std::int64_t orders = 0;
    std::int64_t garments = 0;
    Money ordered; // the prices of their garments
    Money taken;   // of that so far, less what was paid back
};

struct ShopFigures {
    LocalDate from{};                                   // the first day that counts
    FaultShare handedOver;                              // all garments of the span
    FaultTables compared;                               // what those that came back have in common
    Survival withoutFault;                              // by days since they were handed over
    std::vector<Days> watched;                          // of each garment, the shortest first
    FaultMonths months;                                 // in which they were handed over
    std::vector<PromiseGiven> promises;                 // that were to be kept by now
    std::vector<FilmUse> films;                         // any of which moved; the most cut first
    std::vector<PlaceTakings> places;                   // the most ordered first
    std::vector<Earned> earned;                         // at fairs
    std::optional<Fair> nextFair;                       // of the list
    WhatToBring bring;                                  // to it, or to a day of a fair where none is to come
    BlankUse blankUse;                                  // of recent weeks, whatever the span
    std::vector<TillCount> tillCounts;                  // of days of the span, the latest first
    std::int64_t unanswered = 0;                        // claims of which nothing was done yet
    std::vector<std::pair<Fault, std::int64_t>> faults; // claims of each, the most first
    std::vector<UnreadRow> unread;                      // what no figure counts, for it cannot be read

    // Garments that were handed over this many days ago or more, and had no fault until then.
    std::int64_t watchedFor(Days days) const {
        return watched.end() - std::ranges::lower_bound(watched, days);
    }
};

} // namespace holdfast
