// SPDX-License-Identifier: GPL-3.0-or-later
// What a shop of many years asks of the processor and of memory: the figures of each span, a key typed into
// the search, undoing, the history, a backup, and a million readings that are imported and undone. Times are
// the processor's, so that waiting for the disk and for other programs is not in them; on a machine with
// other work they are up to a third longer.
//
//     scale_bench [ORDERS [ENTRIES]]     without: 20,000 orders; and of a busy shop 67,000 with 500,000
//     entries

#include "db/actions/film_actions.h"
#include "db/actions/order_actions.h"
#include "db/journal/backup.h"
#include "db/tables/customer_page.h"
#include "db/tables/facts.h"
#include "db/tables/figures.h"
#include "db/tables/order_book.h"
#include "tests/bench/large_shop.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <string>

#include <unistd.h>

namespace holdfast::bench {
namespace {

constexpr int kTimes = 200; // each small thing is done

double processorMilliseconds() {
    timespec time{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) / 1e6;
}

template <class Work>
double millisecondsOf(Work&& work) {
    const double before = processorMilliseconds();
    work();
    return processorMilliseconds() - before;
}

// In MB, of this program.
double memory(const char* which) {
    std::ifstream status("/proc/self/status");
    for (std::string line; std::getline(status, line);)
        if (line.starts_with(which))
            return std::stod(line.substr(line.find(':') + 1)) / 1024.0;
    return 0;
}

void forgetPeak() {
    std::ofstream("/proc/self/clear_refs") << "5";
}

double megabytesOf(const std::filesystem::path& path) {
    std::error_code none;
    const auto bytes = std::filesystem::file_size(path, none);
    return none ? 0 : static_cast<double>(bytes) / 1048576.0;
}

void say(const std::string& what, std::vector<double> milliseconds) {
    std::ranges::sort(milliseconds);
    std::printf("%s: median %.2f ms, 95 of 100 within %.2f ms\n", what.c_str(),
                milliseconds[milliseconds.size() / 2], milliseconds[milliseconds.size() * 95 / 100]);
    std::fflush(stdout);
}

class Scale {
public:
    explicit Scale(const std::filesystem::path& folder)
        : m_folder(folder)
        , m_path(folder / "large.holdfast") {}

    void measure(int orders, std::int64_t entries) {
        makeLargeShop(m_path, orders);
        const std::int64_t written = writeHistory(m_path, entries);
        std::printf("%d orders, %d garments, %lld entries, %.0f MB\n", orders, orders * kGarmentsEach,
                    static_cast<long long>(written), megabytesOf(m_path));
        figuresOfEachSpan();
        open();
        openShop();
        search();
        searchAround();
        customerOfManyOrders();
        undo();
        history();
        backUp();
        millionReadings();
        m_shop.reset();
    }

private:
    void open() {
        auto opened = db::Shop::open(m_path, [] { return largeShopNow().instant; });
        if (!opened.ok())
            throw std::runtime_error(opened.error().message.english());
        m_shop = std::move(opened).value();
    }

    // As the window does it: by a connection of its own, each time a new one.
    void figuresOfEachSpan() {
        for (const int days : {90, 365, 0}) {
            double begins = 0, peak = 0;
            std::size_t counted = 0;
            forgetPeak();
            const double took = millisecondsOf([&] {
                auto shop = db::Shop::openReadOnly(m_path, [] { return largeShopNow().instant; });
                db::Connection& connection = (*shop)->connection();
                begins = memory("VmRSS");
                const Now now = largeShopNow();
                const LocalDate first = db::firstDay(connection, now);
                const ShopFigures figures = db::loadFigures(
                    connection, days > 0 ? std::max(first, now.today() - Days{days}) : first, now);
                counted = static_cast<std::size_t>(figures.handedOver.garments);
                peak = memory("VmHWM");
            });
            std::printf("Figures of %s: %.0f ms, %.1f MB more than before, %zu garments\n",
                        days > 0 ? (std::to_string(days) + " days").c_str() : "all years", took,
                        peak - begins, counted);
            std::fflush(stdout);
        }
    }

    void openShop() {
        std::vector<double> times;
        for (int each = 0; each < 20; ++each)
            times.push_back(millisecondsOf([&] { (void)db::loadOpenFacts(m_shop->connection()); }));
        say("Facts of the open orders loaded", times);
    }

    void search() {
        std::vector<double> times;
        for (const std::string_view words : {"heron", "tamta whit", "samphire dusk", "19876", "07700 912",
                                             "zip hoodie ink", "gorse bib market", "nothing of the kind"})
            for (std::size_t length = 1; length <= words.size(); ++length)
                times.push_back(millisecondsOf([&] {
                    const db::OrderQuery wanted{m_shop->connection(), words.substr(0, length)};
                    (void)db::findOrders(m_shop->connection(), wanted, db::OrderFilter::All, 200);
                    (void)db::countOrders(m_shop->connection(), wanted, db::OrderFilter::All);
                }));
        say("A key typed into the search", times);
    }

    // As each key of them is typed: words with a wrong letter, numbers in groups, and words that mean
    // something once they are whole.
    void searchAround() {
        std::vector<double> times;
        const Now now = largeShopNow();
        const LocalDate today = now.today();
        const std::vector<db::OrderMeaning> meant{
            {db::OrderMeaning::Kind::Owing},
            {db::OrderMeaning::Kind::Late},
            {db::OrderMeaning::Kind::Unconfirmed},
            {db::OrderMeaning::Kind::OnDays, {{today - Days{3}, today + Days{3}}}}};
        const auto key = [&](const db::TypedSearch& typed) {
            times.push_back(millisecondsOf([&] {
                const db::OrderQuery wanted{m_shop->connection(), db::OrderSearch{typed}};
                (void)db::findOrders(m_shop->connection(), wanted, db::OrderFilter::All, 200);
                (void)db::countOrders(m_shop->connection(), wanted, db::OrderFilter::All);
            }));
        };
        for (const std::string_view words : {"herno tamta", "tamta whitx", "samphrie dusk",
                                             "+44 7700 900 421", "0044 7700 9", "hodie imk"}) {
            for (std::size_t length = 1; length <= words.size(); ++length)
                key({std::string(words.substr(0, length)), {}, now});
            for (const db::OrderMeaning& meaning : meant)
                key({std::string(words), {{"owing", meaning}}, now});
        }
        for (const db::OrderMeaning& meaning : meant)
            key({{}, {{"owing", meaning}}, now});
        say("A key of a wrong letter, a phone number in groups, a word with a meaning", times);
    }

    // The page of a customer with this many orders: those of others are made theirs, and it is undone.
    void customerOfManyOrders() {
        constexpr int kOrdersOfCustomer = 500;
        const CustomerId customer{m_shop->connection().number("SELECT MAX(customer_id) FROM shop_order")};
        const auto given = m_shop->act([&](db::Writer& writer) -> Result<Done> {
            writer.connection().run(
                "UPDATE shop_order SET customer_id = ?1 WHERE id IN (SELECT id FROM shop_order "
                "ORDER BY id DESC LIMIT ?2)",
                customer, kOrdersOfCustomer);
            writer.describe(said("Gave a customer many orders"));
            return Done{};
        });
        if (!given.ok())
            throw std::runtime_error(given.error().message.english());
        std::vector<double> pages, finding;
        for (int each = 0; each < kTimes; ++each) {
            pages.push_back(millisecondsOf([&] { (void)db::customerPage(m_shop->connection(), customer); }));
            const std::string typed = each % 2 == 0 ? "tamta" : "07700 9";
            finding.push_back(millisecondsOf([&] {
                (void)db::customersFound(m_shop->connection(), db::OrderQuery{m_shop->connection(), typed},
                                         typed, 6);
            }));
        }
        const auto page = db::customerPage(m_shop->connection(), customer);
        say("The page of a customer of " + std::to_string(page->orders.size()) + " orders", pages);
        say("Customers found by a name or a phone number", finding);
        if (!m_shop->undo(m_shop->lastUndoable()->id).ok())
            throw std::runtime_error("the orders cannot be given back");
    }

    void undo() {
        const OrderId order{m_shop->connection().number("SELECT MAX(id) FROM shop_order")};
        std::vector<double> acting, undoing;
        for (int each = 0; each < kTimes; ++each) {
            acting.push_back(millisecondsOf(
                [&] { (void)db::moveMoney(*m_shop, order, MoneyKind::Payment, Money{1}, PaidHow::Cash); }));
            undoing.push_back(millisecondsOf([&] {
                const auto last = m_shop->lastUndoable();
                if (!last || !m_shop->undo(last->id).ok())
                    throw std::runtime_error("a payment cannot be undone");
            }));
        }
        say("A payment", acting);
        say("Undoing it", undoing);
    }

    void history() {
        const OrderId order{m_shop->connection().number("SELECT MAX(id) FROM shop_order")};
        std::vector<double> recent, ofOrder;
        for (int each = 0; each < kTimes; ++each) {
            recent.push_back(millisecondsOf([&] { (void)m_shop->recent(200); }));
            ofOrder.push_back(millisecondsOf([&] { (void)m_shop->history(db::Subject{order}, 200); }));
        }
        say("The last 200 entries of the history", recent);
        say("The history of an order", ofOrder);
    }

    void backUp() {
        const double took = millisecondsOf([&] {
            if (!db::backup(*m_shop, m_folder / "backup.holdfast").ok())
                throw std::runtime_error("no backup can be made");
        });
        std::printf("A backup: %.0f ms\n", took);
        std::filesystem::remove(m_folder / "backup.holdfast");
    }

    void millionReadings() {
        constexpr std::int64_t kReadings = 1'000'000;
        const PlaceId place{m_shop->connection().number("SELECT MAX(id) FROM storage_place")};
        const Instant last{Seconds{m_shop->connection().number("SELECT MIN(at) FROM climate_reading")}};
        std::vector<ClimateReading> readings;
        for (std::int64_t back = kReadings; back > 0; --back)
            readings.push_back({last - Minutes{2} * back,
                                Celsius{19 + 0.001 * static_cast<double>(back % 3'000)},
                                Humidity{40 + 0.01 * static_cast<double>(back % 1'000)}});
        sayPages("Before a million readings");
        double took = millisecondsOf([&] {
            if (!db::importReadings(*m_shop, place, readings).ok())
                throw std::runtime_error("the readings are refused");
        });
        std::printf("A million readings imported: %.0f ms\n", took);
        sayPages("With a million readings");
        took = millisecondsOf([&] {
            if (!m_shop->undo(m_shop->lastUndoable()->id).ok())
                throw std::runtime_error("the readings cannot be undone");
        });
        std::printf("Undoing it: %.0f ms\n", took);
        sayPages("After undoing it");
    }

    void sayPages(const char* when) {
        m_shop->emptyLog();
        db::Connection& connection = m_shop->connection();
        std::printf(
            "%s: %.0f MB, %.0f MB of it free pages, %.0f MB of entries\n", when, megabytesOf(m_path),
            static_cast<double>(connection.number("PRAGMA freelist_count") *
                                connection.number("PRAGMA page_size")) /
                1048576.0,
            static_cast<double>(connection.number("SELECT SUM(LENGTH(changeset)) FROM journal_entry")) /
                1048576.0);
        std::fflush(stdout);
    }

    std::filesystem::path m_folder;
    std::filesystem::path m_path;
    std::unique_ptr<db::Shop> m_shop;
};

int measure(int orders, std::int64_t entries) {
    const char* chosen = std::getenv("HOLDFAST_BENCH_FOLDER");
    std::string name = ((chosen ? std::filesystem::path{chosen} : std::filesystem::temp_directory_path()) /
                        "holdfast-scale-XXXXXX")
                           .string();
    const std::filesystem::path folder = mkdtemp(name.data());
    int result = EXIT_SUCCESS;
    try {
        Scale{folder}.measure(orders, entries);
    } catch (const std::exception& failure) {
        std::printf("%s\n", failure.what());
        result = EXIT_FAILURE;
    }
    std::filesystem::remove_all(folder);
    return result;
}

} // namespace
} // namespace holdfast::bench

int main(int argc, char** argv) {
    using holdfast::bench::measure;
    if (argc > 1)
        return measure(std::atoi(argv[1]), argc > 2 ? std::atoll(argv[2]) : 0);
    return measure(holdfast::bench::kOrders, 0) | measure(holdfast::bench::kOrdersOfABusyShop, 500'000);
}
