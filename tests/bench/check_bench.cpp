// What the checks of a large shop take, in seconds of the processor and in memory: 20,000 orders, every row
// of which has its history; or, with a number of entries as an argument, so many of them.

#include "db/check/check.h"
#include "db/check/history_sums.h"
#include "db/sqlite/transaction.h"
#include "tests/bench/large_shop.h"

#include <sqlite3.h>
#include <sys/resource.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>

namespace holdfast::bench {
namespace {

double processorSeconds() {
    timespec time{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
    return static_cast<double>(time.tv_sec) + static_cast<double>(time.tv_nsec) / 1e9;
}

long peakMegabytes() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return usage.ru_maxrss / 1024;
}

db::Changeset headOf(const db::RecordedTable& table) {
    db::Changeset head{std::byte{'T'}, static_cast<std::byte>(table.columns.size())};
    for (const bool isKey : table.isKey)
        head.push_back(static_cast<std::byte>(isKey ? 1 : 0));
    for (const char letter : table.name)
        head.push_back(static_cast<std::byte>(letter));
    head.push_back(std::byte{0});
    return head;
}

// The rows were written straight into the file: here come the entries that would have made them, `rowsEach`
// in an entry, and days that were closed and opened until there are `entries`.
std::int64_t writeHistory(const std::filesystem::path& path, std::int64_t entries) {
    constexpr int kRowsEach = 4;
    auto connection = db::Connection::open(path, db::Access::ReadWrite);
    db::Transaction transaction{connection};
    std::int64_t id = std::int64_t{1} << 12;
    const auto write = [&](const db::Changeset& changeset) {
        id += std::int64_t{1} << 22;
        connection.run("INSERT INTO journal_entry (id, seat_id, at, title, changeset) "
                       "VALUES (?1, 1, 1700000000, 'Took order 426', ?2)",
                       id, changeset);
    };
    std::int64_t written = 0;
    for (const db::RecordedTable& table : db::tablesOfHistory(connection)) {
        db::Changeset changeset = headOf(table);
        int rows = 0;
        db::RowBytes bytes;
        db::Query row{connection, "SELECT " + table.columnList() + " FROM \"" + table.name + "\""};
        while (row.step()) {
            changeset.push_back(std::byte{SQLITE_INSERT});
            changeset.push_back(std::byte{0});
            for (const db::ValueBytes value : bytes.of(row, table.columns.size()))
                changeset.insert(changeset.end(), value.begin(), value.end());
            if (++rows % kRowsEach == 0) {
                write(changeset);
                changeset = headOf(table);
                ++written;
            }
        }
        if (rows % kRowsEach != 0) {
            write(changeset);
            ++written;
        }
    }
    for (; written < entries; ++written) {
        db::Changeset both{std::byte{'T'}, std::byte{1}, std::byte{1}};
        for (const char letter : std::string{"closed_day"})
            both.push_back(static_cast<std::byte>(letter));
        both.push_back(std::byte{0});
        for (const int operation : {SQLITE_INSERT, SQLITE_DELETE}) {
            both.push_back(static_cast<std::byte>(operation));
            both.push_back(std::byte{0});
            both.push_back(std::byte{SQLITE_TEXT});
            both.push_back(std::byte{10});
            for (const char letter : std::string{"2026-12-24"})
                both.push_back(static_cast<std::byte>(letter));
        }
        write(both);
    }
    connection.run("UPDATE seat_here SET last_id = ?1", id);
    transaction.commit();
    return written;
}

void say(const char* what, double seconds, std::size_t findings) {
    std::printf("%s: %.2f s of the processor, at most %ld MB in all, %zu findings\n", what, seconds,
                peakMegabytes(), findings);
}

int measure(std::int64_t entries) {
    std::string name = (std::filesystem::temp_directory_path() / "holdfast-check-XXXXXX").string();
    const std::filesystem::path folder = mkdtemp(name.data());
    const auto path = folder / "large.holdfast";
    makeLargeShop(path);
    const std::int64_t written = writeHistory(path, entries);
    std::printf("A shop of %d orders, %lld entries, %ju MB\n", kOrders, static_cast<long long>(written),
                std::filesystem::file_size(path) >> 20);
    auto shop = db::Shop::openReadOnly(path, [] { return largeShopNow().instant; });
    if (!shop.ok()) {
        std::printf("%s\n", shop.error().message.c_str());
        return EXIT_FAILURE;
    }
    double before = processorSeconds();
    const auto quick = db::checkQuickly(**shop);
    say("The quick check", processorSeconds() - before,
        quick.ok() ? quick->unread.size() + quick->sentences.size() : 999);
    before = processorSeconds();
    std::string part;
    double partSince = before;
    const auto whole = db::checkShop(**shop, [&](double, std::string_view words) {
        if (words != part) {
            const double now = processorSeconds();
            if (!part.empty())
                std::printf("  %s: %.2f s\n", part.c_str(), now - partSince);
            part = words;
            partSince = now;
        }
        return true;
    });
    say("The whole check", processorSeconds() - before, whole.ok() ? whole->size() : 999);
    for (std::size_t at = 0; whole.ok() && at < whole->size() && at < 5; ++at)
        std::printf("  %s\n", (*whole)[at].c_str());
    shop->reset();
    std::filesystem::remove_all(folder);
    return EXIT_SUCCESS;
}

} // namespace
} // namespace holdfast::bench

int main(int argc, char** argv) {
    return holdfast::bench::measure(argc > 1 ? std::atoll(argv[1]) : 0);
}
