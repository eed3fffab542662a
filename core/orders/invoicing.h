// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What an invoice of an order says, what a credit note takes off it, and whether one is due.

#include "core/facts/invoice.h"
#include "core/facts/shop_facts.h"

#include <span>
#include <vector>

namespace holdfast {

struct BilledRow {
    Sentence words; // says no wording of a decal: an invoice is kept for years, and a wording may be a name
    Money amount;
};

// A row for each garment and each line of the order. REQUIRES: the order is among the facts.
std::vector<BilledRow> billedRows(const ShopFacts& facts, OrderId order);

struct InvoiceSum {
    Money rows;
    Money tax; // that is in the total
    Money total;
};

// As the order is added up (order_sum.h), of the amounts of rows.
InvoiceSum invoiceSum(std::span<const Money> amounts, const TaxRule& tax);

// Rows of the invoice that none of the credit notes takes off.
std::vector<InvoiceRow> notCredited(const Invoice& invoice, std::span<const Invoice> all);

// What those come to, with tax: nothing, and the invoice is no more in force.
Money leftOf(const Invoice& invoice, std::span<const Invoice> all);

// What crediting these rows takes off: the sum of all that is not credited yet, less the sum of what is left.
// So credit notes always add up to the invoice, to the last coin of tax.
InvoiceSum creditSum(const Invoice& invoice, std::span<const Invoice> all,
                     std::span<const InvoiceRowId> rows);

// The invoice of the order that is not credited whole, the latest first; none where there is none.
const Invoice* invoiceInForce(std::span<const Invoice> all);

// Whether invoices and credit notes of an order come to something else than the order does now, in words;
// empty where they do not, or where there are none.
Sentence invoiceRemark(const Order& order, std::span<const Invoice> all, const Currency& currency);

// The series of one copy of the shop: the laptop's number, and three letters that follow from the copy's own
// number by chance (docs/file-format.md, incarnation). A file that was put back from a backup begins another
// series, because it does not know what was given out since.
std::string invoiceSeries(std::int64_t seat, std::int64_t incarnation);

} // namespace holdfast
