// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What was sold at fairs, and what each of them earned. Costs are those of today (see
// core/shop/garment_cost.h): what a blank or a film cost then is not kept.

#include "core/facts/fair.h"
#include "core/orders/price.h"

#include <map>
#include <string_view>
#include <vector>

namespace holdfast {

struct SoldGarment {
    BlankStyleId style;
    std::string size;
    ColourId colour;
    Money price;
    Cost cost;
};

// Where an order was taken that was taken at no fair.
inline constexpr std::string_view kAtNoFair = "workshop";

// An order that was taken anywhere but at the workshop; quotations and cancelled orders are none.
struct FairOrder {
    std::string place;
    LocalDate on{};
    Money paid; // so far, less what was paid back
    std::vector<SoldGarment> garments;
    std::vector<BillLine> lines{};
    TaxRule tax{};
};

// Each price becomes what the garment brought: its share of what the order comes to, without the tax.
void priceAsEarned(FairOrder& order);

// Those in the facts, priced as earned, that were taken on `from` or later, the earliest id first.
std::map<OrderId, FairOrder> fairOrders(const ShopFacts& facts, LocalDate from, const Now& now);

// Of one fair in the list, or of one place that is no fair in it.
struct Earned {
    std::optional<Fair> fair;
    std::string place;
    std::int64_t days = 0; // of the fair; elsewhere those on which any order was taken
    std::int64_t orders = 0;
    std::int64_t garments = 0;
    Money ordered; // without tax
    Money paid;
    Cost cost; // of the garments: what it takes to make them

    Money stall() const { return fair ? fair->stallCost + fair->otherCosts : Money{}; }
    Money left() const { return ordered - cost.total() - stall(); }
    // Of the hours worked there; making is paid in the cost. None elsewhere: no hours are known.
    std::optional<Money> leftAnHour() const;
};

// Fairs of the list that began on `from` or later and by today, the latest first, whether anything was sold
// there or not; then other places, by name. Orders of a fair that began earlier are left out: they are not
// all there.
std::vector<Earned> earnedAtFairs(std::span<const FairOrder> orders, std::span<const Fair> fairs,
                                  LocalDate from, LocalDate today);

} // namespace holdfast
