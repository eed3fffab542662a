// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/undone_orders.h"

#include "core/orders/order_sum.h"
#include "db/sqlite/changeset.h"
#include "db/tables/codes.h"

#include <algorithm>
#include <map>

namespace holdfast::db {

namespace {

// Where columns are in their tables. Columns are only ever appended.
namespace order_column {
constexpr int number = 1, customer = 2, state = 3, taken = 4, place = 5, promised = 6, note = 8, taxKind = 9,
              taxRate = 10, taxedBy = 11, taxRounding = 12;
}
namespace garment_column {
constexpr int order = 1, position = 2, style = 3, size = 4, colour = 5, price = 7;
}
namespace decal_column {
constexpr int garment = 1, film = 2, artwork = 3, wording = 4;
}
namespace money_column {
constexpr int order = 1, minor = 3;
}
namespace bill_column {
constexpr int order = 1, kind = 2, words = 3, minor = 4, share = 5;
}
namespace customer_column {
constexpr int name = 1, phone = 2;
}

std::int64_t numberIn(const std::optional<std::string>& text) {
    return text ? std::stoll(*text) : 0;
}

// One undo that removed orders, row by row.
class RemovedRows {
public:
    RemovedRows(Connection& connection, ChangesetView changeset)
        : m_connection(connection) {
        forEachChange(changeset, [&](const RowChange& change) {
            if (change.kind == ChangeKind::Delete)
                take(change);
            return true;
        });
    }

    std::optional<UndoneOrder> order(OrderId id) {
        const auto found = m_orders.find(id.value);
        if (found == m_orders.end())
            return std::nullopt;
        UndoneOrder order = found->second;
        order.line.id = id;
        order.line.isUndone = true;
        readCustomer(order, m_customerOf.at(id.value));
        for (auto& [garmentId, garment] : m_garments) {
            if (garment.order != id.value)
                continue;
            order.garments.push_back(garment.shown);
        }
        order.line.total = totalOf(order);
        order.line.garments = std::ssize(order.garments);
        order.line.paid = m_paid[id.value];
        std::ranges::sort(order.garments, {}, &UndoneGarment::position);
        return order;
    }

private:
    struct RemovedGarment {
        std::int64_t order = 0;
        UndoneGarment shown;
    };

    void take(const RowChange& row) {
        const std::int64_t id = row.table == "shop_order" || row.table == "garment" || row.table == "decal" ||
                                        row.table == "customer" || row.table == "money_move"
                                    ? std::stoll(row.key)
                                    : 0;
        if (row.table == "shop_order")
            takeOrder(id, row);
        else if (row.table == "garment")
            takeGarment(id, row);
        else if (row.table == "decal")
            takeDecal(row);
        else if (row.table == "bill_line")
            takeBillLine(row);
        else if (row.table == "money_move")
            m_paid[numberIn(row.before(money_column::order))] +=
                Money{numberIn(row.before(money_column::minor))};
        else if (row.table == "customer")
            m_customers[id] = {row.before(customer_column::name).value_or(""),
                               row.before(customer_column::phone).value_or("")};
    }

    static Money totalOf(const UndoneOrder& order) {
        std::vector<Money> prices;
        for (const UndoneGarment& garment : order.garments)
            prices.push_back(garment.price);
        return sumOf(prices, order.lines, order.tax).total;
    }

    void takeBillLine(const RowChange& row) {
        BillLine line;
        line.kind = fromCode<BillLineKind>(row.before(bill_column::kind).value_or(""));
        line.words = row.before(bill_column::words).value_or("");
        if (const auto share = row.before(bill_column::share))
            line.worth = Percentage{numberIn(share)};
        else
            line.worth = Money{numberIn(row.before(bill_column::minor))};
        m_orders[numberIn(row.before(bill_column::order))].lines.push_back(std::move(line));
    }

    // Orders that were taken before there was any tax have none.
    static TaxRule taxOf(const RowChange& row) {
        const auto kind = row.before(order_column::taxKind);
        if (!kind)
            return {};
        return {fromCode<TaxKind>(*kind), Percentage{numberIn(row.before(order_column::taxRate))},
                fromCode<TaxedBy>(row.before(order_column::taxedBy).value_or("")),
                fromCode<Rounding>(row.before(order_column::taxRounding).value_or(""))};
    }

    void takeOrder(std::int64_t id, const RowChange& row) {
        UndoneOrder& order = m_orders[id];
        order.line.number = numberIn(row.before(order_column::number));
        order.line.state = fromCode<OrderState>(row.before(order_column::state).value_or(""));
        Query promised = m_connection.query("SELECT ?1", row.before(order_column::promised));
        if (promised.step())
            order.line.promised = promised.localTime(0);
        order.takenAt = Instant{std::chrono::seconds{numberIn(row.before(order_column::taken))}};
        order.takenAtPlace = row.before(order_column::place).value_or("");
        order.note = row.before(order_column::note).value_or("");
        order.tax = taxOf(row);
        m_customerOf[id] = numberIn(row.before(order_column::customer));
    }

    void takeGarment(std::int64_t id, const RowChange& row) {
        RemovedGarment& garment = m_garments[id];
        garment.order = numberIn(row.before(garment_column::order));
        garment.shown.position = static_cast<int>(numberIn(row.before(garment_column::position)));
        garment.shown.price = Money{numberIn(row.before(garment_column::price))};
        garment.shown.blank =
            said("{style}, {size}, {colour}", {{"style", named("SELECT name FROM blank_style WHERE id = ?1",
                                                               row.before(garment_column::style))},
                                               {"size", row.before(garment_column::size).value_or("")},
                                               {"colour", named("SELECT name FROM style_colour WHERE id = ?1",
                                                                row.before(garment_column::colour))}});
    }

    void takeDecal(const RowChange& row) {
        const auto wording = row.before(decal_column::wording);
        Decal described;
        described.content = wording ? DecalContent{Wording{*wording}}
                                    : DecalContent{Artwork{row.before(decal_column::artwork).value_or("")}};
        m_garments[numberIn(row.before(decal_column::garment))].shown.decals.push_back(
            said("{decal} in {film}",
                 {{"decal", described.describe()},
                  {"film", named("SELECT shade FROM film WHERE id = ?1", row.before(decal_column::film))}}));
    }

    Sentence named(std::string_view sql, const std::optional<std::string>& id) {
        Query found = m_connection.query(sql, numberIn(id));
        return found.step() ? asItIs(found.text(0)) : said("no longer known");
    }

    // In the tables, or removed with this order or another.
    void readCustomer(UndoneOrder& order, std::int64_t customer) {
        if (const auto removed = m_customers.find(customer); removed != m_customers.end()) {
            order.line.customer = removed->second.first;
            order.phone = removed->second.second;
            return;
        }
        Query found = m_connection.query("SELECT name, phone FROM customer WHERE id = ?1", customer);
        if (found.step()) {
            order.line.customer = found.text(0);
            order.phone = found.text(1);
            return;
        }
        readRemovedCustomer(order, customer);
    }

    void readRemovedCustomer(UndoneOrder& order, std::int64_t customer) {
        Query entries = m_connection.query(
            "SELECT changeset FROM journal_subject JOIN journal_entry ON journal_entry.id = entry_id "
            "WHERE kind = 'customer' AND subject_id = ?1 AND undoes IS NOT NULL AND undone_by IS NULL "
            "ORDER BY entry_id DESC",
            customer);
        while (entries.step() && order.line.customer.empty())
            forEachChange(entries.bytes(0), [&](const RowChange& row) {
                if (row.table != "customer" || row.kind != ChangeKind::Delete ||
                    row.key != std::to_string(customer))
                    return true;
                order.line.customer = row.before(customer_column::name).value_or("");
                order.phone = row.before(customer_column::phone).value_or("");
                return false;
            });
    }

    Connection& m_connection;
    std::map<std::int64_t, UndoneOrder> m_orders;
    std::map<std::int64_t, std::int64_t> m_customerOf; // by order
    std::map<std::int64_t, RemovedGarment> m_garments;
    std::map<std::int64_t, Money> m_paid; // by order
    std::map<std::int64_t, std::pair<std::string, std::string>> m_customers;
};

// CROSS JOIN keeps the order of looking: the few undos that come first, not years of orders.
constexpr std::string_view kFromUndos =
    "FROM journal_entry CROSS JOIN journal_subject ON entry_id = journal_entry.id "
    "WHERE undoes IS NOT NULL AND undone_by IS NULL AND kind = 'order' "
    "AND NOT EXISTS (SELECT 1 FROM shop_order WHERE shop_order.id = subject_id) ";

} // namespace

std::vector<UndoneOrder> undoneOrders(Connection& connection) {
    std::vector<UndoneOrder> orders;
    Query undos = connection.query("SELECT journal_entry.id, subject_id, changeset " +
                                   std::string{kFromUndos} + "ORDER BY journal_entry.id DESC");
    while (undos.step()) {
        const auto id = undos.id<OrderId>(1);
        const bool isKnown =
            std::ranges::any_of(orders, [&](const UndoneOrder& known) { return known.line.id == id; });
        if (isKnown)
            continue;
        if (auto order = RemovedRows{connection, undos.bytes(2)}.order(id)) {
            order->undo = undos.id<EntryId>(0);
            orders.push_back(std::move(*order));
        }
    }
    std::ranges::sort(orders, std::ranges::greater{}, [](const UndoneOrder& order) { return order.line.id; });
    return orders;
}

std::int64_t countUndone(Connection& connection) {
    return connection.number("SELECT COUNT(DISTINCT subject_id) " + std::string{kFromUndos});
}

std::optional<UndoneOrder> undoneOrder(Connection& connection, OrderId order) {
    Query undos = connection.query(
        "SELECT entry_id, changeset FROM journal_subject JOIN journal_entry ON journal_entry.id = entry_id "
        "WHERE kind = 'order' AND subject_id = ?1 AND undoes IS NOT NULL AND undone_by IS NULL "
        "AND NOT EXISTS (SELECT 1 FROM shop_order WHERE shop_order.id = subject_id) ORDER BY entry_id DESC",
        order);
    while (undos.step())
        if (auto found = RemovedRows{connection, undos.bytes(1)}.order(order)) {
            found->undo = undos.id<EntryId>(0);
            return found;
        }
    return std::nullopt;
}

std::vector<OrderLine> findUndone(Connection& connection, const OrderQuery& wanted) {
    std::vector<OrderLine> lines;
    for (const UndoneOrder& order : undoneOrders(connection))
        if (matches(order, wanted.search, wanted.spelling))
            lines.push_back(order.line);
    return lines;
}

bool matches(const UndoneOrder& order, const OrderSearch& search, Spelling spelling) {
    std::string text = order.line.customer + ' ' + order.takenAtPlace + ' ' + order.note;
    for (const UndoneGarment& garment : order.garments) {
        text += ' ' + garment.blank.english();
        for (const Sentence& decal : garment.decals)
            text += ' ' + decal.english();
    }
    return search.matches({order.line.number,
                           order.phone,
                           text,
                           {dateOf(order.line.promised), dateOf(search.now().toLocal(order.takenAt))}},
                          spelling);
}

} // namespace holdfast::db
