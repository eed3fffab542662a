// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the draft comes to: prices with their cost floor, the deposit, the promise and a sooner one.

#include "app/places/fair_table/blank_stock.h"
#include "app/places/fair_table/film_offer.h"
#include "app/places/fair_table/table_bill.h"
#include "app/places/fair_table/table_draft.h"
#include "core/orders/longer_day.h"
#include "core/orders/price.h"
#include "core/orders/promise.h"
#include "core/orders/wanted_day.h"
#include "core/shop/reckoned_shop.h"

#include <memory>
#include <optional>
#include <vector>

namespace holdfast::app {

struct GarmentSums {
    Money price;              // of one; 0 while no style is chosen
    Money usual;              // without what was typed by hand
    Cost cost;                // of one
    std::vector<Money> parts; // of the price: the blank, then what each decal adds
    Seconds pressTime{0};     // maker's and platen's
};

// What makes it sooner: the same style and size in a colour that is washed; or, where the day that is asked
// for can be kept by it, a decal less, or a longer day at the press.
struct SoonerOption {
    std::vector<const Colour*> colours; // up to three; none: it is a decal
    LocalTime readyAt{};
    std::optional<std::size_t> withoutDecal{}; // of the garment at hand
    std::optional<LongerDay> longerDay{};
};

struct TableSums {
    std::vector<GarmentSums> garments;
    TableBill bill;
    TaxRule tax;
    Money total;
    Money floor;        // what it costs the shop
    Money owed;         // of it; of an order that was taken, less what was paid since
    Money deposit;      // what is paid now
    Money depositAsked; // by the shop's rule, less what was paid; 0: it asks for none
    std::optional<Error> depositError;
    std::optional<Promise> promise; // none: no style chosen yet, or promiseLack says why
    Sentence promiseLack;
    bool promiseIsForLikeliest = false; // size or colour is still open: the likeliest blank was asked for
    bool isAsPromised = false;          // of an order that was taken: the day it was promised for is kept
    std::optional<WantedDay> wanted;    // none: no day is asked for, or none can be promised
    std::optional<SoonerOption> sooner;
    RollPicks rolls;
};

class TableReckoner {
public:
    // What of the shop does not change with the draft is reckoned once for each reckoned shop.
    TableSums reckon(const TableDraft& draft, const std::shared_ptr<const ReckonedShop>& shop);
    const BlankRailStock& stock(const std::shared_ptr<const ReckonedShop>& shop);

private:
    void keepUp(const std::shared_ptr<const ReckonedShop>& shop, std::optional<OrderId> except);

    std::shared_ptr<const ReckonedShop> m_shop;
    BlankRailStock m_stock;
    Promised m_promised;             // what promises already given take …
    std::optional<OrderId> m_except; // … but for that of the order that is being changed
};

// The order to be taken: copies written out, prices and promise as reckoned.
OrderDraft orderOf(const TableDraft& draft, const TableSums& sums, bool isQuotation);

} // namespace holdfast::app
