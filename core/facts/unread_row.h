// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A row of the shop file that holds what no action writes: a day that is none, a word that nobody knows, a
// number out of all bounds, a reference to nothing. It takes away itself and what cannot be shown without it,
// never the whole shop; what is left out is named by these.

#include "core/trade/ids.h"
#include "core/trade/sentence.h"

#include <optional>
#include <string>

namespace holdfast {

struct UnreadRow {
    std::string table; // of the shop file: "decal"
    std::string key;   // the row's, as text; empty: every row of the table
    Sentence what;     // whom it concerns, as a sentence begins: "Order 427 of Maren Holt"
    Sentence why;      // "A decal’s width reads “4611686018427387904”."
    Sentence leftOut;  // "The order is left out."
    std::optional<OrderId> order{};

    bool operator==(const UnreadRow&) const = default;
};

} // namespace holdfast
