// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The shop's own numbers. Every default is common practice with no published source, and may be changed.

#include "core/facts/price_rules.h"
#include "core/trade/dates.h"
#include "core/trade/money.h"
#include "core/trade/units.h"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace holdfast {

// A chance of nothing would ask for endless stock.
inline constexpr int kLeastRunOutPercent = 1;
inline constexpr int kMostRunOutPercent = 50;

struct OpeningHours {
    Minutes opens{9 * 60};
    Minutes closes{17 * 60};

    bool operator==(const OpeningHours&) const = default;
};

struct ShopSettings {
    std::string shopName = "Workshop";
    std::string fairName; // where orders are being taken; empty: at the workshop
    Currency currency;

    // on paper, a line each; empty: not printed
    std::string collectAt;     // where and when orders are collected
    std::string whenEdgeLifts; // what a customer may do then
    std::string address;       // of the shop, on quotations, receipts and invoices; semicolons between lines
    std::string
        invoiceLines; // at the foot of invoices: a bank account, small print; semicolons between lines

    // money
    int depositPercent = 0;    // of the total, asked before work starts
    bool depositHolds = false; // short deposits hold the work
    Money minuteRate{40};      // the maker's time
    Money overheadPerGarment{60};
    int marginPercent = 45; // of the price, 0 to 95
    Money pricePoint{50};   // prices are rounded up to a multiple
    PriceRules prices;

    // time
    std::array<std::optional<OpeningHours>, 7> week; // pressing hours, Sunday first; none: closed
    std::vector<LocalDate> closedDays;
    std::map<LocalDate, OpeningHours> otherHours; // of single days, in place of the week's
    int planMarginPercent = 15;                   // added to reckoned work when a day is promised

    // washing and stock
    Grams washerHolds{4000};
    Minutes washTakes{60};
    Hours dryingTakes{12};
    double shrinkLimitPercent = 4.0;
    int keepingPercent =
        10; // of a blank's cost, for each that comes home from a fair: carried, money tied up
    Days blankLeadTime{5};
    Days filmLeadTime{4};
    int runOutPercent = 5; // the chance of running out that is taken while something is on its way
    Days boughtToLast{14}; // what is bought is to last this long after it came

    // cutting
    Minutes cutTakes{4};      // roll in, the knife's run, cut off: once for each film of an order
    Seconds weedingTakes{60}; // of a decal, in addition to 25 s for each 100 cm²
    Millimetres decalGap{8};
    Millimetres edgeMargin{6};
    int filmWastePercent =
        20; // of a decal's area, until there are enough cuts of the shop's own (core/orders/film_waste.h)

    // pressing and after
    Seconds mostOverUnderHeat{
        30}; // beyond the recipe's time; longer under heat, a garment is likely scorched
    Hours restBeforeWash{24};
    Hours betterRest{72};
    Hours readingsGoStaleAfter{24};

    ShopSettings();
    bool operator==(const ShopSettings&) const = default;
    bool isOpenOn(LocalDate date) const;
    std::optional<OpeningHours> hoursOn(LocalDate date) const;
};

} // namespace holdfast
