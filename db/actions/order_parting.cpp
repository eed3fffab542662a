// SPDX-License-Identifier: GPL-3.0-or-later
// Two orders of a customer become one, or one becomes two: garments and money go over, with what was done to
// them.
#include "db/actions/order_actions.h"
#include "db/actions/order_parts.h"
#include "db/actions/rows.h"
#include "db/tables/codes.h"
#include "db/tables/order_rows.h"

#include <algorithm>

namespace holdfast::db {
namespace {

Result<OrderRow> openOrder(Connection& connection, OrderId order) {
    auto row = orderRow(connection, order);
    if (!row.ok())
        return row;
    if (const auto open = requireOpen(*row); !open.ok())
        return open.error();
    return row;
}

// Nobody should look for a garment under another letter while it is under heat.
Result<GarmentRow> movableGarment(Connection& connection, GarmentId garment) {
    auto row = garmentRow(connection, garment);
    if (!row.ok())
        return row;
    if (const auto open = requireOpen(*row); !open.ok())
        return open.error();
    if (row->isOnPress())
        return plainError(said("{garment} is on the press. Finish it, step it back or mark it spoiled first.",
                               {{"garment", row->label()}}));
    return row;
}

int lastPosition(Connection& connection, OrderId order) {
    return static_cast<int>(
        connection.number("SELECT COALESCE(MAX(position), 0) FROM garment WHERE order_id = ?1", order));
}

// They get the next letters of the order they come to.
Result<Done> moveGarments(Writer& writer, std::span<const GarmentId> garments, OrderId to) {
    int position = lastPosition(writer.connection(), to);
    for (const GarmentId id : garments) {
        const auto garment = movableGarment(writer.connection(), id);
        if (!garment.ok())
            return garment.error();
        writer.connection().run("UPDATE garment SET order_id = ?2, position = ?3 WHERE id = ?1", id, to,
                                ++position);
        concernsGarment(writer, *garment);
    }
    return Done{};
}

// Below zero where more is owed.
Money overpaid(Connection& connection, OrderId order) {
    return Money{connection.number("SELECT paid_minor - total_minor FROM order_card WHERE id = ?1", order)};
}

// A percentage is of the garments that it was agreed for, and not of those that come to them now.
void fixPercentages(Connection& connection, OrderId order) {
    connection.run("UPDATE bill_line SET share = NULL, minor = (SELECT minor FROM bill_line_amount WHERE "
                   "bill_line_amount.id = bill_line.id) WHERE order_id = ?1 AND share IS NOT NULL",
                   order);
}

// Percentages are of both orders' garments then; amounts stay with the order that has them.
void copyPercentages(Writer& writer, OrderId from, OrderId to) {
    std::vector<BillLine> lines;
    Query rows = writer.connection().query(
        std::string{"SELECT "} + kBillLineColumns +
            "FROM bill_line WHERE order_id = ?1 AND share IS NOT NULL ORDER BY bill_line.id",
        from);
    while (rows.step())
        lines.push_back(billLineFrom(FactRow{rows}));
    for (const BillLine& line : lines)
        addBillLine(writer, to, line);
}

Result<Done> requireSameTax(Connection& connection, const OrderRow& into, const OrderRow& from) {
    if (connection.number(
            "SELECT COUNT(*) FROM shop_order AS one JOIN shop_order AS other ON one.id = ?1 AND "
            "other.id = ?2 WHERE one.tax_kind = other.tax_kind AND one.tax_rate = "
            "other.tax_rate AND one.taxed_by = other.taxed_by AND one.tax_rounding = "
            "other.tax_rounding",
            into.id, from.id) > 0)
        return Done{};
    return fieldError("order", said("Orders {order} and {other} are taxed otherwise.",
                                    {{"order", into.label()}, {"other", from.label()}}));
}

// What was paid beyond the total of the one pays the other, in the way it was paid last.
Money moveTooMuchPaid(Writer& writer, OrderId from, OrderId to) {
    Connection& connection = writer.connection();
    const Money excess = overpaid(connection, from);
    if (excess <= Money{})
        return Money{};
    Query last = connection.query(
        "SELECT how FROM money_move WHERE order_id = ?1 ORDER BY at DESC, id DESC LIMIT 1", from);
    const std::string how = last.step() ? last.text(0) : std::string{codeOf(PaidHow::Cash)};
    const auto move = [&](OrderId order, Money amount, MoneyKind kind) {
        connection.run(
            "INSERT INTO money_move (id, order_id, at, minor, kind, how) VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
            writer.newId<RowId>(), order, writer.now(), amount, codeOf(kind), how);
    };
    move(from, -excess, MoneyKind::Refund);
    move(to, excess, MoneyKind::Payment);
    return excess;
}

Result<Done> requireSameKind(const OrderRow& into, const OrderRow& from) {
    if (into.id == from.id)
        return fieldError("order",
                          said("Name another order than {order} itself.", {{"order", into.label()}}));
    if (into.customer != from.customer)
        return fieldError("order", said("Orders {order} and {other} are of two customers.",
                                        {{"order", into.label()}, {"other", from.label()}}));
    if (into.state != from.state)
        return fieldError("order", said("One of orders {order} and {other} is a quotation. Confirm it first.",
                                        {{"order", into.label()}, {"other", from.label()}}));
    return Done{};
}

} // namespace

Result<Done> mergeOrders(Shop& shop, OrderId into, OrderId from) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        Connection& connection = writer.connection();
        const auto kept = openOrder(connection, into);
        const auto given = openOrder(connection, from);
        if (!kept.ok() || !given.ok())
            return kept.ok() ? given.error() : kept.error();
        if (const auto same = requireSameKind(*kept, *given); !same.ok())
            return same;
        if (const auto same = requireSameTax(connection, *kept, *given); !same.ok())
            return same;
        const std::vector<GarmentId> garments = garmentsOf(connection, from);
        if (std::ranges::any_of(garments, [&](GarmentId id) {
                return connection.number("SELECT handed_over_at IS NOT NULL FROM garment WHERE id = ?1", id) >
                       0;
            }))
            return plainError(
                said("Garments of order {order} are handed over already; it stays an order of its own.",
                     {{"order", given->label()}}));
        fixPercentages(connection, into);
        fixPercentages(connection, from);
        if (const auto moved = moveGarments(writer, garments, into); !moved.ok())
            return moved;
        connection.run("UPDATE bill_line SET order_id = ?2 WHERE order_id = ?1", from, into);
        connection.run("UPDATE money_move SET order_id = ?2 WHERE order_id = ?1", from, into);
        // Both are collected once, when the later one is ready.
        connection.run(
            "UPDATE shop_order SET promised = MAX(promised, (SELECT promised FROM shop_order WHERE id = "
            "?2)) WHERE id = ?1",
            into, from);
        connection.run("UPDATE shop_order SET state = ?2 WHERE id = ?1", from, codeOf(OrderState::Cancelled));
        writer.concerns(into);
        writer.concerns(from);
        writer.concerns(kept->customer);
        writer.describe(said("Order {from} is now part of order {into}",
                             {{"from", given->label()}, {"into", kept->label()}}));
        return Done{};
    });
}

Result<OrderTaken> splitOrder(Shop& shop, OrderId order, std::span<const GarmentId> garments) {
    return shop.act([&](Writer& writer) -> Result<OrderTaken> {
        Connection& connection = writer.connection();
        const auto row = openOrder(connection, order);
        if (!row.ok())
            return row.error();
        const std::vector<GarmentId> all = garmentsOf(connection, order);
        const auto isOfOrder = [&](GarmentId id) { return std::ranges::count(all, id) == 1; };
        if (garments.empty() || !std::ranges::all_of(garments, isOfOrder))
            return fieldError("garments",
                              said("Choose garments of order {order}.", {{"order", row->label()}}));
        if (garments.size() >= all.size())
            return fieldError("garments", said("At least one garment must stay in order {order}.",
                                               {{"order", row->label()}}));
        const OrderTaken made{writer.newId<OrderId>(), writer.nextOrderNumber()};
        // Taken when and where the whole was, so that what a fair sold stays what it sold.
        connection.run(
            "INSERT INTO shop_order (id, number, customer_id, state, taken_at, taken_at_place, promised, "
            "note, tax_kind, tax_rate, taxed_by, tax_rounding, valid_until) SELECT ?2, ?3, customer_id, "
            "state, "
            "taken_at, taken_at_place, promised, '', tax_kind, tax_rate, taxed_by, tax_rounding, valid_until "
            "FROM shop_order WHERE id = ?1",
            order, made.id, made.number);
        if (const auto moved = moveGarments(writer, garments, made.id); !moved.ok())
            return moved.error();
        copyPercentages(writer, order, made.id);
        if (const auto left = requireNotBelowNothing(connection, order, row->number); !left.ok())
            return left.error();
        moveTooMuchPaid(writer, order, made.id);
        writer.concerns(order);
        writer.concerns(made.id);
        writer.concerns(row->customer);
        writer.describe(
            said("{n} garment of order {order} is now order {made}|"
                 "{n} garments of order {order} are now order {made}",
                 {{"n", garments.size()}, {"order", row->label()}, {"made", Numeral{made.number}}}));
        return made;
    });
}

} // namespace holdfast::db
