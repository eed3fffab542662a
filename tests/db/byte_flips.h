// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One byte of a closed shop flipped: is it found, or harmless? For the tests of some bytes and of every byte.

#include "db/check/check.h"
#include "db/journal/recorded_tables.h"
#include "tests/db/journal_fixture.h"

#include <string>

namespace holdfast::db::testing {

// What a person reads in the shop: every recorded row, or that it cannot be read.
inline std::string rowsAsRead(Shop& shop) {
    std::string all;
    try {
        for (const std::string& table : recordedTables(shop.connection())) {
            all += table + "\n";
            std::string columns;
            Query names = shop.connection().query("SELECT name FROM pragma_table_info(?1)", table);
            while (names.step())
                columns += (columns.empty() ? "quote(\"" : " || ',' || quote(\"") + names.text(0) + "\")";
            if (columns.empty())
                continue;
            Query rows = shop.connection().query("SELECT " + columns + " FROM \"" + table + "\" ORDER BY 1");
            while (rows.step())
                all += rows.text(0) + "\n";
        }
    } catch (const SqliteFailure&) {
        return "cannot be read";
    }
    return all;
}

struct Flip {
    bool isRefused = false; // it is not opened
    bool isFound = false;   // the check says that something is wrong
    bool isOther = false;   // a recorded row reads otherwise
    bool isEndless = false;

    bool isSilent() const { return isOther && !isRefused && !isFound; }
};

// Far beyond what the check of a small shop takes.
inline constexpr int kMostAsked = 200'000;

inline Flip flipped(const std::filesystem::path& path, const std::string& bytes, std::size_t at,
                    unsigned char mask, const std::string& before) {
    std::string damaged = bytes;
    damaged[at] = static_cast<char>(static_cast<unsigned char>(damaged[at]) ^ mask);
    for (const char* beside : {"-wal", "-shm", "-journal"})
        std::filesystem::remove(path.string() + beside);
    writeBytes(path, damaged);
    Flip flip;
    auto shop = Shop::openReadOnly(path, standingClock());
    if (!shop.ok()) {
        flip.isRefused = true;
        return flip;
    }
    flip.isOther = rowsAsRead(**shop) != before;
    int asked = 0;
    const auto found = checkShop(**shop, [&](double, Phrase) { return ++asked < kMostAsked; });
    flip.isEndless = asked >= kMostAsked;
    flip.isFound = !found.ok() || !found->empty();
    return flip;
}

} // namespace holdfast::db::testing
