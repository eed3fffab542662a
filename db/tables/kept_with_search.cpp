// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/kept_with_search.h"

#include "db/sqlite/query.h"

#include <sqlite3.h>

#include <map>
#include <mutex>
#include <string>

namespace holdfast::db {

namespace {

struct KeptHere {
    std::string mark;
    std::shared_ptr<const void> what;
};

std::mutex g_guard; // connections live on threads of their own
std::map<sqlite3*, std::map<std::type_index, KeptHere>> g_kept;

void forgetKept(void* handle) {
    const std::lock_guard lock{g_guard};
    g_kept.erase(static_cast<sqlite3*>(handle));
}

// SQLite calls what destroys a function when the connection is closed; the function itself is never called.
void forgetOnClose(sqlite3* handle) {
    sqlite3_create_function_v2(
        handle, "kept_with_search", 0, SQLITE_UTF8, handle,
        [](sqlite3_context* context, int, sqlite3_value**) { sqlite3_result_null(context); }, nullptr,
        nullptr, forgetKept);
}

// The index's own record of its parts, which every write to it changes.
std::string markOf(Connection& connection) {
    Query row{connection, "SELECT hex(block) FROM order_text_data WHERE id = 10"};
    return row.step() ? row.text(0) : std::string{};
}

} // namespace

std::shared_ptr<const void> keptWithSearch(Connection& connection, std::type_index what,
                                           const std::function<std::shared_ptr<const void>()>& read) {
    if (connection.inTransaction() && connection.mayWrite())
        return read(); // what is not kept yet has no mark
    sqlite3* const handle = connection.handle();
    const std::string mark = markOf(connection);
    {
        const std::lock_guard lock{g_guard};
        if (const auto here = g_kept.find(handle); here != g_kept.end())
            if (const auto kept = here->second.find(what);
                kept != here->second.end() && kept->second.mark == mark)
                return kept->second.what;
    }
    const std::shared_ptr<const void> made = read();
    const std::lock_guard lock{g_guard};
    const auto [here, isFirst] = g_kept.try_emplace(handle);
    here->second[what] = {mark, made};
    if (isFirst)
        forgetOnClose(handle);
    return made;
}

} // namespace holdfast::db
