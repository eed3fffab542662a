// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Making invoices and credit notes. Each gets the next number of this copy's series in the same transaction,
// so that a refused or broken-off one leaves no gap. There is no undo: a credit note corrects an invoice.

#include "core/facts/invoice.h"
#include "core/trade/dates.h"
#include "core/trade/result.h"
#include "core/trade/sentence.h"
#include "db/journal/shop.h"

#include <functional>
#include <string>
#include <vector>

namespace holdfast::db {

// How rows are written on it, for good: in the language of the window.
using RowLanguage = std::function<std::string(const Sentence&)>;

struct InvoiceAsked {
    OrderId order;
    std::string customerName;    // 1–80 characters
    std::string customerAddress; // up to 200, semicolons between lines; may be empty
};
// Of what the order comes to now. Refused for a quotation, for what is cancelled or comes to nothing, and
// while an invoice of the order is not credited whole.
Result<InvoiceId> makeInvoice(Shop& shop, const InvoiceAsked& asked, const Now& now,
                              const RowLanguage& language);

struct CreditAsked {
    InvoiceId invoice;
    std::vector<InvoiceRowId> rows; // of the invoice, that are not credited yet
    std::string reason;             // 3–200 characters
};
// Refused where the rows do not come to more than nothing; an Error names the field "rows" or "reason".
Result<InvoiceId> makeCreditNote(Shop& shop, const CreditAsked& asked, const Now& now);

} // namespace holdfast::db
