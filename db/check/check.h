// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Is the shop whole? The file's pages, its tables as the steps make them, the references between rows, the
// ledgers, the journal, every row against its history, every fact as the window reads it, and what is made
// out of the rows: the order book's lines and the search. Nothing is changed.

#include "core/facts/unread_row.h"
#include "core/trade/result.h"

#include <functional>
#include <vector>

namespace holdfast::db {

class Shop;

// The share done, 0 to 1, and what is being looked at; false: stop. Asked every few milliseconds.
using TellCheck = std::function<bool(double share, Phrase words)>;

// What is wrong, one sentence each; empty when all is well. An error only where the checking itself cannot go
// on, or was stopped.
Result<std::vector<Sentence>> checkShop(Shop& shop, const TellCheck& tell = {});

// What a day begins with, and each backup: the schema, the ledgers, every row against its history and the
// facts in view; of all orders where anything is wrong. Left out are the pages, the references, the order
// book's lines and the search, which lead to nothing that is pressed or paid.
struct QuickFindings {
    std::vector<UnreadRow> unread;   // facts that cannot be read
    std::vector<Sentence> sentences; // whatever else is wrong

    bool isWhole() const { return unread.empty() && sentences.empty(); }
};
Result<QuickFindings> checkQuickly(Shop& shop, const TellCheck& tell = {});

// "Order 427 of Maren Holt: Its promise reads “soon”. The order is left out."
Sentence sentenceOf(const UnreadRow& row);

} // namespace holdfast::db
