// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A shop after some fifteen years: 20,000 orders with 60,000 garments, of which about 300 are open and 120
// are ready for today's press. A shop three times as busy has 67,000 orders. Written straight into the file,
// not by actions: that would take an hour.

#include "db/journal/shop.h"

#include <filesystem>
#include <memory>

namespace holdfast::bench {

inline constexpr int kOrders = 20'000;
inline constexpr int kOrdersOfABusyShop = 67'000; // 201,000 garments
inline constexpr int kGarmentsEach = 3;
inline constexpr int kOpenOrders = 100;
inline constexpr int kReadyOrders = 40; // of those

// The wall stands at 08:30 UTC of a Wednesday.
Now largeShopNow();

// Throws SqliteFailure, or std::runtime_error where the file cannot be made.
void makeLargeShop(const std::filesystem::path& path, int orders = kOrders);

// The rows were written straight into the file: here come the entries that would have made them, four rows
// to an entry or more, so that there are about as many as `entries`, and days that were closed and opened
// again where there are fewer. Returns how many there are. Throws SqliteFailure.
std::int64_t writeHistory(const std::filesystem::path& path, std::int64_t entries);

// In the folder $HOLDFAST_BENCH_FOLDER, else the one for temporary files; gone at the end.
class LargeShop {
public:
    explicit LargeShop(int orders = kOrders);
    LargeShop(const LargeShop&) = delete;
    LargeShop& operator=(const LargeShop&) = delete;
    ~LargeShop();

    db::Shop& shop() { return *m_shop; }
    // A second copy of the same file, for what is measured against it.
    db::Connection& bare() { return *m_bare; }

private:
    std::filesystem::path m_folder;
    std::unique_ptr<db::Shop> m_shop;
    std::unique_ptr<db::Connection> m_bare;
};

} // namespace holdfast::bench
