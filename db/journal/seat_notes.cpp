// SPDX-License-Identifier: GPL-3.0-or-later
// The notes of a Shop: the one thing written without an action.
#include "core/trade/assertion.h"
#include "db/journal/shop.h"

namespace holdfast::db {

namespace {

// One statement of its own, with writing allowed just for it.
template <class Write>
bool wroteNote(Connection& connection, Write&& write) {
    HOLDFAST_ASSERT(!connection.inTransaction() && "a note is no part of an action");
    connection.allowWriting(true);
    bool isKept = true;
    try {
        write();
    } catch (const SqliteFailure&) {
        isKept = false;
    }
    connection.allowWriting(false);
    return isKept;
}

} // namespace

bool Shop::keepNote(std::string_view key, std::string_view text) {
    return !isReadOnly() && wroteNote(connection(), [&] {
        connection().run("INSERT INTO seat_note (key, text) VALUES (?1, ?2) "
                         "ON CONFLICT (key) DO UPDATE SET text = excluded.text",
                         key, text);
    });
}

bool Shop::dropNote(std::string_view key) {
    return !isReadOnly() &&
           wroteNote(connection(), [&] { connection().run("DELETE FROM seat_note WHERE key = ?1", key); });
}

std::optional<std::string> Shop::note(std::string_view key) {
    Query found = connection().query("SELECT text FROM seat_note WHERE key = ?1", key);
    return found.step() ? std::optional{found.text(0)} : std::nullopt;
}

} // namespace holdfast::db
