// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The small shop as the workshop's copy, in memory, and copies of it for other laptops in a folder of their
// own.

#include "db/check/check.h"
#include "db/exchange/exchange.h"
#include "db/journal/backup.h"
#include "tests/db/journal_fixture.h"
#include "tests/db/small_shop.h"

#include <sys/xattr.h>

#include <deque>
#include <memory>
#include <string>
#include <utility>

namespace holdfast::db {

class Laptops : public SmallShop {
protected:
    struct Laptop {
        SeatNumber number = kWorkshopSeat;
        std::unique_ptr<Shop> opened;
        Shop* shop = nullptr;
        Seconds clockAhead{0};
    };

    // Beside the workshop's, whose clock it has unless it is set ahead or behind.
    Laptop& aLaptop(const std::string& name = "Fair laptop", Seconds clockAhead = Seconds{0}) {
        const auto path = m_folder / (std::to_string(++m_files) + ".holdfast");
        const auto seat = makeCopyForLaptop(shop(), path, name);
        if (!seat)
            throw std::runtime_error(seat.error().message.english());
        Laptop& laptop = m_laptops.emplace_back();
        laptop.number = seat->number;
        laptop.clockAhead = clockAhead;
        laptop.opened = opened(path, clockAhead);
        laptop.shop = laptop.opened.get();
        return laptop;
    }

    std::unique_ptr<Shop> opened(const std::filesystem::path& path, Seconds clockAhead = Seconds{0}) {
        auto shop = Shop::open(path, [this, clockAhead] { return now().instant + clockAhead; });
        if (!shop)
            throw std::runtime_error(shop.error().message.english());
        return std::move(shop).value();
    }

    std::filesystem::path copyOf(Shop& of) {
        const auto path = m_folder / (std::to_string(++m_files) + ".copy");
        if (const auto made = backup(of, path); !made)
            throw std::runtime_error(made.error().message.english());
        return path;
    }

    // As if nobody could tell that it is a copy: as on a disk that was put back whole.
    void hideThatItIsACopy(const std::filesystem::path& path) {
        const auto come = [&] {
            Connection copy = Connection::open(path, Access::ReadOnly);
            return std::pair{copy.number("SELECT incarnation FROM seat_here"),
                             copy.number("SELECT last_id FROM seat_here")};
        }();
        opened(path).reset();
        Connection copy = Connection::open(path, Access::ReadWrite);
        copy.run("UPDATE seat_here SET incarnation = ?1, last_id = ?2", come.first, come.second);
        (void)::removexattr(path.c_str(), "user.holdfast.last");
    }

    std::filesystem::path newFileName() { return m_folder / (std::to_string(++m_files) + ".news"); }

    std::filesystem::path newsFrom(Shop& from, SeatNumber to = kWorkshopSeat) {
        const auto path = newFileName();
        const auto written = writeNews(from, path, to);
        if (!written)
            throw std::runtime_error(written.error().message.english());
        return path;
    }

    NewsTakenIn takenIn(Shop& into, const std::filesystem::path& path) {
        auto taken = takeInNews(into, path);
        if (!taken)
            throw std::runtime_error(taken.error().message.english());
        return std::move(taken).value();
    }

    NewsTakenIn bring(Laptop& laptop) { return takenIn(shop(), newsFrom(*laptop.shop)); }
    NewsTakenIn fetch(Laptop& laptop) { return takenIn(*laptop.shop, newsFrom(shop(), laptop.number)); }
    // Both ways, until both have all.
    void exchange(Laptop& laptop) {
        bring(laptop);
        fetch(laptop);
    }

    // Every row of every recorded table and of the order book's cards, as text.
    static Dump dumpOf(Shop& shop) {
        Dump dumped;
        Query tables = shop.connection().query("SELECT name FROM pragma_table_list WHERE schema = 'main' AND "
                                               "type = 'table' AND name NOT LIKE 'sqlite%' "
                                               "AND name NOT LIKE 'journal%' AND name NOT LIKE 'seat%'");
        while (tables.step()) {
            std::string sql = "SELECT ''";
            Query columns = shop.connection().query("SELECT name FROM pragma_table_info(?1) ORDER BY cid",
                                                    tables.text(0));
            while (columns.step())
                sql += " || '" + columns.text(0) + "=' || quote(\"" + columns.text(0) + "\") || ' '";
            Query rows = shop.connection().query(sql + " FROM \"" + tables.text(0) + "\" ORDER BY 1");
            while (rows.step())
                dumped[tables.text(0)].push_back(rows.text(0));
        }
        return dumped;
    }

    // The history as a person reads it, which is the same on both.
    static std::vector<std::string> historyOf(Shop& shop) {
        std::vector<std::string> lines;
        for (const HistoryEntry& entry : shop.recent(100'000))
            lines.push_back(std::to_string(entry.id.value) + " " + entry.seat + ": " + entry.title.english() +
                            (entry.isUndone() ? " (undone)" : ""));
        return lines;
    }

    void expectSame(Shop& one, Shop& other) {
        const Dump left = dumpOf(one);
        const Dump right = dumpOf(other);
        for (const auto& [table, rows] : left)
            EXPECT_EQ(rows, right.contains(table) ? right.at(table) : std::vector<std::string>{}) << table;
        EXPECT_EQ(left.size(), right.size());
        EXPECT_EQ(historyOf(one), historyOf(other));
    }

    static void expectWhole(Shop& shop) {
        const auto findings = checkShop(shop);
        ASSERT_TRUE(findings.ok());
        EXPECT_EQ(*findings, std::vector<Sentence>{});
    }

    OrderTaken taken(Shop& on, const OrderDraft& draft) {
        const auto order = takeOrder(on, draft, now());
        if (!order)
            throw std::runtime_error(order.error().message.english());
        return *order;
    }

    static std::string textOf(Connection& connection, std::string_view sql) {
        Query row = connection.query(sql);
        return row.step() ? row.text(0) : std::string{};
    }
    static std::string textOf(Shop& shop, std::string_view sql) { return textOf(shop.connection(), sql); }
    static std::int64_t numberOf(Shop& shop, std::string_view sql) { return shop.connection().number(sql); }

    testing::TemporaryFolder m_folder;

private:
    std::deque<Laptop> m_laptops;
    int m_files = 0;
};

} // namespace holdfast::db
