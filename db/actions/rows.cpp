// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/rows.h"

#include "core/trade/paper_numbers.h"
#include "db/tables/codes.h"
#include "db/tables/fact_row.h"
#include "db/tables/facts.h"

namespace holdfast::db {
namespace {

Error gone(std::string_view field, const std::string& what) {
    return fieldError(std::string{field}, said("The shop has no such {what} any more.", {{"what", what}}));
}

template <class AnyId>
Result<std::string> nameOf(Connection& connection, std::string_view sql, AnyId id, std::string_view field,
                           const std::string& what) {
    Query found = connection.query(sql, id);
    if (!found.step())
        return gone(field, what);
    return found.text(0);
}

} // namespace

std::string GarmentRow::label() const {
    return order.label() + "-" + garmentLetter(position);
}

Sentence DecalRow::words() const {
    Decal described;
    described.content = content;
    return described.describe();
}

std::string RollRow::label() const {
    FilmRoll roll;
    roll.number = number;
    return roll.label();
}

Result<Done> requireReadable(Connection& connection, OrderId order) {
    const std::vector<UnreadRow> unread = unreadOf(connection, order);
    return unread.empty() ? Result<Done>{Done{}} : cannotBeRead(unread.front());
}

Error cannotBeRead(const UnreadRow& row) {
    return plainError(
        said("{what} cannot be read, so nothing can be done with it. {why} Put it right first: “Check "
             "the shop file” in the Back room says how.",
             {{"what", row.what}, {"why", row.why}}));
}

Result<OrderRow> orderRow(Connection& connection, OrderId order) {
    if (auto readable = requireReadable(connection, order); !readable.ok())
        return readable.error();
    Query found = connection.query("SELECT number, customer_id, state FROM shop_order WHERE id = ?1", order);
    if (!found.step())
        return gone("order", "order");
    return OrderRow{order, found.integer(0), found.id<CustomerId>(1), fromCode<OrderState>(found.view(2))};
}

Result<GarmentRow> garmentRow(Connection& connection, GarmentId garment) {
    GarmentRow row;
    if (Query owner = connection.query("SELECT order_id FROM garment WHERE id = ?1", garment); owner.step())
        if (auto readable = requireReadable(connection, owner.id<OrderId>(0)); !readable.ok())
            return readable.error();
    {
        Query found =
            connection.query("SELECT shop_order.id, number, customer_id, state, position, style_id, size, "
                             "colour_id, lot_id, attempt, "
                             "garment.handed_over_at IS NOT NULL, cancelled_at IS NOT NULL, "
                             "(SELECT COUNT(*) FROM press_step WHERE garment_id = garment.id AND "
                             "press_step.attempt = garment.attempt) "
                             "FROM garment JOIN shop_order ON shop_order.id = order_id WHERE garment.id = ?1",
                             garment);
        if (!found.step())
            return gone("garment", "garment");
        row.id = garment;
        row.order = {found.id<OrderId>(0), found.integer(1), found.id<CustomerId>(2),
                     fromCode<OrderState>(found.view(3))};
        row.position = static_cast<int>(found.integer(4));
        row.style = found.id<BlankStyleId>(5);
        row.size = found.text(6);
        row.colour = found.id<ColourId>(7);
        row.lot = found.optionalId<BlankLotId>(8);
        row.attempt = static_cast<int>(found.integer(9));
        row.isHandedOver = found.truth(10);
        row.isCancelled = found.truth(11);
        row.steps = static_cast<int>(found.integer(12));
    }
    Query open =
        connection.query("SELECT id, step_key FROM press_step WHERE garment_id = ?1 AND attempt = ?2 "
                         "AND finished_at IS NULL ORDER BY id DESC LIMIT 1",
                         garment, row.attempt);
    if (open.step()) {
        row.openRow = open.id<RowId>(0);
        row.openStep = open.text(1);
    }
    return row;
}

Result<DecalRow> decalRow(Connection& connection, DecalId decal) {
    DecalRow row;
    GarmentId garment;
    {
        Query found = connection.query(
            "SELECT garment_id, film_id, artwork, wording, face, layer, cut_roll_id FROM decal WHERE id = ?1",
            decal);
        if (!found.step())
            return gone("decal", "decal");
        row.id = decal;
        garment = found.id<GarmentId>(0);
        row.film = found.id<FilmId>(1);
        if (found.isNull(3))
            row.content = Artwork{found.text(2)};
        else
            row.content = Wording{found.text(3), fromCode<Face>(found.view(4)), {}};
        row.layer = static_cast<int>(found.integer(5));
        row.cutFrom = found.optionalId<RollId>(6);
    }
    auto owner = garmentRow(connection, garment);
    if (!owner.ok())
        return owner.error();
    row.garment = std::move(owner).value();
    return row;
}

Result<RollRow> rollRow(Connection& connection, RollId roll) {
    Query found =
        connection.query("SELECT number, film_id, state, "
                         "(SELECT COALESCE(SUM(mm), 0) FROM roll_move WHERE roll_id = film_roll.id) "
                         "FROM film_roll WHERE id = ?1",
                         roll);
    if (!found.step())
        return gone("roll", "roll");
    const FactRow row{found};
    return RollRow{roll, row.count(0), row.id<FilmId>(1), row.choice<RollState>(2),
                   Millimetres{row.number(3, -kMostMinor, kMostMinor)}};
}

Result<LotRow> lotRow(Connection& connection, BlankLotId lot) {
    Query found =
        connection.query("SELECT blank_lot.style_id, size, colour_id, last_load_id, "
                         "last_load_id IS NOT NULL AND wash_load.dry_at IS NULL, "
                         "(SELECT COALESCE(SUM(units), 0) FROM lot_move WHERE lot_id = blank_lot.id), "
                         "blank_style.name || ', ' || size || ', ' || style_colour.name "
                         "FROM blank_lot JOIN blank_style ON blank_style.id = blank_lot.style_id "
                         "JOIN style_colour ON style_colour.id = colour_id "
                         "LEFT JOIN wash_load ON wash_load.id = last_load_id WHERE blank_lot.id = ?1",
                         lot);
    if (!found.step())
        return gone("lot", "lot of blanks");
    return LotRow{lot,
                  found.id<BlankStyleId>(0),
                  found.text(1),
                  found.id<ColourId>(2),
                  found.optionalId<WashLoadId>(3),
                  found.truth(4),
                  found.integer(5),
                  found.text(6)};
}

std::vector<GarmentId> garmentsOf(Connection& connection, OrderId order) {
    std::vector<GarmentId> garments;
    Query rows = connection.query(
        "SELECT id FROM garment WHERE order_id = ?1 AND cancelled_at IS NULL ORDER BY position", order);
    while (rows.step())
        garments.push_back(rows.id<GarmentId>(0));
    return garments;
}

Result<std::string> styleName(Connection& connection, BlankStyleId style, std::string_view field) {
    return nameOf(connection, "SELECT name FROM blank_style WHERE id = ?1", style, field, "blank style");
}

Result<std::string> filmName(Connection& connection, FilmId film, std::string_view field) {
    return nameOf(connection, "SELECT finish || ', ' || shade FROM film WHERE id = ?1", film, field, "film");
}

Result<std::string> placeName(Connection& connection, PlaceId place, std::string_view field) {
    return nameOf(connection, "SELECT name FROM storage_place WHERE id = ?1", place, field, "storage place");
}

Result<std::string> pressName(Connection& connection, PressId press, std::string_view field) {
    return nameOf(connection, "SELECT name FROM press WHERE id = ?1", press, field, "press");
}

Result<std::string> blankWords(Connection& connection, BlankStyleId style, const std::string& size,
                               ColourId colour) {
    const auto name = styleName(connection, style);
    if (!name.ok())
        return name.error();
    if (connection.number("SELECT COUNT(*) FROM style_size WHERE style_id = ?1 AND size = ?2", style, size) ==
        0)
        return fieldError("size", said("{style} has no size “{size}”.", {{"style", *name}, {"size", size}}));
    Query shade =
        connection.query("SELECT name FROM style_colour WHERE id = ?1 AND style_id = ?2", colour, style);
    if (!shade.step())
        return fieldError("colour", said("Choose one of the colours of {style}.", {{"style", *name}}));
    return *name + ", " + size + ", " + shade.text(0);
}

Result<Done> requireOpen(const OrderRow& order) {
    if (order.state == OrderState::Cancelled)
        return plainError(said("Order {order} is cancelled.", {{"order", order.label()}}));
    if (order.state == OrderState::HandedOver)
        return plainError(said("Order {order} is handed over already.", {{"order", order.label()}}));
    return Done{};
}

Result<Done> requireOpen(const GarmentRow& garment) {
    if (garment.isHandedOver)
        return plainError(said("{garment} is handed over already.", {{"garment", garment.label()}}));
    if (garment.isCancelled)
        return plainError(said("{garment} is cancelled.", {{"garment", garment.label()}}));
    return requireOpen(garment.order);
}

Result<Done> requireNotBegun(const GarmentRow& garment) {
    if (garment.isOnPress())
        return plainError(said("{garment} is on the press already.", {{"garment", garment.label()}}));
    if (garment.isPressed())
        return plainError(said("{garment} is pressed already.", {{"garment", garment.label()}}));
    return Done{};
}

void concernsGarment(Writer& writer, const GarmentRow& garment) {
    writer.concerns(garment.order.id);
    writer.concerns(garment.id);
}

} // namespace holdfast::db
