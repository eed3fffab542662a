// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/page_check.h"

#include "db/sqlite/connection.h"

#include <sqlite3.h>

#include <charconv>
#include <string>
#include <string_view>

namespace holdfast::db {

namespace {

// "NULL value in decal.layer", "TEXT value in roll_move.mm", "CHECK constraint failed in decal".
bool speaksOfAValue(std::string_view message) {
    return message.find(" value in ") != std::string_view::npos ||
           message.starts_with("CHECK constraint failed in ");
}

// "unable to get the page. error code=266": the disk did not give it, which says nothing about the file.
bool speaksOfTheDisk(std::string_view message) {
    constexpr std::string_view kCode = "error code";
    const std::size_t at = message.find(kCode);
    if (at == std::string_view::npos || at + kCode.size() == message.size())
        return false;
    int code = 0;
    const std::string_view number = message.substr(at + kCode.size() + 1);
    std::from_chars(number.data(), number.data() + number.size(), code);
    return (code & 0xff) == SQLITE_IOERR;
}

} // namespace

void requireOfTheFile(std::string_view message) {
    if (speaksOfTheDisk(message))
        throw SqliteFailure{SQLITE_IOERR, std::string{message}};
}

bool hasWholePages(Connection& connection) {
    Query check = connection.query("PRAGMA quick_check(1000)");
    bool isAnswered = false;
    while (check.step()) {
        isAnswered = true;
        requireOfTheFile(check.view(0));
        if (check.view(0) != "ok" && !speaksOfAValue(check.view(0)))
            return false;
    }
    return isAnswered;
}

} // namespace holdfast::db
