// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/backups/look_at_backup.h"

#include "db/disk/file_probe.h"
#include "db/sqlite/connection.h"
#include "db/sqlite/stopping.h"

#include <unordered_set>

namespace holdfast::db {

namespace {

constexpr std::size_t kNewestNamed = 5;

bool hasTableNamed(Connection& connection, std::string_view name) {
    return connection.number("SELECT COUNT(*) FROM sqlite_schema WHERE name = ?1", name) > 0;
}

// What an entry is, whatever number it has there. A file from before step 9 has numbers only.
std::unordered_set<std::string> entriesIn(Connection& connection, bool byIdentity) {
    std::unordered_set<std::string> entries;
    Query rows = connection.query(byIdentity ? "SELECT hex(identity) FROM journal_seal"
                                             : "SELECT CAST(id AS TEXT) FROM journal_entry");
    while (rows.step())
        entries.insert(rows.text(0));
    return entries;
}

std::unordered_set<std::int64_t> idsOf(Connection& connection, std::string_view table) {
    std::unordered_set<std::int64_t> ids;
    Query rows = connection.query("SELECT id FROM " + std::string{table});
    while (rows.step())
        ids.insert(rows.integer(0));
    return ids;
}

std::int64_t missingIn(const std::unordered_set<std::int64_t>& there, Query rows) {
    std::unordered_set<std::int64_t> missing; // counted by the second column
    while (rows.step())
        if (!there.contains(rows.integer(0)))
            missing.insert(rows.integer(1));
    return static_cast<std::int64_t>(missing.size());
}

void countRows(Connection& of, Connection& other, OnlyInOne& only) {
    for (const char* table : {"shop_order", "money_move", "press_step"})
        if (!hasTableNamed(of, table) || !hasTableNamed(other, table))
            return;
    only.orders = missingIn(idsOf(other, "shop_order"), of.query("SELECT id, id FROM shop_order"));
    only.payments = missingIn(idsOf(other, "money_move"), of.query("SELECT id, id FROM money_move"));
    only.garmentsPressed =
        missingIn(idsOf(other, "press_step"),
                  of.query("SELECT id, garment_id FROM press_step WHERE finished_at IS NOT NULL"));
}

OnlyInOne onlyIn(Connection& of, Connection& other) {
    const bool byIdentity = hasTableNamed(of, "journal_seal") && hasTableNamed(other, "journal_seal");
    const auto there = entriesIn(other, byIdentity);
    OnlyInOne only;
    Query rows = of.query(
        byIdentity ? "SELECT hex(identity), title FROM journal_entry "
                     "JOIN journal_seal ON entry_id = journal_entry.id ORDER BY journal_entry.id DESC"
                   : "SELECT CAST(id AS TEXT), title FROM journal_entry ORDER BY id DESC");
    while (rows.step()) {
        if (there.contains(rows.text(0)))
            continue;
        ++only.entries;
        if (only.newest.size() < kNewestNamed)
            only.newest.push_back(asItIs(rows.text(1)));
    }
    countRows(of, other, only);
    return only;
}

void readLast(Connection& backup, LookAtBackup& look) {
    if (hasTableNamed(backup, "shop_order"))
        look.orders = backup.number("SELECT COUNT(*) FROM shop_order");
    Query last = backup.query("SELECT at, title FROM journal_entry ORDER BY id DESC LIMIT 1");
    if (last.step()) {
        look.lastDoneAt = last.instant(0);
        look.lastTitle = asItIs(last.text(1));
    }
}

std::function<bool()> whetherToGoOn(const TellProgress& tell) {
    return tell ? std::function<bool()>{[&tell] { return tell(0); }} : std::function<bool()>{};
}

void compareWithShop(Connection& backup, const std::filesystem::path& shop, const TellProgress& tell,
                     LookAtBackup& look) {
    try {
        Connection present = Connection::open(shop, Access::ReadOnly);
        const Stopping stopping{present, whetherToGoOn(tell)};
        look.lost = onlyIn(present, backup);
        look.comesBack = onlyIn(backup, present);
        look.isShopRead = true;
    } catch (const SqliteFailure& failure) {
        if (failure.isStopped())
            throw;
        look.lost = {};
        look.comesBack = {};
    }
}

} // namespace

Result<LookAtBackup> lookAtBackup(const std::filesystem::path& backup, const std::filesystem::path& shop,
                                  const TellProgress& tell) {
    if (auto probed = probeFile(backup); !probed)
        return probed.error();
    if (auto header = probeHeader(backup, static_cast<int>(schemaSteps().size())); !header)
        return header.error();
    try {
        Connection connection = Connection::open(backup, Access::Untrusted);
        const Stopping stopping{connection, whetherToGoOn(tell)};
        LookAtBackup look;
        readLast(connection, look);
        compareWithShop(connection, shop, tell, look);
        return look;
    } catch (const SqliteFailure& failure) {
        return failure.isDamage() ? damagedShop(backup) : failure.error();
    }
}

} // namespace holdfast::db
