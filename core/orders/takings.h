// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a shop took in each calendar month, quarter and year: money by way of payment on the day it moved,
// with the tax in it, and invoices and credit notes on the day they were made. For whoever does the books;
// what must be declared, when and by which of the two, is for local law and an adviser. Exact to the minor
// unit: months add up to quarters, and quarters to years.

#include "core/facts/bill_line.h"
#include "core/facts/invoice.h"
#include "core/orders/till.h"

#include <map>
#include <span>
#include <vector>

namespace holdfast {

struct MoneyMoved {
    LocalDate on{};
    PaidHow how = PaidHow::Cash;
    MoneyKind kind = MoneyKind::Payment;
    Money amount; // below zero: paid back
    Money tax;    // that is in the amount
};

// Days, kinds and sums of an invoice or a credit note.
struct InvoiceMade {
    LocalDate on{};
    InvoiceKind kind = InvoiceKind::Invoice;
    Money total; // with tax; of a credit note: what is credited
    Money tax;   // in the total
};

// The tax in what was paid on one order, payment by payment: by the rate of its bill, of all that was paid so
// far less what was in it before, so that parts add up to the tax of the whole. Where tax is rounded for each
// line, a bill may have some minor units more or less.
class TaxInPayments {
public:
    explicit TaxInPayments(const TaxRule& rule)
        : m_rule(rule) {}

    Money of(Money amount); // the next that was paid, or paid back

private:
    TaxRule m_rule;
    Money m_paid;
    Money m_tax;
};

struct Takings {
    DayMoney money;
    Money tax; // in what was received, less that in what was paid back
    std::int64_t invoices = 0;
    Money invoiced; // with tax
    Money invoicedTax;
    std::int64_t creditNotes = 0;
    Money credited; // with tax
    Money creditedTax;

    bool operator==(const Takings&) const = default;
    Takings& operator+=(const Takings& more);
    void add(const MoneyMoved& moved);
    void add(const InvoiceMade& made);

    Money received() const; // deposits and payments, by all ways
    Money paidBack() const; // as a positive amount
    // Invoices less credit notes.
    Money billed() const { return invoiced - credited; }
    Money billedTax() const { return invoicedTax - creditedTax; }
    Money billedNet() const { return billed() - billedTax(); }
};

using TakingsByMonth = std::map<std::chrono::year_month, Takings>;

TakingsByMonth takingsByMonth(std::span<const MoneyMoved> moved, std::span<const InvoiceMade> made);

enum class TakingsSpan { Month, Quarter, Year };

struct TakingsLine {
    TakingsSpan span = TakingsSpan::Month;
    std::chrono::year_month from{}; // its first month, whether anything was taken in it or not
    Takings takings;

    LocalDate firstDay() const;
    LocalDate lastDay() const;
    int quarter() const;       // in which it begins, 1 to 4
    std::string label() const; // "2026-11", "2026-Q4", "2026"
};

// The earliest first, each quarter after its months and each year after its quarters: from the first month in
// which anything was taken to the last, but for years with nothing in them.
std::vector<TakingsLine> takingsLines(const TakingsByMonth& months);

} // namespace holdfast
