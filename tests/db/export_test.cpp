// SPDX-License-Identifier: GPL-3.0-or-later
// The shop as comma-separated values: what stands in which file, and what sqlite3's own reader makes of it.
#include "core/csv/csv.h"
#include "db/actions/order_file_actions.h"
#include "db/csv/export_shop.h"
#include "db/csv/export_tables.h"
#include "db/demo/demo_shop.h"
#include "tests/db/journal_fixture.h"
#include "tests/db/small_shop.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <fstream>
#include <sys/stat.h>

namespace holdfast::db {
namespace {

std::vector<CsvRecord> recordsIn(const std::filesystem::path& path) {
    const std::string text = testing::bytesOf(path);
    CsvReader reader{text};
    std::vector<CsvRecord> records;
    for (;;) {
        auto record = reader.next();
        if (!record) {
            ADD_FAILURE() << record.error().message.english();
            return records;
        }
        if (!*record)
            return records;
        records.push_back(std::move(**record));
    }
}

class Export : public SmallShop {
protected:
    Result<Exported> exported(const std::filesystem::path& folder) {
        return exportShop(shop(), folder, [](Instant) { return Hours{1}; });
    }

    testing::TemporaryFolder m_folder;
};

TEST_F(Export, WritesAFileForEachThingOfTheTradeReadableByItsOwnerOnly) {
    const auto folder = m_folder / "out";
    const auto done = exported(folder);
    ASSERT_TRUE(done.ok()) << done.error().message.english();
    EXPECT_EQ(done->files, static_cast<std::int64_t>(exportTables().size()));
    struct stat found{};
    ASSERT_EQ(stat(folder.c_str(), &found), 0);
    EXPECT_EQ(found.st_mode & 0777U, 0700U);
    for (const ExportTable& table : exportTables()) {
        ASSERT_EQ(stat((folder / table.file).c_str(), &found), 0) << table.file;
        EXPECT_EQ(found.st_mode & 0777U, 0600U) << table.file;
        const auto records = recordsIn(folder / table.file);
        ASSERT_FALSE(records.empty()) << table.file;
        for (const CsvRecord& record : records)
            EXPECT_EQ(record.fields.size(), table.columns.size()) << table.file << " line " << record.line;
    }
}

TEST_F(Export, SaysTimesInLocalTimeAndMoneyInTheCurrency) {
    auto draft = aDraft(2);
    draft.customerName = "=HYPERLINK(\"x\")";
    draft.customerPhone = "+44 7700 900281";
    draft.note = "gift, \"quick\"\nplease";
    draft.deposit = {1050};
    take(draft);
    ASSERT_TRUE(recordReading(shop(), m_place, {now().instant, {21.5}, {44}}).ok());
    ASSERT_TRUE(exported(m_folder / "out").ok());

    const std::string orders = testing::bytesOf(m_folder / "out/orders.csv");
    EXPECT_EQ(orders,
              "Order,Customer,Telephone,State,Taken,Taken at,Promised,Handed over,Garments,Price (GBP),"
              "Paid (GBP),Note,Tax,Tax rate (%),Taxed by,Tax rounded,Valid until\r\n"
              "1,\"'=HYPERLINK(\"\"x\"\")\",'+44 7700 900281,confirmed,2026-11-11 09:30,workshop,"
              "2026-11-14 15:00,,2,53.00,10.50,\"gift, \"\"quick\"\"\nplease\",none,0.0,total,half-up,\r\n");
    const auto garments = recordsIn(m_folder / "out/garments.csv");
    ASSERT_EQ(garments.size(), 3U);
    EXPECT_EQ(garments[2].fields[0], "1-b");
    EXPECT_EQ(recordsIn(m_folder / "out/readings.csv")[1].fields,
              (std::vector<std::string>{"Front shelf", "2026-11-11T09:30:00+01:00", "21.5", "44.0"}));
    EXPECT_EQ(recordsIn(m_folder / "out/rolls.csv")[1].fields[0], "R-01");
    const auto styles = recordsIn(m_folder / "out/blank-styles.csv");
    EXPECT_EQ(styles[1].fields[4], "S | M | L");
    EXPECT_EQ(styles[1].fields[5], "Moss #6B7F5A | Ink #20304F");
    EXPECT_EQ(styles[1].fields[13], "80 cotton | 20 polyester");
}

TEST_F(Export, ANameThatIsTakenIsRefusedAndNothingIsWritten) {
    const auto folder = m_folder / "out";
    std::filesystem::create_directory(folder);
    testing::writeBytes(folder / "rolls.csv", "mine");
    EXPECT_FALSE(exported(folder).ok());
    EXPECT_EQ(std::distance(std::filesystem::directory_iterator{folder}, {}), 1);
    EXPECT_EQ(testing::bytesOf(folder / "rolls.csv"), "mine");
    EXPECT_FALSE(exported(m_folder / "no/such").ok());
}

TEST_F(Export, StoppedItLeavesNothing) {
    std::vector<ClimateReading> readings;
    for (int count = 0; count < 5000; ++count)
        readings.push_back({now().instant - Minutes{count}, {21.0}, {40.0}});
    ASSERT_TRUE(importReadings(shop(), m_place, readings).ok());
    const auto folder = m_folder / "out";
    EXPECT_FALSE(
        exportShop(shop(), folder, [](Instant) { return Hours{0}; }, [](double) { return false; }).ok());
    EXPECT_FALSE(std::filesystem::exists(folder)) << "it was made for nothing";
}

TEST_F(Export, WhereOneFileCannotBeGivenItsNameNoneAppears) {
    const auto folder = m_folder / "out";
    const auto theirs = folder / "rolls.csv"; // somebody puts it there meanwhile
    const auto refused = exportShop(shop(), folder, [&](Instant) {
        testing::writeBytes(theirs, "theirs");
        return Hours{0};
    });
    ASSERT_FALSE(refused.ok());
    EXPECT_NE(refused.error().message.english().find("already"), std::string::npos)
        << refused.error().message.english();
    std::vector<std::string> names;
    for (const auto& each : std::filesystem::directory_iterator{folder})
        names.push_back(each.path().filename().string());
    EXPECT_EQ(names, std::vector<std::string>{"rolls.csv"});
    EXPECT_EQ(testing::bytesOf(theirs), "theirs");
}

// The outside check: sqlite3 reads each file of the demo with its own CSV reader, and counts and sums what
// the shop holds.
TEST(ExportedDemo, IsReadBySqlitesOwnReaderAsTheShopHasIt) {
    if (std::system("command -v sqlite3 > /dev/null") != 0)
        GTEST_SKIP() << "there is no sqlite3 here; tests/run.sh installs it";
    testing::TemporaryFolder folder;
    const auto path = folder / "demo.holdfast";
    {
        const auto made = makeDemoShop(path, localDate(2026, 11, 25));
        ASSERT_TRUE(made.ok());
    }
    auto shop = Shop::open(path, testing::standingClock());
    ASSERT_TRUE(shop.ok());
    ASSERT_TRUE(exportShop(**shop, folder / "out", [](Instant) { return Hours{1}; }).ok());
    const auto asked = [&](const std::string& file, const std::string& sql) {
        const auto out = folder / "answer";
        const std::string command = "sqlite3 :memory: -cmd '.mode csv' -cmd '.import \"" +
                                    (folder / "out" / file).string() + "\" t' \"" + sql + "\" > '" +
                                    out.string() + "'";
        EXPECT_EQ(std::system(command.c_str()), 0) << command;
        std::ifstream answer{out};
        std::string line;
        std::getline(answer, line);
        while (!line.empty() && (line.back() == '\r' || line.back() == '\n'))
            line.pop_back();
        return line;
    };
    const auto has = [&](const std::string& sql) {
        return std::to_string((*shop)->connection().number(sql));
    };
    EXPECT_EQ(asked("customers.csv", "SELECT COUNT(*) FROM t"), has("SELECT COUNT(*) FROM customer"));
    EXPECT_EQ(asked("orders.csv", "SELECT COUNT(*) FROM t"), has("SELECT COUNT(*) FROM shop_order"));
    EXPECT_EQ(asked("decals.csv", "SELECT COUNT(*) FROM t"), has("SELECT COUNT(*) FROM decal"));
    EXPECT_EQ(asked("readings.csv", "SELECT COUNT(*) FROM t"), has("SELECT COUNT(*) FROM climate_reading"));
    EXPECT_EQ(asked("history.csv", "SELECT COUNT(*) FROM t"), has("SELECT COUNT(*) FROM journal_entry"));
    EXPECT_EQ(asked("roll-moves.csv", "SELECT CAST(SUM([Length (mm)]) AS INTEGER) FROM t"),
              has("SELECT SUM(mm) FROM roll_move"));
    EXPECT_EQ(asked("money.csv", "SELECT CAST(ROUND(SUM([Amount (GBP)]) * 100) AS INTEGER) FROM t"),
              has("SELECT SUM(minor) FROM money_move"));
    EXPECT_EQ(asked("films.csv", "SELECT COUNT(*) FROM t WHERE Peel = 'warm'"),
              has("SELECT COUNT(*) FROM film WHERE peel = 'warm' AND recipe_c IS NOT NULL"));
}

using Rows = std::vector<std::vector<std::string>>;

Rows rowsOf(const std::filesystem::path& path) {
    Rows rows;
    for (const CsvRecord& record : recordsIn(path))
        rows.push_back(record.fields);
    return rows;
}

TEST_F(Export, ReferencesColumnsAndItemsAsTheyWereNamedLast) {
    const OrderTaken like = takeTees();
    OrderFileRead file;
    file.naming = {
        "Web shop",
        {"Order", "Name", "Item"},
        {{OrderColumn::Reference, "Order"}, {OrderColumn::Customer, "Name"}, {OrderColumn::Item, "Item"}},
        {{"Heron tee", garmentOf(like)}}};
    file.orders.push_back({"W-1", {}, aDraft(), {}});
    ASSERT_TRUE(takeOrdersOfFile(shop(), file, now()).ok());
    file.naming.shop = "Market"; // the same headings named again
    file.orders.front().reference = "M-1";
    ASSERT_TRUE(takeOrdersOfFile(shop(), file, now()).ok());
    ASSERT_TRUE(exported(m_folder / "out").ok());
    EXPECT_EQ(rowsOf(m_folder / "out/order-references.csv"),
              (Rows{{"Order", "Web shop", "Reference"},
                    {std::to_string(like.number + 1), "Web shop", "W-1"},
                    {std::to_string(like.number + 2), "Market", "M-1"}}));
    const Rows columns = rowsOf(m_folder / "out/order-file-columns.csv");
    ASSERT_EQ(columns.size(), 4U) << "the older naming does not count";
    EXPECT_EQ(columns[1][0], "Market");
    EXPECT_EQ(columns[1][3], "Order");
    const Rows items = rowsOf(m_folder / "out/order-file-items.csv");
    ASSERT_EQ(items.size(), 2U);
    EXPECT_EQ(items[1][2], "Heron tee");
    EXPECT_EQ(items[1][3].find(std::to_string(like.number)), 0U) << items[1][3];
}

} // namespace
} // namespace holdfast::db
