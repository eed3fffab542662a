// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Puts the file right where it is not what its history says: it is no act of the trade, so it is no entry of
// the journal and cannot be undone. Rows are written as their entries left them; what is made out of rows,
// the order book's lines and the search, is made again; tables, indexes and triggers that are missing or
// other are made as the steps make them.
//
// A row is put right only where the journal itself is whole: with an entry missing, the row may be newer than
// what is left of its history.

#include "core/trade/result.h"
#include "db/check/check.h"

#include <set>
#include <span>
#include <string>
#include <vector>

namespace holdfast::db {

class Connection;

struct Mended {
    std::vector<Sentence> putRight; // the first of many
    std::size_t rows = 0;           // put right
    std::vector<Sentence> left;     // what could not be put right, and why
};

// All of it or, on an error or a stop, nothing. Listeners are notified.
Result<Mended> mendShop(Shop& shop, const TellCheck& tell = {});

// The same in a transaction of the caller's, with foreign keys off and writing allowed.
Mended mendFile(Connection& connection, std::span<const char* const> steps, const TellCheck& tell = {});

} // namespace holdfast::db
