// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// An invoice, and the credit note that corrects it, as they were made: nothing of them follows from the order
// any more, and nothing of them changes. What must be on them is for local law.
//
// Source: Council Directive 2006/112/EC, article 226, for what is kept of each: number, day, names,
// addresses, tax number, rows, rate and tax; article 219 for the document that amends an invoice and names
// it.

#include "core/facts/bill_line.h"
#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/money.h"

#include <optional>
#include <string>
#include <vector>

namespace holdfast {

enum class InvoiceKind { Invoice, CreditNote };

struct InvoiceRow {
    InvoiceRowId id;
    std::optional<InvoiceRowId> credits{}; // of a credit note: the row of the invoice
    std::string words;
    Money amount; // with tax where the prices have it in them, without where it is added

    bool operator==(const InvoiceRow&) const = default;
};

struct Invoice {
    InvoiceId id;
    InvoiceKind kind = InvoiceKind::Invoice;
    std::string series; // of one copy of the shop
    std::int64_t number = 0;
    std::optional<InvoiceId> corrects{}; // of a credit note: the invoice
    std::string reason;                  // of a credit note
    OrderId order;                       // which may be gone from the shop
    std::int64_t orderNumber = 0;
    LocalDate madeOn{};
    std::optional<LocalDate> handedOverOn{};

    std::string shopName;
    std::string shopAddress; // semicolons between lines
    std::string taxNumber;
    std::string shopLines; // at the foot; semicolons between lines
    std::string customerName;
    std::string customerAddress; // semicolons between lines

    Currency currency;
    TaxRule tax;
    std::string taxName;
    std::vector<InvoiceRow> rows;
    Money taxAmount; // that is in the total
    Money total;     // of a credit note: what is credited
    Money paid;      // when it was made

    // "1KFT-3": one number without a gap in each series.
    std::string label() const { return series + "-" + std::to_string(number); }
};

} // namespace holdfast
