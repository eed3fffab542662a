// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How the shop makes its prices, beyond what a garment costs it. Each rule is off until the shop turns it on.

#include "core/facts/bill_line.h"
#include "core/trade/units.h"

#include <map>
#include <string>
#include <vector>

namespace holdfast {

// From the price (a margin), from the cost (a mark-up), or as the shop's price list says; what is not on the
// list is priced by its margin.
enum class PricedBy { Margin, MarkUp, List };

// So many garments or more in one order cost less.
struct PriceForMany {
    int garments = 0;
    Percentage less;

    bool operator==(const PriceForMany&) const = default;
};

// An extra that the shop charges often, offered at the table by its name.
struct UsualExtra {
    std::string words;
    Money amount;

    bool operator==(const UsualExtra&) const = default;
};

// Of a decal whose longer side is no longer than this.
struct DecalPrice {
    Millimetres upTo;
    Money price;

    bool operator==(const DecalPrice&) const = default;
};

struct PriceRules {
    PricedBy by = PricedBy::Margin;
    int markUpPercent = 80;
    std::vector<PriceForMany> forMany; // fewest garments first
    std::vector<UsualExtra> extras;

    Days rushWithin{0}; // promised within this many days of being taken; 0: no rush price
    Percentage rushMore;

    Days quotationFor{14}; // how long a quotation is valid, from the day it was made

    TaxRule tax;
    std::string taxName; // on paper: what the law of the place calls it; empty: "Tax"
    std::string taxNumber;

    // the price list
    std::map<BlankStyleId, Money> stylePrices;
    std::vector<DecalPrice> decalPrices; // smallest first

    bool operator==(const PriceRules&) const = default;
};

} // namespace holdfast
