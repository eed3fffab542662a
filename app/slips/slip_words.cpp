// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/slip_words.h"

#include "app/desk/formats.h"
#include "core/shop/lot_state.h"
#include "db/tables/facts.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class SlipWords {
    Q_DECLARE_TR_FUNCTIONS(SlipWords)
};

template <class Thing>
std::optional<Thing> copyOf(const Thing* thing) {
    return thing ? std::optional{*thing} : std::nullopt;
}

} // namespace

std::optional<BlankStyle> styleIn(ShopDesk& desk, const SlipTarget& matter) {
    const ShopFacts& facts = desk.shop()->facts;
    if (matter.style)
        return copyOf(facts.styles.find(*matter.style));
    if (matter.garment)
        if (const Garment* garment = facts.garments.find(*matter.garment))
            return copyOf(facts.styles.find(garment->style));
    if (matter.lot)
        if (const BlankLot* lot = facts.lots.find(*matter.lot))
            return copyOf(facts.styles.find(lot->style));
    return std::nullopt;
}

std::optional<BlankLot> lotIn(ShopDesk& desk, const SlipTarget& matter) {
    return matter.lot ? copyOf(desk.shop()->facts.lots.find(*matter.lot)) : std::nullopt;
}

std::optional<FilmRoll> rollIn(ShopDesk& desk, const SlipTarget& matter) {
    return matter.roll ? copyOf(desk.shop()->facts.rolls.find(*matter.roll)) : std::nullopt;
}

std::optional<Film> filmIn(ShopDesk& desk, const SlipTarget& matter) {
    const ShopFacts& facts = desk.shop()->facts;
    if (matter.film)
        return copyOf(facts.films.find(*matter.film));
    if (const auto roll = rollIn(desk, matter))
        return copyOf(facts.films.find(roll->film));
    if (const auto garment = garmentIn(desk, matter))
        for (const Decal& decal : garment->decals)
            if (matter.decal == decal.id)
                return copyOf(facts.films.find(decal.film));
    return std::nullopt;
}

std::optional<Garment> garmentIn(ShopDesk& desk, const SlipTarget& matter) {
    const ShopFacts& facts = desk.shop()->facts;
    if (matter.garment)
        return copyOf(facts.garments.find(*matter.garment));
    if (matter.decal)
        for (const Garment& garment : facts.garments)
            for (const Decal& decal : garment.decals)
                if (decal.id == *matter.decal)
                    return garment;
    return std::nullopt;
}

std::optional<OrderInView> orderIn(ShopDesk& desk, const SlipTarget& matter) {
    std::optional<OrderId> id = matter.order;
    if (!id)
        if (const auto garment = garmentIn(desk, matter))
            id = garment->order;
    if (!id)
        return std::nullopt;
    const auto facts = desk.file().read(
        [&](db::Connection& connection) { return db::loadFactsOf(connection, std::span{&*id, 1}); });
    if (!desk.done(facts))
        return std::nullopt;
    const Order* order = facts->orders.find(*id);
    if (!order)
        return std::nullopt;
    OrderInView inView;
    inView.order = *order;
    inView.customer = facts->customers.at(order->customer);
    for (const Garment* garment : facts->garmentsOf(*id))
        inView.garments.push_back(*garment);
    inView.settings = facts->settings;
    return inView;
}

std::optional<db::CustomerPage> customerIn(ShopDesk& desk, const SlipTarget& matter) {
    std::optional<CustomerId> id = matter.customer;
    if (!id)
        if (const auto inView = orderIn(desk, matter))
            id = inView->customer.id;
    if (!id)
        return std::nullopt;
    auto page =
        desk.file().read([&](db::Connection& connection) { return db::customerPage(connection, *id); });
    return desk.done(page) ? std::move(*page) : std::nullopt;
}

QString orderWords(const OrderInView& inView) {
    return SlipWords::tr("Order %1, %2").arg(inView.order.number).arg(words(inView.customer.name));
}

QString garmentWords(const ShopFacts& facts, const Garment& garment) {
    const BlankStyle& style = facts.styleOf(garment);
    const Colour* colour = style.colour(garment.colour);
    return SlipWords::tr("%1, %2, %3, %4")
        .arg(words(facts.labelOf(garment)), words(style.name), words(garment.size),
             colour ? words(colour->name) : QString());
}

QString lotWords(const ShopFacts& facts, const BlankLot& lot) {
    const BlankStyle& style = facts.styles.at(lot.style);
    const Colour* colour = style.colour(lot.colour);
    return SlipWords::tr("%1, %2, %3, received %4")
        .arg(words(style.name), words(lot.size), colour ? words(colour->name) : QString(),
             day(lot.receivedOn));
}

QString rollWords(const ShopFacts& facts, const FilmRoll& roll) {
    return SlipWords::tr("%1, %2, %3")
        .arg(words(roll.label()), words(facts.films.at(roll.film).name()), metres(roll.left));
}

Stock stockOf(const ShopFacts& facts, const BlankStyle& style, const std::string& size,
              std::optional<ColourId> colour) {
    Stock stock;
    for (const BlankLot& lot : facts.lots) {
        if (lot.style != style.id || lot.size != size || (colour && lot.colour != *colour))
            continue;
        (stateOf(facts, lot) == LotState::Ready ? stock.washed : stock.unwashed) += facts.freeUnits(lot);
    }
    return stock;
}

QString stockWords(const Stock& stock) {
    if (stock.all() <= 0)
        return SlipWords::tr("none in stock");
    if (stock.unwashed == 0)
        return SlipWords::tr("%1 washed").arg(stock.washed);
    return SlipWords::tr("%1 washed, %2 unwashed").arg(stock.washed).arg(stock.unwashed);
}

Millimetres lengthOnShelf(const ShopFacts& facts, FilmId film) {
    Millimetres sum;
    for (const FilmRoll& roll : facts.rolls)
        if (roll.film == film && roll.state == RollState::OnShelf)
            sum += roll.left;
    return sum;
}

std::optional<ClimateReading> latestReading(const ReckonedShop& shop, PlaceId place) {
    const auto series = shop.climate.find(place);
    if (series == shop.climate.end() || !series->second || series->second->empty())
        return std::nullopt;
    return series->second->back();
}

QString readingWords(const ReckonedShop& shop, const ClimateReading& reading) {
    const LocalTime at = shop.now.toLocal(reading.at);
    return SlipWords::tr("%1, %2, %3 %4")
        .arg(reading.hasHumidity ? humidity(reading.humidity) : SlipWords::tr("humidity not known"),
             celsius(reading.temperature), dayNear(dateOf(at), shop.now.today()), clock(at));
}

} // namespace holdfast::app
