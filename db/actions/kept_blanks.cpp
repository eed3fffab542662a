// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/kept_blanks.h"

#include "db/tables/codes.h"

namespace holdfast::db {
namespace {

std::vector<GarmentId> waitingFor(Connection& connection, const BlankKind& kind) {
    std::vector<GarmentId> waiting;
    // CROSS JOIN keeps the order of looking: the few open orders first, not years of garments.
    Query rows = connection.query(
        "SELECT garment.id FROM shop_order CROSS JOIN garment ON garment.order_id = shop_order.id "
        "WHERE shop_order.state IN ('quoted', 'confirmed') AND shop_order.state = ?4 "
        "AND garment.style_id = ?1 AND garment.size = ?2 AND garment.colour_id = ?3 "
        "AND garment.lot_id IS NULL AND garment.handed_over_at IS NULL AND garment.cancelled_at IS NULL "
        "ORDER BY shop_order.promised, shop_order.number, garment.position",
        kind.style, kind.size, kind.colour, codeOf(OrderState::Confirmed));
    while (rows.step())
        waiting.push_back(rows.id<GarmentId>(0));
    return waiting;
}

} // namespace

std::optional<BlankLotId> freeLotFor(Connection& connection, const BlankKind& kind) {
    Query lots =
        connection.query("SELECT blank_lot.id FROM blank_lot "
                         "JOIN blank_style ON blank_style.id = blank_lot.style_id "
                         "LEFT JOIN wash_load ON wash_load.id = blank_lot.last_load_id "
                         "WHERE blank_lot.style_id = ?1 AND blank_lot.size = ?2 AND blank_lot.colour_id = ?3 "
                         "AND (SELECT SUM(units) FROM lot_move WHERE lot_id = blank_lot.id) > 0 "
                         "ORDER BY CASE "
                         "WHEN wash_load.softener OR wash_load.dryer_sheet THEN 3 "
                         "WHEN wash_load.id IS NOT NULL AND wash_load.dry_at IS NULL THEN 1 "
                         "WHEN wash_load.id IS NOT NULL OR blank_style.not_prewashed_because <> '' THEN 0 "
                         "ELSE 2 END, blank_lot.received_on, blank_lot.id",
                         kind.style, kind.size, kind.colour);
    while (lots.step()) {
        const auto lot = lots.id<BlankLotId>(0);
        if (freeUnits(connection, lot) > 0)
            return lot;
    }
    return std::nullopt;
}

std::int64_t freeUnits(Connection& connection, BlankLotId lot) {
    const std::int64_t units =
        connection.number("SELECT COALESCE(SUM(units), 0) FROM lot_move WHERE lot_id = ?1", lot);
    return units - static_cast<std::int64_t>(keepersOf(connection, lot).size());
}

std::vector<GarmentId> keepersOf(Connection& connection, BlankLotId lot) {
    std::vector<GarmentId> keepers;
    Query rows = connection.query(
        "SELECT garment.id FROM garment JOIN shop_order ON shop_order.id = garment.order_id "
        "WHERE garment.lot_id = ?1 AND garment.handed_over_at IS NULL AND garment.cancelled_at IS NULL "
        "AND shop_order.state IN ('quoted', 'confirmed') "
        "AND NOT EXISTS (SELECT 1 FROM press_step WHERE press_step.garment_id = garment.id "
        "AND press_step.attempt = garment.attempt) "
        "ORDER BY shop_order.promised, shop_order.number, garment.position",
        lot);
    while (rows.step())
        keepers.push_back(rows.id<GarmentId>(0));
    return keepers;
}

std::optional<BlankLotId> keepBlank(Writer& writer, GarmentId garment, const BlankKind& kind) {
    const auto lot = freeLotFor(writer.connection(), kind);
    if (lot) {
        writer.connection().run("UPDATE garment SET lot_id = ?2 WHERE id = ?1", garment, *lot);
        writer.concerns(*lot);
    }
    return lot;
}

void giveBack(Writer& writer, GarmentId garment) {
    writer.connection().run("UPDATE garment SET lot_id = NULL WHERE id = ?1", garment);
}

void giveToWaiting(Writer& writer, const BlankKind& kind) {
    for (const GarmentId garment : waitingFor(writer.connection(), kind)) {
        if (!keepBlank(writer, garment, kind))
            return;
        if (const auto row = garmentRow(writer.connection(), garment); row.ok())
            concernsGarment(writer, *row);
    }
}

} // namespace holdfast::db
