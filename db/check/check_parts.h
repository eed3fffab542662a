// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The parts that check.cpp puts together, one subject a file. Each adds what it finds, a sentence each; none
// changes anything. All throw SqliteFailure.

#include "core/facts/unread_row.h"
#include "core/trade/sentence.h"
#include "db/check/row_stories.h"
#include "db/journal/shop.h"

#include <map>
#include <string>
#include <vector>

namespace holdfast::db {

using Findings = std::vector<Sentence>;

// This many of one kind are named; of the rest it is said how many there are.
inline constexpr std::size_t kMostNamed = 20;

// Adds the sentences, or the first of them and how many more there are: "And {n} more rows are other."
void addNamed(Findings& findings, const std::vector<Sentence>& sentences, Phrase andMore);

// What the steps make of an empty file: by what it is and its name ("index film_roll_by_number"), the
// statement that makes it. Made once for each schema.
using Schema = std::map<std::string, std::string>;
const Schema& schemaMadeBy(Shop::Steps steps);

// The tables, indexes, views and triggers of the file against those that the steps make.
void checkSchema(Connection& connection, Shop::Steps steps, Findings& findings);
// What of it is missing, foreign or other: "index film_roll_by_number".
struct SchemaOdds {
    std::vector<std::string> missing;
    std::vector<std::string> foreign;
    std::vector<std::string> other;
};
SchemaOdds schemaOdds(Connection& connection, Shop::Steps steps);

// The order book's lines and the search against the orders. Empty: both are right.
void checkOrderCards(Connection& connection, Findings& findings);
void checkSearch(Connection& connection, Shop::Steps steps, Findings& findings);
// What figures count of each garment against its steps.
void checkGarmentCards(Connection& connection, Findings& findings);

// The journal by itself: its entries, what was undone, the line that laptops share.
void checkJournal(Connection& connection, Findings& findings);
// Whether each entry is marked as undone by what undid it, and no other.
void checkUndos(Connection& connection, Findings& findings);
// By entry, the undo of it that was not undone itself.
std::map<std::int64_t, std::int64_t> undoneByWhich(Connection& connection);
void checkLine(Connection& connection, Findings& findings);
// Each entry against its seal, and the line against the marks that are made of them.
void checkSeals(Connection& connection, const TellProgress& told, Findings& findings);
void checkMarks(Connection& connection, Findings& findings);

// The journal against the tables.
struct HistoryFindings {
    std::vector<RowOdds> rows;    // of the first groups at odds
    std::size_t moreGroups = 0;   // at odds too, each with a row or more
    std::vector<Sentence> unread; // entries that cannot be read
};
// Rows of no more groups are looked at one by one: it takes memory, and no list is read to such an end.
inline constexpr std::size_t kMostGroups = 256;
HistoryFindings historyFindings(Connection& connection, const TellProgress& told,
                                std::size_t mostGroups = kMostGroups);
void checkHistory(Connection& connection, const TellProgress& told, Findings& findings);
Sentence words(Connection& connection, const RowOdds& odds);

} // namespace holdfast::db
