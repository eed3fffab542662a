// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/exchange/may_be_carried.h"

#include "db/journal/recorded_tables.h"
#include "db/sqlite/connection.h"

#include <algorithm>
#include <array>
#include <set>
#include <string_view>
#include <utility>

namespace holdfast::db {

namespace {

constexpr std::array<std::string_view, 3> kLedgers{"lot_move", "money_move", "roll_move"};

bool isLedger(std::string_view table) {
    return std::ranges::find(kLedgers, table) != kLedgers.end();
}

// Rows of ledgers, by table and key.
std::set<std::pair<std::string, std::string>> moves(ChangesetView changeset, ChangeKind kind) {
    std::set<std::pair<std::string, std::string>> found;
    forEachChange(changeset, [&](const RowChange& change) {
        if (change.kind == kind && isLedger(change.table))
            found.emplace(change.table, change.key);
        return true;
    });
    return found;
}

} // namespace

MayBeCarried::MayBeCarried(Connection& connection)
    : m_connection(connection)
    , m_form(connection) {}

void MayBeCarried::requireOf(const CarriedEntry& entry) {
    const auto changes = tablesOf(entry.changeset);
    const bool isUpdated = std::ranges::any_of(
        changes, [](const TableChanges& each) { return isLedger(each.table) && each.updated > 0; });
    const bool takesAway = std::ranges::any_of(
        changes, [](const TableChanges& each) { return isLedger(each.table) && each.deleted > 0; });
    const bool takesBackForGood = std::ranges::any_of(changes, [](const TableChanges& each) {
        return isKeptForGood(each.table) && each.updated + each.deleted > 0;
    });
    if (takesBackForGood || entry.title.empty() || changes.empty() || !m_form.fits(changes) || isUpdated ||
        (takesAway && !takesAwayItsOwn(entry)))
        throw SqliteFailure::inWords(
            said("This news has changes in it that Holdfast never makes. It was altered on the way, or was "
                 "not saved by Holdfast. Nothing was brought in."));
}

bool MayBeCarried::takesAwayItsOwn(const CarriedEntry& entry) {
    if (!entry.undoes)
        return false;
    const auto undone = readEntry(m_connection, *entry.undoes);
    if (!undone)
        return true; // it will be set aside: what it undoes was not done here
    const auto added = moves(undone->changeset, ChangeKind::Insert);
    // Where the undone entry gave way to another, it may have left out here what was added on its own laptop.
    return std::ranges::all_of(moves(entry.changeset, ChangeKind::Delete), [&](const auto& move) {
        return added.contains(move) || !isHere(move.first, move.second);
    });
}

bool MayBeCarried::isHere(const std::string& ledger, const std::string& key) {
    return m_connection.number("SELECT COUNT(*) FROM " + ledger + " WHERE id = ?1", key) > 0;
}

} // namespace holdfast::db
