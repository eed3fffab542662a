// SPDX-License-Identifier: GPL-3.0-or-later
// Money, cancelling and handing over.
#include "core/trade/limits.h"
#include "core/trade/unit_words.h"
#include "db/actions/kept_blanks.h"
#include "db/actions/order_actions.h"
#include "db/actions/order_parts.h"
#include "db/actions/rows.h"
#include "db/tables/codes.h"
#include "db/tables/facts.h"

#include <algorithm>
#include <set>

namespace holdfast::db {
namespace {

struct Account {
    Money total;
    Money paid;

    Money owed() const { return total - paid; }
};

Account accountOf(Connection& connection, OrderId order) {
    Query sums = connection.query("SELECT total_minor, paid_minor FROM order_card WHERE id = ?1", order);
    return sums.step() ? Account{{sums.integer(0)}, {sums.integer(1)}} : Account{};
}

Result<Done> checkAmount(const OrderRow& order, const Account& account, MoneyKind kind, Money amount,
                         const Currency& currency) {
    if (amount <= Money{})
        return fieldError("amount", said("The amount must be more than nothing."));
    if (kind == MoneyKind::Refund) {
        if (amount > account.paid)
            return fieldError("amount", said("No more than the {amount} paid can be refunded.",
                                             {{"amount", Amount{account.paid, currency}}}));
        return Done{};
    }
    if (order.state == OrderState::Cancelled)
        return plainError(said("Order {order} is cancelled; it takes no money, only a refund.",
                               {{"order", order.label()}}));
    if (order.state == OrderState::Quoted)
        return plainError(said("Order {order} is a quotation, which takes no money. Confirm it first.",
                               {{"order", order.label()}}));
    if (amount > account.owed())
        return fieldError("amount", said("No more than the {amount} owed can be taken.",
                                         {{"amount", Amount{std::max(Money{}, account.owed()), currency}}}));
    return Done{};
}

Phrase kindWords(MoneyKind kind) {
    switch (kind) {
    case MoneyKind::Deposit:
        return phrase("Deposit");
    case MoneyKind::Payment:
        return phrase("Payment");
    case MoneyKind::Refund:
        return phrase("Refund");
    }
    return {};
}

Result<std::vector<GarmentRow>> garmentRowsOf(Connection& connection, OrderId order) {
    std::vector<GarmentRow> rows;
    for (const GarmentId garment : garmentsOf(connection, order)) {
        auto row = garmentRow(connection, garment);
        if (!row.ok())
            return row.error();
        rows.push_back(std::move(row).value());
    }
    return rows;
}

// "all 3 garments", "2 of 3 garments", "1 garment"
Sentence share(std::size_t given, std::size_t all) {
    return given < all
               ? said("{given} of {n} garment|{given} of {n} garments", {{"given", given}, {"n", all}})
               : said("{n} garment|all {n} garments", {{"n", all}});
}

} // namespace

Result<Done> moveMoney(Shop& shop, OrderId order, MoneyKind kind, Money amount, PaidHow how) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto row = orderRow(writer.connection(), order);
        if (!row.ok())
            return row.error();
        const Currency currency = loadSettings(writer.connection()).currency;
        const auto checked = checkAmount(*row, accountOf(writer.connection(), order), kind, amount, currency);
        if (!checked.ok())
            return checked.error();
        writer.connection().run("INSERT INTO money_move (id, order_id, at, minor, kind, how) "
                                "VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
                                writer.newId<RowId>(), order, writer.now(),
                                kind == MoneyKind::Refund ? -amount : amount, codeOf(kind), codeOf(how));
        writer.describe(
            said("{kind} {amount}, {how}",
                 {{"kind", kindWords(kind)}, {"amount", Amount{amount, currency}}, {"how", paidWords(how)}}));
        writer.concerns(order);
        writer.concerns(row->customer);
        return Done{};
    });
}

Result<Done> cancelOrder(Shop& shop, OrderId order, const std::string& reason) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto why =
            typedText(reason, {.field = "reason", .what = phrase("The reason"), .least = 3, .most = 200});
        if (!why.ok())
            return why.error();
        const auto row = orderRow(writer.connection(), order);
        if (!row.ok())
            return row.error();
        if (const auto open = requireOpen(*row); !open.ok())
            return open.error();
        const auto garments = garmentRowsOf(writer.connection(), order);
        if (!garments.ok())
            return garments.error();
        for (const GarmentRow& garment : *garments) {
            if (garment.isHandedOver)
                return plainError(
                    said("{garment} is handed over already; the order can no longer be cancelled.",
                         {{"garment", garment.label()}}));
            if (garment.isOnPress())
                return plainError(
                    said("{garment} is on the press. Finish it, step it back or mark it spoiled first.",
                         {{"garment", garment.label()}}));
        }

        writer.connection().run("UPDATE shop_order SET state = ?2 WHERE id = ?1", order,
                                codeOf(OrderState::Cancelled));
        std::set<BlankKind> givenBack;
        for (const GarmentRow& garment : *garments) {
            concernsGarment(writer, garment);
            if (!garment.lot || garment.hasBegun())
                continue;
            giveBack(writer, garment.id);
            writer.concerns(*garment.lot);
            givenBack.insert({garment.style, garment.size, garment.colour});
        }
        for (const BlankKind& kind : givenBack)
            giveToWaiting(writer, kind);
        writer.describe(said("Order {order} cancelled: {why}", {{"order", row->label()}, {"why", *why}}));
        writer.concerns(order);
        writer.concerns(row->customer);
        return Done{};
    });
}

Result<Done> cancelGarment(Shop& shop, GarmentId id, const std::string& reason, const Now& now) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto why =
            typedText(reason, {.field = "reason", .what = phrase("The reason"), .least = 3, .most = 200});
        if (!why.ok())
            return why.error();
        const auto garment = garmentRow(writer.connection(), id);
        if (!garment.ok())
            return garment.error();
        if (const auto open = requireOpen(*garment); !open.ok())
            return open.error();
        if (garment->isOnPress())
            return plainError(
                said("{garment} is on the press. Finish it, step it back or mark it spoiled first.",
                     {{"garment", garment->label()}}));
        if (garmentsOf(writer.connection(), garment->order.id).size() == 1)
            return plainError(said("{garment} is the only garment of the order. Cancel the order.",
                                   {{"garment", garment->label()}}));
        writer.connection().run("UPDATE garment SET cancelled_at = ?2 WHERE id = ?1", id, now.instant);
        if (const auto left =
                requireNotBelowNothing(writer.connection(), garment->order.id, garment->order.number);
            !left.ok())
            return left.error();
        concernsGarment(writer, *garment);
        writer.concerns(garment->order.customer);
        if (garment->lot && !garment->hasBegun()) {
            giveBack(writer, id);
            writer.concerns(*garment->lot);
            giveToWaiting(writer, {garment->style, garment->size, garment->colour});
        }
        writer.describe(said("{garment} cancelled: {why}", {{"garment", garment->label()}, {"why", *why}}));
        return Done{};
    });
}

Result<Done> handOver(Shop& shop, OrderId order, const Now& now, std::span<const GarmentId> chosen) {
    return shop.act([&](Writer& writer) -> Result<Done> {
        const auto row = orderRow(writer.connection(), order);
        if (!row.ok())
            return row.error();
        if (const auto open = requireOpen(*row); !open.ok())
            return open.error();
        const auto garments = garmentRowsOf(writer.connection(), order);
        if (!garments.ok())
            return garments.error();

        std::size_t given = 0, waiting = 0;
        for (const GarmentRow& garment : *garments) {
            if (garment.isHandedOver)
                continue;
            const bool isChosen = std::ranges::find(chosen, garment.id) != chosen.end();
            if (isChosen && !garment.isPressed())
                return fieldError("garments",
                                  said("{garment} is not pressed yet.", {{"garment", garment.label()}}));
            if (!garment.isPressed() || (!chosen.empty() && !isChosen)) {
                ++waiting;
                continue;
            }
            writer.connection().run("UPDATE garment SET handed_over_at = ?2 WHERE id = ?1", garment.id,
                                    now.instant);
            writer.concerns(garment.id);
            ++given;
        }
        if (given == 0)
            return plainError(
                said("Not one garment of order {order} is pressed yet.", {{"order", row->label()}}));
        if (waiting == 0)
            writer.connection().run("UPDATE shop_order SET state = ?2, handed_over_at = ?3 WHERE id = ?1",
                                    order, codeOf(OrderState::HandedOver), now.instant);

        const Sentence handed = share(given, garments->size());
        const Money owed = accountOf(writer.connection(), order).owed();
        writer.describe(
            owed > Money{}
                ? said("Handed over {order}, {garments}, {amount} still owed",
                       {{"order", row->label()},
                        {"garments", handed},
                        {"amount", Amount{owed, loadSettings(writer.connection()).currency}}})
                : said("Handed over {order}, {garments}", {{"order", row->label()}, {"garments", handed}}));
        writer.concerns(order);
        writer.concerns(row->customer);
        return Done{};
    });
}

} // namespace holdfast::db
