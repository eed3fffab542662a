// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a slip is about, found in the shop by its target, and said in a line. Answers are copies: the reckoned
// shop may be replaced while a slip is open.

#include "app/desk/shop_desk.h"
#include "db/tables/customer_page.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::app {

// The style named, or that of the garment or lot named.
std::optional<BlankStyle> styleIn(ShopDesk& desk, const SlipTarget& matter);
std::optional<BlankLot> lotIn(ShopDesk& desk, const SlipTarget& matter);
std::optional<FilmRoll> rollIn(ShopDesk& desk, const SlipTarget& matter);
// The film named, or that of the roll or decal named.
std::optional<Film> filmIn(ShopDesk& desk, const SlipTarget& matter);

// An order with its garments, open or not.
struct OrderInView {
    Order order;
    Customer customer;
    std::vector<Garment> garments;
    ShopSettings settings;
};
// The order named, or that of the garment named where it is open.
std::optional<OrderInView> orderIn(ShopDesk& desk, const SlipTarget& matter);
// The customer named, or that of the order named.
std::optional<db::CustomerPage> customerIn(ShopDesk& desk, const SlipTarget& matter);
// A garment of an open order.
std::optional<Garment> garmentIn(ShopDesk& desk, const SlipTarget& matter);

QString orderWords(const OrderInView& inView);                        // "Order 418, Odile Farrant"
QString garmentWords(const ShopFacts& facts, const Garment& garment); // "418-b, Tee, M, Moss"
QString lotWords(const ShopFacts& facts, const BlankLot& lot);        // "Tee, M, Moss, received Tue 24 Nov"
QString rollWords(const ShopFacts& facts, const FilmRoll& roll);      // "R-09, Marram Soft, Dusk, 3.4 m"

// Free units of a kind of blank.
struct Stock {
    std::int64_t washed = 0; // or not washed at all, where the style is pressed so
    std::int64_t unwashed = 0;

    std::int64_t all() const { return washed + unwashed; }
};
Stock stockOf(const ShopFacts& facts, const BlankStyle& style, const std::string& size,
              std::optional<ColourId> colour); // every colour where none is named
QString stockWords(const Stock& stock);        // "6 washed, 4 unwashed", "none in stock"

// Metres of a film on the shelf.
Millimetres lengthOnShelf(const ShopFacts& facts, FilmId film);

// The latest reading of a place.
std::optional<ClimateReading> latestReading(const ReckonedShop& shop, PlaceId place);
QString readingWords(const ReckonedShop& shop, const ClimateReading& reading); // "44 %, 19 °C, today 09:30"

} // namespace holdfast::app
