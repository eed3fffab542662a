// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/put_back.h"

#include "db/actions/kept_blanks.h"
#include "db/actions/rows.h"
#include "db/sqlite/changeset.h"
#include "db/tables/codes.h"
#include "db/tables/undone_orders.h"

#include <string>
#include <vector>

namespace holdfast::db {
namespace {

constexpr int kStateColumn = 3; // of shop_order

std::vector<GarmentId> garmentsOfEntry(Connection& connection, EntryId entry) {
    std::vector<GarmentId> garments;
    Query rows = connection.query(
        "SELECT subject_id FROM journal_subject WHERE entry_id = ?1 AND kind = 'garment'", entry);
    while (rows.step())
        garments.push_back(rows.id<GarmentId>(0));
    return garments;
}

// Garments of the entry whose blank is another's now get one of another lot, or wait; so do those that
// waited.
void reserveOtherBlanks(Writer& writer, EntryId entry) {
    for (const GarmentId id : garmentsOfEntry(writer.connection(), entry)) {
        const auto garment = garmentRow(writer.connection(), id);
        if (!garment.ok() || garment->hasBegun() || !requireOpen(*garment).ok() ||
            garment->order.state != OrderState::Confirmed)
            continue;
        if (garment->lot && freeUnits(writer.connection(), *garment->lot) >= 0)
            continue;
        giveBack(writer, id);
        keepBlank(writer, id, {garment->style, garment->size, garment->colour});
    }
}

// What the order was when it was cancelled last.
OrderState stateBeforeCancelling(Connection& connection, OrderId order) {
    auto state = OrderState::Confirmed;
    Query entries = connection.query(
        "SELECT changeset FROM journal_subject JOIN journal_entry ON journal_entry.id = entry_id "
        "WHERE kind = 'order' AND subject_id = ?1 AND undone_by IS NULL ORDER BY entry_id DESC",
        order);
    bool isFound = false;
    while (!isFound && entries.step())
        forEachChange(entries.bytes(0), [&](const RowChange& change) {
            isFound = change.table == "shop_order" && change.kind == ChangeKind::Update &&
                      change.key == std::to_string(order.value) &&
                      change.after(kStateColumn) == codeOf(OrderState::Cancelled);
            if (isFound)
                state = fromCode<OrderState>(change.before(kStateColumn).value_or(""));
            return !isFound;
        });
    return state;
}

Result<Done> putBackCancelled(Shop& shop, OrderId order) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto row = orderRow(writer.connection(), order);
        if (!row.ok())
            return row.error();
        if (row->state != OrderState::Cancelled)
            return plainError(
                said("Order {order} was neither undone nor cancelled.", {{"order", row->label()}}));
        const OrderState state = stateBeforeCancelling(writer.connection(), order);
        writer.connection().run("UPDATE shop_order SET state = ?2 WHERE id = ?1", order, codeOf(state));
        for (const GarmentId id : garmentsOf(writer.connection(), order)) {
            const auto garment = garmentRow(writer.connection(), id);
            if (!garment.ok())
                return garment.error();
            if (state == OrderState::Confirmed && !garment->lot && !garment->hasBegun())
                keepBlank(writer, id, {garment->style, garment->size, garment->colour});
            concernsGarment(writer, *garment);
        }
        writer.describe(said("Order {order} put back", {{"order", row->label()}}));
        writer.concerns(order);
        writer.concerns(row->customer);
        return Done{};
    });
}

} // namespace

Result<EntryId> redo(Shop& shop, EntryId undo, const TellProgress& progress) {
    return shop.undo(undo, progress, [undo](Writer& writer) { reserveOtherBlanks(writer, undo); });
}

Result<Done> putBackOrder(Shop& shop, OrderId order) {
    const auto undone = shop.read([&](Connection& connection) { return undoneOrder(connection, order); });
    if (!undone.ok())
        return undone.error();
    if (!undone->has_value())
        return putBackCancelled(shop, order);
    const auto again = redo(shop, (*undone)->undo);
    return again.ok() ? Result<Done>{Done{}} : Result<Done>{again.error()};
}

} // namespace holdfast::db
