// SPDX-License-Identifier: GPL-3.0-or-later
// What a person waits for in a large shop, beside the bare SQL for the same.

#include "core/shop/reckoned_shop.h"
#include "core/shop/walk.h"
#include "db/actions/film_actions.h"
#include "db/actions/order_actions.h"
#include "db/sqlite/transaction.h"
#include "db/tables/facts.h"
#include "db/tables/figures.h"
#include "db/tables/order_book.h"
#include "tests/bench/floor.h"
#include "tests/bench/large_shop.h"

#include <array>
#include <filesystem>
#include <numeric>
#include <string>

#include <unistd.h>

namespace holdfast::bench {
namespace {

constexpr int kPage = 200; // lines that the order book fetches at once

LargeShop& large() {
    static LargeShop shop;
    return shop;
}

// Every beginning of what is typed, letter by letter.
std::vector<std::string> keystrokes() {
    std::vector<std::string> typed;
    for (const std::string_view words : {"heron", "tamta whit", "samphire dusk", "19876", "07700 912",
                                         "zip hoodie ink", "gorse bib market", "nothing of the kind"})
        for (std::size_t length = 1; length <= words.size(); ++length)
            typed.emplace_back(words.substr(0, length));
    return typed;
}

std::size_t stepAll(db::Query rows) {
    std::size_t count = 0;
    while (rows.step())
        count += static_cast<std::size_t>(rows.integer(0) & 1) + 1;
    return count;
}

// Floor: the same page by one prepared statement.
void openTheBook(benchmark::State& state) {
    db::Connection& shop = large().shop().connection();
    db::Connection& bare = large().bare();
    runBesideFloor(
        state,
        [&] {
            benchmark::DoNotOptimize(db::findOrders(shop, "", db::OrderFilter::All, kPage));
            benchmark::DoNotOptimize(db::countAll(shop));
        },
        [&] {
            benchmark::DoNotOptimize(
                stepAll(bare.query("SELECT id, number, customer, state, promised, garments, "
                                   "total_minor, paid_minor FROM order_card "
                                   "ORDER BY id DESC LIMIT ?1",
                                   kPage)));
        });
}
BENCHMARK(openTheBook)->Name("Order book opened, 20,000 orders")->UseManualTime()->Iterations(300);

// Floor: the rows that match, as the full-text index alone finds them.
void keystroke(benchmark::State& state) {
    db::Connection& shop = large().shop().connection();
    db::Connection& bare = large().bare();
    const std::vector<std::string> typed = keystrokes();
    std::size_t at = 0;
    runBesideFloor(
        state,
        [&] {
            const std::string& search = typed[at % typed.size()];
            benchmark::DoNotOptimize(db::findOrders(shop, search, db::OrderFilter::All, kPage));
            benchmark::DoNotOptimize(db::countOrders(shop, search, db::OrderFilter::All));
        },
        [&] {
            std::string match;
            std::string_view left = typed[at++ % typed.size()];
            while (!left.empty()) {
                const std::size_t end = std::min(left.find(' '), left.size());
                if (end > 0)
                    match += "\"" + std::string(left.substr(0, end)) + "\"* ";
                left.remove_prefix(std::min(end + 1, left.size()));
            }
            benchmark::DoNotOptimize(
                bare.number("SELECT COUNT(*) FROM order_text WHERE order_text MATCH ?1", match));
        });
}
BENCHMARK(keystroke)->Name("Search in the order book, each keystroke")->UseManualTime()->Iterations(900);

// Floor: the garments that were handed over, counted.
void readFigures(benchmark::State& state) {
    db::Connection& shop = large().shop().connection();
    db::Connection& bare = large().bare();
    const Now now{large().shop().now()};
    runBesideFloor(
        state, [&] { benchmark::DoNotOptimize(db::loadFigures(shop, db::firstDay(shop, now), now)); },
        [&] {
            benchmark::DoNotOptimize(
                bare.number("SELECT COUNT(handed_over_at) FROM garment WHERE handed_over_at > 0"));
        });
}
BENCHMARK(readFigures)
    ->Name("Figures read and calculated in the background")
    ->UseManualTime()
    ->Iterations(10);

// Floor: the same row by bare SQL in a transaction of its own.
void actBesideBareSql(benchmark::State& state) {
    db::Shop& shop = large().shop();
    db::Connection& bare = large().bare();
    const OrderId order{shop.connection().number("SELECT MAX(id) FROM shop_order")};
    static std::int64_t move = 9'000'000'000;
    runBesideFloor(
        state,
        [&] {
            if (!db::moveMoney(shop, order, MoneyKind::Payment, Money{1}, PaidHow::Cash).ok())
                state.SkipWithError("the payment is refused");
        },
        [&] {
            db::Transaction transaction{bare};
            bare.run("INSERT INTO money_move VALUES (?1, ?2, ?3, 1, 'payment', 'cash')", ++move, order,
                     shop.now());
            transaction.commit();
        });
}

void oneAction(benchmark::State& state) {
    actBesideBareSql(state);
}
BENCHMARK(oneAction)->Name("One action with its journal entry (a payment)")->UseManualTime()->Iterations(300);

// The same with no wait for the disk, which takes most of the time of both and differs from one to the next.
void oneActionBesideTheDisk(benchmark::State& state) {
    for (db::Connection* each : {&large().shop().connection(), &large().bare()})
        each->script("PRAGMA synchronous = OFF");
    actBesideBareSql(state);
    for (db::Connection* each : {&large().shop().connection(), &large().bare()})
        each->script("PRAGMA synchronous = FULL");
}
BENCHMARK(oneActionBesideTheDisk)
    ->Name("The same action, waiting for no disk")
    ->UseManualTime()
    ->Iterations(1000);

// Floor: the open garments, decals and steps by bare SQL, and nothing reckoned from them.
void reckonOpenShop(benchmark::State& state) {
    db::Shop& shop = large().shop();
    db::Connection& bare = large().bare();
    const ClimateHistory climate = db::loadClimate(shop.connection());
    const RecentUse use = db::loadRecentUse(shop.connection(), shop.now());
    ClimateReckoner reckoner;
    runBesideFloor(
        state,
        [&] {
            benchmark::DoNotOptimize(
                reckonShop(db::loadOpenFacts(shop.connection()), climate, use, reckoner, largeShopNow()));
        },
        [&] {
            for (const char* sql :
                 {"SELECT garment.* FROM shop_order CROSS JOIN garment ON order_id = shop_order.id "
                  "WHERE state IN ('quoted', 'confirmed')",
                  "SELECT decal.* FROM shop_order CROSS JOIN garment ON order_id = shop_order.id "
                  "CROSS JOIN decal ON garment_id = garment.id WHERE state IN ('quoted', 'confirmed')",
                  "SELECT press_step.* FROM shop_order CROSS JOIN garment ON order_id = shop_order.id "
                  "CROSS JOIN press_step ON garment_id = garment.id WHERE state IN ('quoted', 'confirmed')",
                  "SELECT * FROM lot_units", "SELECT * FROM roll_length"})
                benchmark::DoNotOptimize(stepAll(bare.query(sql)));
        });
}
BENCHMARK(reckonOpenShop)
    ->Name("Open shop loaded and calculated, 300 garments")
    ->UseManualTime()
    ->Iterations(40);

// Floor: the times of the day in one given order.
void walkOfTheDay(benchmark::State& state) {
    db::Shop& shop = large().shop();
    ClimateReckoner reckoner;
    const auto reckoned =
        reckonShop(db::loadOpenFacts(shop.connection()), db::loadClimate(shop.connection()),
                   db::loadRecentUse(shop.connection(), shop.now()), reckoner, largeShopNow());
    const PlanRequest request = planRequest(reckoned->facts, reckoned->assessments, largeShopNow());
    std::vector<std::size_t> order(request.jobs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    if (order.size() != kReadyOrders * kGarmentsEach)
        state.SkipWithError("the walk has not 120 garments");
    runBesideFloor(
        state,
        [&] {
            benchmark::DoNotOptimize(planDay(request));
            benchmark::DoNotOptimize(walkOf(*reckoned));
        },
        [&] { benchmark::DoNotOptimize(planInOrder(request, order)); });
}
BENCHMARK(walkOfTheDay)
    ->Name("Press walk planned and laid out, 120 garments")
    ->UseManualTime()
    ->Iterations(30);

// A logger's file of a million readings taken over into a shop file with its journal entry, and the same rows
// by bare SQL in one transaction. Each time into a new file.
void importOfAMillion(benchmark::State& state) {
    constexpr std::size_t kReadings = 1'000'000;
    const auto folder =
        std::filesystem::temp_directory_path() / ("holdfast-import-" + std::to_string(getpid()));
    std::filesystem::create_directories(folder);
    const Instant now = largeShopNow().instant;
    std::vector<ClimateReading> readings;
    for (std::size_t at = 0; at < kReadings; ++at)
        readings.push_back({now - std::chrono::minutes{2} * static_cast<std::int64_t>(kReadings - at),
                            Celsius{19 + 0.001 * static_cast<double>(at % 3'000)},
                            Humidity{40 + 0.01 * static_cast<double>(at % 1'000)}});
    int turn = 0;
    const auto newShop = [&] {
        return db::Shop::create(folder / (std::to_string(++turn) + ".holdfast"), [now] { return now; });
    };
    for (auto _ : state) {
        auto ours = newShop();
        auto bare = newShop();
        if (!ours.ok() || !bare.ok()) {
            state.SkipWithError("no shop file can be made");
            break;
        }
        const auto place = db::addPlace(**ours, "Shelf");
        const auto other = db::addPlace(**bare, "Shelf");
        const double took = secondsOf([&] {
            if (!db::importReadings(**ours, *place, readings, [](double) { return true; }).ok())
                state.SkipWithError("the readings are refused");
        });
        const double least = secondsOf([&] {
            db::Connection connection = db::Connection::open((*bare)->path(), db::Access::ReadWrite);
            db::Transaction transaction{connection};
            db::Query insert = connection.query("INSERT INTO climate_reading VALUES (?1, ?2, ?3, ?4)");
            insert.bind(1, *other);
            for (const ClimateReading& reading : readings) {
                insert.bind(2, reading.at).bind(3, reading.temperature).bind(4, reading.humidity);
                insert.run();
            }
            transaction.commit();
        });
        state.SetIterationTime(took);
        state.counters["ms"] = took * 1e3;
        state.counters["p95_ms"] = took * 1e3;
        state.counters["floor_ms"] = least * 1e3;
        state.counters["times_floor"] = took / least;
    }
    std::filesystem::remove_all(folder);
}
BENCHMARK(importOfAMillion)->Name("1,000,000 readings imported")->UseManualTime()->Iterations(1);

} // namespace
} // namespace holdfast::bench
