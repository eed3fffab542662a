// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/references_twice.h"

#include "db/forgetting/personal_columns.h"
#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"

#include <algorithm>

namespace holdfast::db {

namespace {

constexpr std::string_view kTable = "order_reference";
constexpr std::size_t kMostNamed = 20; // a whole file may have been taken twice

// What was forgotten is not one reference. The lower order number is said first, so that each laptop says the
// same.
void addTwice(Connection& connection, std::int64_t reference, std::vector<Sentence>& sentences) {
    Query rows = connection.query(
        "SELECT own.reference, own.shop, MIN(mine.number, theirs.number), MAX(mine.number, theirs.number) "
        "FROM order_reference AS own JOIN shop_order AS mine ON mine.id = own.order_id "
        "JOIN order_reference AS other ON other.reference = own.reference AND other.shop = own.shop "
        "AND other.order_id <> own.order_id JOIN shop_order AS theirs ON theirs.id = other.order_id "
        "WHERE own.id = ?1 AND mine.state <> 'cancelled' AND theirs.state <> 'cancelled' "
        "AND own.reference <> ?2 ORDER BY 3, 4",
        reference, kForgottenName);
    while (rows.step())
        sentences.push_back(said("{reference} of {shop} is taken twice, as order {order} and order {other}. "
                                 "Both stay: cancel the one too many.",
                                 {{"reference", rows.text(0)},
                                  {"shop", rows.text(1)},
                                  {"order", Numeral{rows.integer(2)}},
                                  {"other", Numeral{rows.integer(3)}}}));
}

} // namespace

std::vector<Sentence> referencesTakenTwice(Connection& connection, ChangesetView changeset) {
    std::vector<Sentence> sentences;
    if (std::ranges::none_of(tablesOf(changeset), [](const TableChanges& each) {
            return each.table == kTable && each.inserted > 0;
        }))
        return sentences;
    forEachChange(changeset, [&](const RowChange& change) {
        if (change.table == kTable && change.kind == ChangeKind::Insert)
            addTwice(connection, std::stoll(change.key), sentences);
        return true;
    });
    if (sentences.size() > kMostNamed) {
        const std::size_t more = sentences.size() - kMostNamed;
        sentences.resize(kMostNamed);
        sentences.push_back(
            said("{n} more reference is taken twice.|{n} more references are taken twice.", {{"n", more}}));
    }
    return sentences;
}

} // namespace holdfast::db
