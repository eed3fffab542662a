// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/actions/invoice_actions.h"

#include "core/orders/invoicing.h"
#include "core/trade/limits.h"
#include "db/actions/rows.h"
#include "db/tables/codes.h"
#include "db/tables/facts.h"
#include "db/tables/invoices.h"

#include <algorithm>

namespace holdfast::db {
namespace {

constexpr std::size_t kLongestAddress = 200;

// The next of this copy's series.
void number(Connection& connection, Invoice& invoice) {
    Query here = connection.query("SELECT seat_id, incarnation FROM seat_here");
    if (!here.step())
        throw SqliteFailure::inWords(
            said("The shop file is damaged: it does not say which laptop it is on."));
    invoice.series = invoiceSeries(here.integer(0), here.integer(1));
    invoice.number = connection.number("SELECT COALESCE(MAX(number), 0) + 1 FROM invoice WHERE series = ?1",
                                       invoice.series);
}

void write(Writer& writer, Invoice& invoice) {
    Connection& connection = writer.connection();
    number(connection, invoice);
    invoice.id = writer.newId<InvoiceId>();
    connection.run(
        "INSERT INTO invoice (id, order_id, order_number, kind, series, number, corrects_id, reason, "
        "made_on, handed_over_on, shop_name, shop_address, tax_number, shop_lines, customer_name, "
        "customer_address, currency_code, currency_sign, currency_exponent, tax_kind, tax_rate, "
        "taxed_by, tax_rounding, tax_name, tax_minor, total_minor, paid_minor) VALUES (?1, ?2, ?3, "
        "?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20, ?21, ?22, "
        "?23, ?24, ?25, ?26, ?27)",
        invoice.id, invoice.order, invoice.orderNumber, codeOf(invoice.kind), invoice.series, invoice.number,
        invoice.corrects, invoice.reason, invoice.madeOn, invoice.handedOverOn, invoice.shopName,
        invoice.shopAddress, invoice.taxNumber, invoice.shopLines, invoice.customerName,
        invoice.customerAddress, invoice.currency.code, invoice.currency.sign, invoice.currency.exponent,
        codeOf(invoice.tax.kind), invoice.tax.rate.hundredths, codeOf(invoice.tax.by),
        codeOf(invoice.tax.rounding), invoice.taxName, invoice.taxAmount, invoice.total, invoice.paid);
    for (const InvoiceRow& row : invoice.rows)
        connection.run(
            "INSERT INTO invoice_row (id, invoice_id, credits_id, words, minor) VALUES (?1, ?2, ?3, ?4, ?5)",
            writer.newId<InvoiceRowId>(), invoice.id, row.credits, row.words, row.amount);
}

void putShopOn(Invoice& invoice, const ShopSettings& settings) {
    invoice.shopName = settings.shopName;
    invoice.shopAddress = settings.address;
    invoice.taxNumber = settings.prices.taxNumber;
    invoice.taxName = settings.prices.taxName;
    invoice.shopLines = settings.invoiceLines;
    invoice.currency = settings.currency;
}

Result<Done> putCustomerOn(Invoice& invoice, const InvoiceAsked& asked) {
    const auto name =
        typedText(asked.customerName,
                  {.field = "customerName", .what = phrase("The customer’s name"), .least = 1, .most = 80});
    if (!name.ok())
        return name.error();
    const auto address = typedText(
        asked.customerAddress,
        {.field = "customerAddress", .what = phrase("The address"), .least = 0, .most = kLongestAddress});
    if (!address.ok())
        return address.error();
    invoice.customerName = *name;
    invoice.customerAddress = *address;
    return Done{};
}

Result<Done> requireInvoiceable(const Order& order, std::span<const Invoice> before) {
    const Numeral number{order.number};
    if (order.state == OrderState::Quoted)
        return plainError(said("Order {order} is a quotation, which has no invoice. Confirm it first.",
                               {{"order", number}}));
    if (order.state == OrderState::Cancelled)
        return plainError(said("Order {order} is cancelled; it has no invoice.", {{"order", number}}));
    if (order.total <= Money{})
        return plainError(said("Order {order} comes to nothing; it has no invoice.", {{"order", number}}));
    if (const Invoice* inForce = invoiceInForce(before))
        return plainError(
            said("Order {order} has invoice {invoice}. A credit note for all of it comes before "
                 "a new one.",
                 {{"order", number}, {"invoice", inForce->label()}}));
    return Done{};
}

std::optional<Invoice> invoiceOf(Connection& connection, InvoiceId id, std::vector<Invoice>& all) {
    all = invoicesOf(
        connection,
        OrderId{connection.number("SELECT COALESCE((SELECT order_id FROM invoice WHERE id = ?1), 0)", id)});
    const auto found = std::ranges::find(all, id, &Invoice::id);
    return found == all.end() || found->kind != InvoiceKind::Invoice ? std::nullopt : std::optional{*found};
}

// The invoice's own words and amounts, with the reason instead of what was paid.
Invoice creditNoteOf(const Invoice& invoice, const CreditAsked& asked, const std::vector<Invoice>& all,
                     const ShopSettings& settings) {
    Invoice note = invoice;
    putShopOn(note, settings);
    note.currency = invoice.currency;
    note.taxName = invoice.taxName;
    note.kind = InvoiceKind::CreditNote;
    note.corrects = invoice.id;
    note.paid = {};
    std::erase_if(note.rows, [&](const InvoiceRow& row) {
        return std::ranges::find(asked.rows, row.id) == asked.rows.end();
    });
    for (InvoiceRow& row : note.rows)
        row.credits = row.id;
    const InvoiceSum sum = creditSum(invoice, all, asked.rows);
    note.taxAmount = sum.tax;
    note.total = sum.total;
    return note;
}

Result<Done> requireCreditable(const Invoice& invoice, const std::vector<Invoice>& all,
                               const CreditAsked& asked) {
    const std::vector<InvoiceRow> left = notCredited(invoice, all);
    const Money rest = leftOf(invoice, all);
    if (rest <= Money{})
        return plainError(
            said("All of invoice {invoice} is credited already.", {{"invoice", invoice.label()}}));
    const auto isLeft = [&](InvoiceRowId row) {
        return std::ranges::find(left, row, &InvoiceRow::id) != left.end();
    };
    if (asked.rows.empty() || !std::ranges::all_of(asked.rows, isLeft))
        return fieldError("rows", said("Choose rows of invoice {invoice} that are not credited yet.",
                                       {{"invoice", invoice.label()}}));
    const Money credited = creditSum(invoice, all, asked.rows).total;
    if (credited <= Money{})
        return fieldError("rows",
                          said("The rows chosen come to nothing or less: a credit note takes off more "
                               "than nothing."));
    if (credited > rest)
        return fieldError("rows",
                          said("What is left of the invoice would come to less than nothing: choose the "
                               "discount, too."));
    return Done{};
}

void describe(Writer& writer, const Invoice& made, Sentence title) {
    writer.describe(std::move(title));
    writer.concerns(made.order);
    Query customer =
        writer.connection().query("SELECT customer_id FROM shop_order WHERE id = ?1", made.order);
    if (customer.step())
        writer.concerns(customer.id<CustomerId>(0));
}

} // namespace

Result<InvoiceId> makeInvoice(Shop& shop, const InvoiceAsked& asked, const Now& now,
                              const RowLanguage& language) {
    return shop.act([&](Writer& writer) -> Result<InvoiceId> {
        const ShopFacts facts = loadFactsOf(writer.connection(), std::span{&asked.order, 1});
        const Order* order = facts.orders.find(asked.order);
        if (!order)
            return plainError(said("The shop has no such order any more."));
        const std::vector<Invoice> before = invoicesOf(writer.connection(), asked.order);
        if (const auto sound = requireInvoiceable(*order, before); !sound.ok())
            return sound.error();
        Invoice invoice;
        invoice.order = order->id;
        invoice.orderNumber = order->number;
        invoice.madeOn = now.today();
        if (order->handedOverAt)
            invoice.handedOverOn = dateOf(now.toLocal(*order->handedOverAt));
        if (const auto sound = putCustomerOn(invoice, asked); !sound.ok())
            return sound.error();
        putShopOn(invoice, facts.settings);
        invoice.tax = order->tax;
        std::vector<Money> amounts;
        for (const BilledRow& row : billedRows(facts, order->id)) {
            invoice.rows.push_back({{}, {}, language(row.words), row.amount});
            amounts.push_back(row.amount);
        }
        const InvoiceSum sum = invoiceSum(amounts, order->tax);
        invoice.taxAmount = sum.tax;
        invoice.total = sum.total;
        invoice.paid = order->paid;
        write(writer, invoice);
        describe(writer, invoice,
                 said("Made invoice {invoice} for order {order}, {amount}",
                      {{"invoice", invoice.label()},
                       {"order", Numeral{order->number}},
                       {"amount", Amount{invoice.total, invoice.currency}}}));
        return invoice.id;
    });
}

Result<InvoiceId> makeCreditNote(Shop& shop, const CreditAsked& asked, const Now& now) {
    return shop.act([&](Writer& writer) -> Result<InvoiceId> {
        const auto reason = typedText(
            asked.reason, {.field = "reason", .what = phrase("The reason"), .least = 3, .most = 200});
        if (!reason.ok())
            return reason.error();
        std::vector<Invoice> all;
        const auto invoice = invoiceOf(writer.connection(), asked.invoice, all);
        if (!invoice)
            return plainError(said("The shop has no such invoice."));
        if (const auto sound = requireCreditable(*invoice, all, asked); !sound.ok())
            return sound.error();
        Invoice note = creditNoteOf(*invoice, asked, all, loadSettings(writer.connection()));
        note.reason = *reason;
        note.madeOn = now.today();
        write(writer, note);
        describe(writer, note,
                 said("Made credit note {note} on invoice {invoice}, {amount}",
                      {{"note", note.label()},
                       {"invoice", invoice->label()},
                       {"amount", Amount{note.total, note.currency}}}));
        return note.id;
    });
}

} // namespace holdfast::db
