// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/joins_of_forgotten.h"

#include "db/sqlite/changeset_form.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/query.h"

#include <algorithm>
#include <string>

namespace holdfast::db {

namespace {

constexpr int kJoinedTo = 4; // the column of customer

bool isForgottenHere(Connection& connection, const std::string& customer) {
    return connection.number("SELECT COUNT(*) FROM forgotten_customer WHERE customer_id = ?1",
                             std::stoll(customer)) > 0;
}

} // namespace

std::optional<Sentence> whyNotJoined(Connection& connection, ChangesetView changeset) {
    const auto tables = tablesOf(changeset);
    if (std::ranges::none_of(tables, [](const TableChanges& each) { return each.table == "customer"; }))
        return std::nullopt;
    bool isOfForgotten = false;
    forEachChange(changeset, [&](const RowChange& change) {
        if (change.table != "customer" || change.kind != ChangeKind::Update || change.columns <= kJoinedTo)
            return true;
        const auto to = change.after(kJoinedTo);
        isOfForgotten = isOfForgotten ||
                        (to && (isForgottenHere(connection, *to) || isForgottenHere(connection, change.key)));
        return !isOfForgotten;
    });
    return isOfForgotten ? std::optional{said("One of the two customers was forgotten meanwhile.")}
                         : std::nullopt;
}

} // namespace holdfast::db
