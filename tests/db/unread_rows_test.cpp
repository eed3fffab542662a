// SPDX-License-Identifier: GPL-3.0-or-later
// A row that holds what no action writes takes away itself and what cannot be shown without it, never the
// whole shop.
#include "core/shop/reckoned_shop.h"
#include "core/shop/walk.h"
#include "db/journal/recorded_tables.h"
#include "db/tables/figures.h"
#include "db/tables/order_book.h"
#include "tests/db/small_shop.h"

#include <sqlite3.h>

#include <algorithm>

namespace holdfast::db {
namespace {

class UnreadRows : public SmallShop {
protected:
    // What damage does, without an action.
    void damage(const std::string& sql) {
        connection().allowWriting(true);
        connection().script(sql);
        connection().allowWriting(false);
    }

    // From now on a column takes values of any kind, as a file's bytes do.
    void loosenTypes() {
        sqlite3_db_config(connection().handle(), SQLITE_DBCONFIG_DEFENSIVE, 0, nullptr);
        damage("PRAGMA writable_schema = ON;"
               "UPDATE sqlite_schema SET sql = replace(sql, ') STRICT', ')') WHERE type = 'table';"
               "PRAGMA writable_schema = RESET;"
               "PRAGMA ignore_check_constraints = ON; PRAGMA foreign_keys = OFF;");
    }

    ShopFacts facts() { return loadOpenFacts(connection()); }

    const UnreadRow* unreadIn(const ShopFacts& facts, const std::string& table) {
        const auto found = std::ranges::find(facts.unread, table, &UnreadRow::table);
        return found == facts.unread.end() ? nullptr : &*found;
    }

    std::shared_ptr<const ReckonedShop> reckoned() {
        ClimateReckoner reckoner;
        return reckonShop(facts(), loadClimate(connection()), loadRecentUse(connection(), now().instant),
                          reckoner, now());
    }

    void expectOneOrderLeftOut(const std::string& sql, OrderId order, const std::string& what,
                               const std::string& why) {
        SCOPED_TRACE(sql);
        damage("SAVEPOINT before;" + sql);
        const ShopFacts loaded = facts();
        EXPECT_EQ(loaded.orders.find(order), nullptr);
        EXPECT_EQ(loaded.orders.size(), 1U) << "the other order stays";
        ASSERT_EQ(loaded.unread.size(), 1U);
        EXPECT_EQ(loaded.unread.front().what, what);
        EXPECT_EQ(loaded.unread.front().why, why);
        EXPECT_EQ(loaded.unread.front().leftOut, "The order is left out.");
        EXPECT_EQ(loaded.unread.front().order, order);
        damage("ROLLBACK TO before; RELEASE before;");
    }
};

TEST_F(UnreadRows, AShopThatActionsWroteHasNone) {
    readyToPress(2);
    EXPECT_TRUE(facts().unread.empty());
}

TEST_F(UnreadRows, AnOrderGoesAloneForWhateverOfItCannotBeRead) {
    receiveCleanTees(20);
    const OrderTaken bad = takeTees(2);
    const OrderTaken good = takeTees(1);
    const std::string name = text("SELECT name FROM customer LIMIT 1");
    const std::string what = "Order " + std::to_string(bad.number) + " of " + name;
    const std::string id = std::to_string(bad.id.value);
    const std::string ofIt = " WHERE id IN (SELECT id FROM garment WHERE order_id = " + id + " LIMIT 1)";
    loosenTypes();
    expectOneOrderLeftOut("UPDATE shop_order SET promised = replace(promised, 'T', 'U') WHERE id = " + id,
                          bad.id, what,
                          "Its promise reads “2026-11-" +
                              text("SELECT substr(promised, 9, 2) FROM shop_order LIMIT 1") + "U15:00”.");
    expectOneOrderLeftOut("UPDATE garment SET position = 'b'" + ofIt, bad.id, what,
                          "A garment’s place in the order of things reads “b”.");
    expectOneOrderLeftOut("UPDATE decal SET width_mm = 4611686018427387904 WHERE garment_id IN "
                          "(SELECT id FROM garment WHERE order_id = " +
                              id + " LIMIT 1)",
                          bad.id, what, "A decal’s width reads “4611686018427387904”.");
    EXPECT_NE(facts().orders.find(good.id), nullptr);
}

TEST_F(UnreadRows, HalfAnOrderIsNotWorkedOn) {
    receiveCleanTees(20);
    const OrderTaken bad = readyToPress(2);
    loosenTypes();
    damage("UPDATE decal SET placement = 'chesst' WHERE id = " + std::to_string(decalOf(bad).value));
    const std::string refused = "cannot be read, so nothing can be done with it. A decal’s placement reads "
                                "“chesst”.";
    expectRefused<Result<Done>>([&] { return cancelOrder(shop(), bad.id, "changed their mind"); }, "",
                                refused);
    expectRefused<Result<Done>>([&] { return markSpoiled(shop(), garmentOf(bad, 1), "scorched"); }, "",
                                refused);
}

TEST_F(UnreadRows, WhatNeedsALostStyleGoesWithIt) {
    receiveCleanTees(20);
    const OrderTaken order = takeTees(1);
    loosenTypes();
    damage("UPDATE style_fibre SET percent = 'most' WHERE fibre = 'cotton'");
    const ShopFacts loaded = facts();
    EXPECT_TRUE(loaded.styles.empty());
    EXPECT_TRUE(loaded.lots.empty());
    EXPECT_TRUE(loaded.orders.empty());
    const UnreadRow* fibre = unreadIn(loaded, "style_fibre");
    ASSERT_NE(fibre, nullptr);
    EXPECT_EQ(fibre->why, "A fibre of its label: the share reads “most”.");
    const UnreadRow* left = unreadIn(loaded, "shop_order");
    ASSERT_NE(left, nullptr);
    EXPECT_EQ(left->order, order.id);
    EXPECT_EQ(left->why, "The style of a garment cannot be read.");
}

TEST_F(UnreadRows, ASettingFallsBackAndIsNamed) {
    damage("INSERT INTO setting (name, value) VALUES ('margin-percent', 'ninety')");
    const ShopFacts loaded = facts();
    EXPECT_EQ(loaded.settings.marginPercent, ShopSettings{}.marginPercent);
    ASSERT_EQ(loaded.unread.size(), 1U);
    EXPECT_EQ(loaded.unread.front().what, "The setting “margin”");
    EXPECT_EQ(loaded.unread.front().why, "Its value reads “ninety”.");
    EXPECT_EQ(loaded.unread.front().leftOut, "The usual value is used.");
    damage("UPDATE setting SET value = '100'"); // a price would be divided by nothing
    EXPECT_EQ(facts().settings.marginPercent, ShopSettings{}.marginPercent);
}

TEST_F(UnreadRows, AMoveThatNoSumCanBeMadeWithIsNamed) {
    const BlankLotId lot = receiveTees(7);
    loosenTypes();
    damage("UPDATE roll_move SET mm = 4611686018427387904 WHERE roll_id = " + std::to_string(m_roll.value));
    damage("INSERT INTO lot_move (id, lot_id, at, units, reason) VALUES (9, " + std::to_string(lot.value) +
           ", 0, 9223372036854775807, ''), (10, " + std::to_string(lot.value) +
           ", 0, 9223372036854775807, '')");
    const ShopFacts loaded = facts();
    EXPECT_EQ(loaded.lots.at(lot).unitsLeft, 7);
    EXPECT_EQ(loaded.rolls.at(m_roll).left, Millimetres{0});
    const UnreadRow* move = unreadIn(loaded, "lot_move");
    ASSERT_NE(move, nullptr);
    EXPECT_EQ(move->leftOut, "The sums are made without it.");
    EXPECT_NE(unreadIn(loaded, "roll_move"), nullptr);
}

TEST_F(UnreadRows, TheOrderBookKeepsTheLineOfAnOrderThatCannotBeRead) {
    receiveCleanTees(20);
    const OrderTaken bad = takeTees(1);
    const OrderTaken good = takeTees(1);
    damage("UPDATE shop_order SET promised = 'soon' WHERE id = " + std::to_string(bad.id.value));
    const auto lines = findOrders(connection(), "", OrderFilter::All, 10);
    ASSERT_EQ(lines.size(), 2U);
    EXPECT_FALSE(lines.at(0).isUnread);
    EXPECT_EQ(lines.at(0).id, good.id);
    EXPECT_TRUE(lines.at(1).isUnread);
    EXPECT_EQ(lines.at(1).number, bad.number);
    EXPECT_EQ(lines.at(1).owed(), Money{});
    const OrderId leftOut[] = {bad.id};
    EXPECT_EQ(countAll(connection()).owedOnOpen, Money{2 * 2650});
    EXPECT_EQ(countAll(connection(), leftOut).owedOnOpen, Money{2650});
}

// Whatever stands in whichever column: the shop is read and reckoned, and what stands there changes nothing
// or is named.
TEST_F(UnreadRows, NoValueOfAnyColumnTakesAwayTheShop) {
    receiveCleanTees(20);
    readyToPress(2);
    takeTees(1);
    loosenTypes();
    const char* values[] = {"'zzz'", "4611686018427387904", "-7", "x'00ff'"};
    int tried = 0;
    for (const std::string& table : recordedTables(connection())) {
        Query columns = connection().query("SELECT name FROM pragma_table_info(?1)", table);
        std::vector<std::string> names;
        while (columns.step())
            names.push_back(columns.text(0));
        for (const std::string& column : names)
            for (const char* value : values) {
                SCOPED_TRACE(table + "." + column + " = " + value);
                damage("SAVEPOINT before");
                try {
                    damage("UPDATE OR IGNORE " + table + " SET " + column + " = " + value +
                           (table == "climate_reading" // has no rowid
                                ? ""
                                : " WHERE rowid = (SELECT MIN(rowid) FROM " + table + ")"));
                } catch (const SqliteFailure&) {
                    connection().allowWriting(false); // the key of a table takes numbers alone
                }
                EXPECT_NO_THROW({
                    const auto shop = reckoned();
                    (void)walkOf(*shop);
                    (void)findOrders(connection(), "", OrderFilter::All, 100);
                    (void)countAll(connection());
                    (void)loadFigures(connection(), localDate(2026, 1, 1), now());
                });
                damage("ROLLBACK TO before; RELEASE before;");
                ++tried;
            }
    }
    EXPECT_GT(tried, 500);
}

} // namespace
} // namespace holdfast::db
