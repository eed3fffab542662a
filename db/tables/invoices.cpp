// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/invoices.h"

#include "db/sqlite/changeset_form.h"
#include "db/tables/fact_row.h"

#include <algorithm>

namespace holdfast::db {

namespace {

constexpr const char* kInvoiceColumns =
    "SELECT id, order_id, order_number, kind, series, number, corrects_id, reason, made_on, handed_over_on, "
    "shop_name, shop_address, tax_number, shop_lines, customer_name, customer_address, currency_code, "
    "currency_sign, currency_exponent, tax_kind, tax_rate, taxed_by, tax_rounding, tax_name, tax_minor, "
    "total_minor, paid_minor FROM invoice ";
constexpr const char* kRowColumns = "SELECT id, invoice_id, credits_id, words, minor FROM invoice_row ";
constexpr int kMostExponent = 4;

Invoice invoiceFrom(const FactRow& row) {
    Invoice invoice;
    invoice.id = row.id<InvoiceId>(0);
    invoice.order = row.id<OrderId>(1);
    invoice.orderNumber = row.number(2, 1, kMostCount);
    invoice.kind = row.choice<InvoiceKind>(3);
    invoice.series = row.text(4);
    invoice.number = row.number(5, 1, kMostCount);
    invoice.corrects = row.optionalId<InvoiceId>(6);
    invoice.reason = row.text(7);
    invoice.madeOn = row.date(8);
    invoice.handedOverOn = row.optionalDate(9);
    invoice.shopName = row.text(10);
    invoice.shopAddress = row.text(11);
    invoice.taxNumber = row.text(12);
    invoice.shopLines = row.text(13);
    invoice.customerName = row.text(14);
    invoice.customerAddress = row.text(15);
    invoice.currency = {row.text(16), row.text(17), static_cast<int>(row.number(18, 0, kMostExponent))};
    invoice.tax = {row.choice<TaxKind>(19), Percentage{row.number(20, 0, kWholePercentage.hundredths)},
                   row.choice<TaxedBy>(21), row.choice<Rounding>(22)};
    invoice.taxName = row.text(23);
    invoice.taxAmount = row.money(24);
    invoice.total = row.money(25);
    invoice.paid = row.money(26);
    return invoice;
}

InvoiceRow rowFrom(const FactRow& row) {
    return {row.id<InvoiceRowId>(0), row.optionalId<InvoiceRowId>(2), row.text(3), row.money(4)};
}

} // namespace

std::vector<Invoice> invoicesOf(Connection& connection, OrderId order) {
    std::vector<Invoice> invoices;
    UnreadFacts unread;
    Query found = connection.query(std::string{kInvoiceColumns} + "WHERE order_id = ?1 ORDER BY id", order);
    readFacts(found, unread, "invoice", [&](const FactRow& row) { invoices.push_back(invoiceFrom(row)); });
    for (Invoice& invoice : invoices) {
        Query rows =
            connection.query(std::string{kRowColumns} + "WHERE invoice_id = ?1 ORDER BY id", invoice.id);
        readFacts(rows, unread, "invoice_row",
                  [&](const FactRow& row) { invoice.rows.push_back(rowFrom(row)); });
    }
    return invoices;
}

void noteUnreadInvoices(Connection& connection, UnreadFacts& unread) {
    Query found = connection.query(std::string{kInvoiceColumns} + "ORDER BY id");
    readFacts(found, unread, "invoice", [](const FactRow& row) { (void)invoiceFrom(row); });
    Query rows = connection.query(std::string{kRowColumns} + "ORDER BY id");
    readFacts(rows, unread, "invoice_row", [](const FactRow& row) { (void)rowFrom(row); });
}

std::vector<std::string> invoicesNaming(Connection& connection, CustomerId customer) {
    std::vector<std::string> labels;
    Query rows = connection.query("SELECT series || '-' || invoice.number FROM invoice "
                                  "JOIN shop_order ON shop_order.id = order_id WHERE customer_id = ?1 "
                                  "ORDER BY invoice.id",
                                  customer);
    while (rows.step())
        labels.push_back(rows.text(0));
    return labels;
}

std::optional<std::string> invoiceLeftAlone(Connection& connection, ChangesetView changeset) {
    std::optional<std::string> label;
    const auto tables = tablesOf(changeset);
    if (std::ranges::none_of(
            tables, [](const TableChanges& each) { return each.table == "shop_order" && each.deleted > 0; }))
        return label;
    forEachChange(changeset, [&](const RowChange& change) {
        if (change.table == "shop_order" && change.kind == ChangeKind::Delete)
            if (Query row = connection.query("SELECT series || '-' || number FROM invoice "
                                             "WHERE order_id = ?1 ORDER BY id LIMIT 1",
                                             std::stoll(change.key));
                row.step())
                label = row.text(0);
        return !label;
    });
    return label;
}

} // namespace holdfast::db
