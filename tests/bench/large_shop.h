#pragma once
// A shop after some fifteen years: 20,000 orders with 60,000 garments, of which about 300 are open and 120
// are ready for today's press. Written straight into the file, not by actions: that would take an hour.

#include "db/journal/shop.h"

#include <filesystem>
#include <memory>

namespace holdfast::bench {

inline constexpr int kOrders = 20'000;
inline constexpr int kGarmentsEach = 3;
inline constexpr int kOpenOrders = 100;
inline constexpr int kReadyOrders = 40; // of those

// The wall stands at 08:30 UTC of a Wednesday.
Now largeShopNow();

// Throws SqliteFailure, or std::runtime_error where the file cannot be made.
void makeLargeShop(const std::filesystem::path& path);

// In the folder $HOLDFAST_BENCH_FOLDER, else the one for temporary files; gone at the end.
class LargeShop {
public:
    LargeShop();
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
