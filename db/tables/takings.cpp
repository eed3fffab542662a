// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/takings.h"

#include "db/tables/fact_row.h"

#include <optional>

namespace holdfast::db {

namespace {

// Order by order, so that the tax in each payment follows from those before it.
std::vector<MoneyMoved> readMoved(Connection& connection, const Now& now, UnreadFacts& unread) {
    std::vector<MoneyMoved> all;
    Query rows{connection,
               "SELECT money_move.id, order_id, at, minor, kind, how, tax_kind, tax_rate, "
               "taxed_by, tax_rounding FROM money_move "
               "JOIN shop_order ON shop_order.id = order_id ORDER BY order_id, at, money_move.id"};
    OrderId order;
    std::optional<TaxInPayments> tax;
    readFacts(rows, unread, "money_move", [&](const FactRow& row) {
        MoneyMoved moved{dateOf(now.toLocal(row.instant(2))),
                         row.choice<PaidHow>(5),
                         row.choice<MoneyKind>(4),
                         row.money(3),
                         {}};
        const TaxRule rule{row.choice<TaxKind>(6), Percentage{row.number(7, 0, kWholePercentage.hundredths)},
                           row.choice<TaxedBy>(8), row.choice<Rounding>(9)};
        if (const auto id = row.id<OrderId>(1); !tax || id != order) {
            order = id;
            tax.emplace(rule);
        }
        moved.tax = tax->of(moved.amount);
        all.push_back(moved);
    });
    return all;
}

} // namespace

TakingsRead readTakingsByMonth(Connection& connection, const std::string& currency, const Now& now,
                               UnreadFacts& unread) {
    TakingsRead read;
    std::vector<InvoiceMade> made;
    Query rows{connection,
               "SELECT id, made_on, kind, total_minor, tax_minor, currency_code FROM invoice ORDER BY id"};
    readFacts(rows, unread, "invoice", [&](const FactRow& row) {
        const InvoiceMade invoice{row.date(1), row.choice<InvoiceKind>(2), row.money(3), row.money(4)};
        if (row.text(5) == currency)
            made.push_back(invoice);
        else
            ++read.inOtherCurrency;
    });
    read.months = takingsByMonth(readMoved(connection, now, unread), made);
    return read;
}

} // namespace holdfast::db
