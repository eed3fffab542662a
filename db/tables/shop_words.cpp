// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/shop_words.h"

#include "db/sqlite/query.h"
#include "db/tables/kept_with_search.h"

#include <algorithm>

namespace holdfast::db {

namespace {

ShopWords readWords(Connection& connection) {
    ShopWords read;
    Query rows{connection, "SELECT term FROM order_word"};
    while (rows.step()) {
        const std::string_view term = rows.view(0);
        const bool isNumber = std::ranges::all_of(term, [](char each) { return each >= '0' && each <= '9'; });
        (isNumber ? read.numbers : read.words).emplace_back(term);
    }
    return read;
}

} // namespace

std::shared_ptr<const ShopWords> wordsOfShop(Connection& connection) {
    return keptWithSearch(connection, readWords);
}

} // namespace holdfast::db
