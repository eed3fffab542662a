// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/bench/large_shop.h"

#include <cstdlib>
#include <stdexcept>
#include <stdlib.h>
#include <string>

namespace holdfast::bench {
namespace {

std::filesystem::path newFolder() {
    const char* chosen = std::getenv("HOLDFAST_BENCH_FOLDER");
    const auto root = chosen ? std::filesystem::path{chosen} : std::filesystem::temp_directory_path();
    std::string name = (root / "holdfast-bench-XXXXXX").string();
    if (!mkdtemp(name.data()))
        throw std::runtime_error("There can be no folder in " + root.string());
    return name;
}

// As a shop file is opened (db/journal/shop_file.cpp).
constexpr const char* kPragmas =
    "PRAGMA journal_mode = WAL; PRAGMA foreign_keys = ON; PRAGMA synchronous = FULL;"
    "PRAGMA temp_store = MEMORY; PRAGMA cache_size = -16000;"
    "PRAGMA journal_size_limit = 16777216;";

} // namespace

LargeShop::LargeShop(int orders)
    : m_folder(newFolder()) {
    const auto path = m_folder / "large.holdfast", copy = m_folder / "bare.holdfast";
    makeLargeShop(path, orders);
    std::filesystem::copy_file(path, copy);
    auto opened = db::Shop::open(path, [] { return largeShopNow().instant; });
    if (!opened.ok())
        throw std::runtime_error(opened.error().message.english());
    m_shop = std::move(opened).value();
    m_bare = std::make_unique<db::Connection>(db::Connection::open(copy, db::Access::ReadWrite));
    m_bare->script(kPragmas);
}

LargeShop::~LargeShop() {
    m_bare.reset();
    m_shop.reset();
    std::error_code ignored;
    std::filesystem::remove_all(m_folder, ignored);
}

} // namespace holdfast::bench
