// SPDX-License-Identifier: GPL-3.0-or-later
// Changesets: what is not whole is refused by everything that reads one, and what is whole can be read,
// turned round, renumbered and tried on a shop.
#include "db/journal/recorded_form.h"
#include "db/sqlite/changeset_form.h"
#include "db/sqlite/foreign_keys.h"
#include "tests/long/fuzz/fuzz_target.h"
#include "tests/long/fuzz/prepared_shop.h"

#include <algorithm>

namespace holdfast::fuzz {
namespace {

void lookAtAll(db::ChangesetView changeset) {
    std::int64_t changes = 0;
    db::forEachChange(changeset, [&](const db::RowChange& change) {
        for (int column = 0; column < change.columns; ++column) {
            (void)change.before(column);
            (void)change.after(column);
        }
        ++changes;
        return true;
    });
    require(changes == db::changeCount(changeset), "as many changes as are counted");
}

void tryOn(db::Shop& shop, db::ChangesetView changeset) {
    db::Connection& connection = shop.connection();
    connection.allowWriting(true);
    try {
        const db::ForeignKeysOff unchecked{connection};
        const db::Transaction onlyTried{connection};
        (void)db::applyChangeset(connection, changeset);
    } catch (const db::SqliteFailure&) { // a rule of a table
    }
    connection.allowWriting(false);
}

void readChangeset(std::string_view input) {
    const auto bytes = std::as_bytes(std::span{input.data(), input.size()});
    const bool isWhole = db::isWhole(bytes);
    try {
        const auto tables = db::tablesOf(bytes);
        require(isWhole, "only what is whole is read");
        lookAtAll(bytes);
        const auto inverse = db::inverseOf(bytes);
        require(db::isWhole(inverse), "what is turned round is whole");
        lookAtAll(inverse);
        const auto same =
            db::withOtherNumbers(bytes, {}, [](const std::string&, std::size_t) { return true; });
        require(std::ranges::equal(same, bytes), "nothing renumbered is the same");
        db::Shop& shop = PreparedShop::instance().workshop();
        if (db::RecordedForm{shop.connection()}.fits(tables))
            tryOn(shop, bytes);
    } catch (const db::SqliteFailure&) {
        require(!isWhole, "what is whole can be read");
    }
}

const Registered registeredChangeset{"changeset", readChangeset};

} // namespace
} // namespace holdfast::fuzz
