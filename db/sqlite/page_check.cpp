#include "db/sqlite/page_check.h"

#include "db/sqlite/connection.h"

#include <string_view>

namespace holdfast::db {

namespace {

// "NULL value in decal.layer", "TEXT value in roll_move.mm", "CHECK constraint failed in decal".
bool speaksOfAValue(std::string_view message) {
    return message.find(" value in ") != std::string_view::npos ||
           message.starts_with("CHECK constraint failed in ");
}

} // namespace

bool hasWholePages(Connection& connection) {
    Query check = connection.query("PRAGMA quick_check(1000)");
    bool isAnswered = false;
    while (check.step()) {
        isAnswered = true;
        if (check.view(0) != "ok" && !speaksOfAValue(check.view(0)))
            return false;
    }
    return isAnswered;
}

} // namespace holdfast::db
