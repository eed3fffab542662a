// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/shop_words.h"

#include <sqlite3.h>

#include <algorithm>
#include <map>
#include <mutex>

namespace holdfast::db {

namespace {

struct KeptWords {
    std::string mark;
    std::shared_ptr<const ShopWords> words;
};

std::mutex g_guard; // connections live on threads of their own
std::map<sqlite3*, KeptWords> g_kept;

void forgetWords(void* handle) {
    const std::lock_guard lock{g_guard};
    g_kept.erase(static_cast<sqlite3*>(handle));
}

// SQLite calls what destroys a function when the connection is closed; the function itself is never called.
void forgetOnClose(sqlite3* handle) {
    sqlite3_create_function_v2(
        handle, "words_are_kept", 0, SQLITE_UTF8, handle,
        [](sqlite3_context* context, int, sqlite3_value**) { sqlite3_result_null(context); }, nullptr,
        nullptr, forgetWords);
}

// The index's own record of its parts, which every write to it changes.
std::string markOf(Connection& connection) {
    Query row{connection, "SELECT hex(block) FROM order_text_data WHERE id = 10"};
    return row.step() ? row.text(0) : std::string{};
}

std::shared_ptr<const ShopWords> readWords(Connection& connection) {
    auto read = std::make_shared<ShopWords>();
    Query rows{connection, "SELECT term FROM order_word"};
    while (rows.step()) {
        const std::string_view term = rows.view(0);
        const bool isNumber = std::ranges::all_of(term, [](char each) { return each >= '0' && each <= '9'; });
        (isNumber ? read->numbers : read->words).emplace_back(term);
    }
    return read;
}

} // namespace

std::shared_ptr<const ShopWords> wordsOfShop(Connection& connection) {
    if (connection.inTransaction() && connection.mayWrite())
        return readWords(connection); // what is not kept yet has no mark
    sqlite3* const handle = connection.handle();
    const std::string mark = markOf(connection);
    {
        const std::lock_guard lock{g_guard};
        if (const auto kept = g_kept.find(handle); kept != g_kept.end() && kept->second.mark == mark)
            return kept->second.words;
    }
    const auto words = readWords(connection);
    const std::lock_guard lock{g_guard};
    if (g_kept.insert_or_assign(handle, KeptWords{mark, words}).second)
        forgetOnClose(handle);
    return words;
}

} // namespace holdfast::db
