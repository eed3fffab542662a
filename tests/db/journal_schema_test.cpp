// SPDX-License-Identifier: GPL-3.0-or-later
// What sessions ask of the tables of the trade, and that the shipped schema keeps to it.
#include "db/check/check.h"
#include "tests/db/journal_fixture.h"

namespace holdfast::db {
namespace {

using namespace testing;

std::vector<std::string> namesFrom(Connection& connection, std::string_view sql) {
    std::vector<std::string> names;
    Query rows = connection.query(sql);
    while (rows.step())
        names.push_back(rows.text(0));
    return names;
}

struct ShippedSchema : ::testing::Test {
    std::unique_ptr<Shop> shop = Shop::createInMemory(standingClock());
    Connection& connection = shop->connection();
    const std::vector<std::string> kNone;
};

TEST_F(ShippedSchema, ANewShopIsWhole) {
    const auto findings = checkShop(*shop);
    ASSERT_TRUE(findings) << wordsOf(findings);
    EXPECT_EQ(*findings, std::vector<Sentence>{});
}

TEST_F(ShippedSchema, EveryTableIsStrictAndHasAPrimaryKey) {
    EXPECT_EQ(namesFrom(connection,
                        "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' "
                        "AND name NOT LIKE 'sqlite_%' AND strict = 0"),
              kNone);
    EXPECT_EQ(namesFrom(connection,
                        "SELECT name FROM pragma_table_list AS t WHERE schema = 'main' AND type = 'table' "
                        "AND name NOT LIKE 'sqlite_%' "
                        "AND NOT EXISTS (SELECT 1 FROM pragma_table_info(t.name) WHERE pk > 0)"),
              kNone);
}

TEST_F(ShippedSchema, NoKeyMayBeNull) {
    // The session passes over rows with a NULL in their key. A rowid table lets one in unless it says NOT
    // NULL.
    EXPECT_EQ(namesFrom(connection,
                        "SELECT t.name || '.' || c.name FROM pragma_table_list AS t, "
                        "pragma_table_info(t.name) AS c WHERE t.schema = 'main' AND t.type = 'table' "
                        "AND t.name NOT LIKE 'sqlite_%' AND c.pk > 0 AND c.\"notnull\" = 0 AND t.wr = 0 "
                        "AND NOT (c.type = 'INTEGER' AND (SELECT COUNT(*) FROM pragma_table_info(t.name) "
                        "WHERE pk > 0) = 1)"),
              kNone);
}

TEST_F(ShippedSchema, NoColumnIsGeneratedAndNothingCascades) {
    EXPECT_EQ(namesFrom(connection,
                        "SELECT t.name || '.' || c.name FROM pragma_table_list AS t, "
                        "pragma_table_xinfo(t.name) AS c WHERE t.schema = 'main' AND t.type = 'table' "
                        "AND c.hidden IN (2, 3)"),
              kNone);
    EXPECT_EQ(namesFrom(connection, "SELECT t.name || '.' || f.\"from\" FROM pragma_table_list AS t, "
                                    "pragma_foreign_key_list(t.name) AS f WHERE t.schema = 'main' "
                                    "AND (f.on_delete <> 'NO ACTION' OR f.on_update <> 'NO ACTION')"),
              kNone);
}

TEST_F(ShippedSchema, TheJournalAndTheSeatAreNotRecorded) {
    ASSERT_TRUE(shop->act([](Writer& writer) -> Result<Done> {
        writer.connection().run("UPDATE seat SET name = 'Stall'");
        writer.connection().run("INSERT INTO setting (name, value) VALUES ('test', 'x')");
        writer.describe(said("Changed a setting"));
        return Done{};
    }));
    EXPECT_EQ(shop->recent(1)[0].seat, "Stall");
    ASSERT_TRUE(shop->undo(lastEntry(*shop)));
    EXPECT_EQ(shop->recent(1)[0].seat, "Stall") << "taking back the setting leaves the seat";
    EXPECT_EQ(connection.number("SELECT COUNT(*) FROM setting WHERE name = 'test'"), 0);
}

TEST_F(ShippedSchema, TakingBackAnOrderTakesItOutOfTheSearchAndBack) {
    const auto taken = shop->act([](Writer& writer) -> Result<OrderId> {
        Connection& file = writer.connection();
        const auto customer = writer.newId<CustomerId>();
        const auto order = writer.newId<OrderId>();
        const auto number = writer.nextOrderNumber();
        file.run("INSERT INTO customer (id, name) VALUES (?1, 'Somebody')", customer);
        file.run(
            "INSERT INTO shop_order (id, number, customer_id, state, taken_at, taken_at_place, promised) "
            "VALUES (?1, ?2, ?3, 'confirmed', ?4, 'Harbour fair', '2026-11-26T15:00')",
            order, number, customer, writer.now());
        file.run("INSERT INTO money_move (id, order_id, at, minor, kind, how) VALUES (?1, ?2, ?3, 500, "
                 "'deposit', 'cash')",
                 writer.newId<OrderId>(), order, writer.now());
        writer.describe(asItIs("Took order " + std::to_string(number)));
        writer.concerns(order);
        return order;
    });
    ASSERT_TRUE(taken) << wordsOf(taken);
    const auto search = [&] {
        return connection.number(
            "SELECT COUNT(*) FROM order_text JOIN order_card ON order_card.id = order_text.rowid "
            "WHERE order_text MATCH 'harbour' AND paid_minor = 500");
    };
    EXPECT_EQ(search(), 1);
    const auto back = shop->undo(lastEntry(*shop));
    ASSERT_TRUE(back) << wordsOf(back);
    EXPECT_EQ(search(), 0);
    EXPECT_EQ(connection.number("SELECT COUNT(*) FROM order_card"), 0);
    ASSERT_TRUE(shop->undo(*back));
    EXPECT_EQ(search(), 1);
    EXPECT_EQ(*checkShop(*shop), std::vector<Sentence>{});
}

} // namespace
} // namespace holdfast::db
