// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/sqlite/failure.h"

#include <sqlite3.h>

#include <utility>

namespace holdfast::db {

SqliteFailure::SqliteFailure(int code, std::string message, std::string_view sql)
    : m_code(code)
    , m_message(std::move(message)) {
    if (!sql.empty())
        m_message.append(" [").append(sql).append("]");
}

SqliteFailure SqliteFailure::of(sqlite3* handle, int code, std::string_view sql) {
    // The handle speaks of its latest call; after an out-of-memory there may be no handle at all.
    const bool knowsMore = handle != nullptr && (sqlite3_errcode(handle) & 0xff) == (code & 0xff);
    const int extended = knowsMore ? sqlite3_extended_errcode(handle) : code;
    return SqliteFailure{extended, knowsMore ? sqlite3_errmsg(handle) : sqlite3_errstr(code), sql};
}

SqliteFailure SqliteFailure::inWords(Sentence words) {
    SqliteFailure failure{SQLITE_AUTH, words.english()};
    failure.m_words = std::move(words);
    return failure;
}

SqliteFailure SqliteFailure::notKnown(Sentence words) {
    SqliteFailure failure{SQLITE_AUTH_USER, words.english()};
    failure.m_words = std::move(words);
    return failure;
}

bool SqliteFailure::isNotKnown() const {
    return m_code == SQLITE_AUTH_USER;
}

bool SqliteFailure::isDamage() const {
    return primaryCode() == SQLITE_CORRUPT || primaryCode() == SQLITE_NOTADB;
}

bool SqliteFailure::isOfTheDisk() const {
    return primaryCode() == SQLITE_IOERR;
}

bool SqliteFailure::isOfARule() const {
    return primaryCode() == SQLITE_CONSTRAINT || primaryCode() == SQLITE_MISMATCH;
}

bool SqliteFailure::isOfSchema() const {
    return primaryCode() == SQLITE_ERROR;
}

bool SqliteFailure::isBusy() const {
    return primaryCode() == SQLITE_BUSY || primaryCode() == SQLITE_LOCKED;
}

bool SqliteFailure::isStopped() const {
    return primaryCode() == SQLITE_INTERRUPT;
}

Error SqliteFailure::error() const {
    switch (primaryCode()) {
    case SQLITE_FULL:
        return plainError(said("The disk is full. Nothing was changed; make room and try again."));
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return plainError(said(
            "The shop file is being written to, by longer work or another program. Nothing was changed; try "
            "again in a moment."));
    case SQLITE_IOERR:
        return plainError(
            said("The disk could not be read or written. Nothing was changed; see that the disk is "
                 "connected and has room, then try again."));
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
        return plainError(
            said("The shop file is damaged. Restore a backup, or ask for help before going on."));
    case SQLITE_READONLY:
    case SQLITE_PERM:
        return plainError(
            said("The shop file cannot be written to. Nothing was changed; see who may write to it."));
    case SQLITE_CANTOPEN:
        return plainError(
            said("The shop file cannot be opened. See that it is where it was and that you may read it."));
    case SQLITE_NOMEM:
        return plainError(
            said("The computer has run out of memory. Nothing was changed; close something and try again."));
    case SQLITE_INTERRUPT:
        return plainError(said("Stopped. Nothing was changed."));
    case SQLITE_AUTH:
        // No authorizer is ever set: this is inWords() or notKnown().
        return plainError(m_words);
    case SQLITE_ERROR:
        // A table or column of ours is not there; which one, and where it was asked for, helps nobody at the
        // desk.
        if (m_message.starts_with("no such "))
            return plainError(
                said("A part of the shop file is missing. Mend the shop file, or restore a backup."));
        [[fallthrough]];
    default:
        return plainError(
            said("The shop file refused this: {reason}. Nothing was changed.", {{"reason", m_message}}));
    }
}

void require(sqlite3* handle, int code, std::string_view sql) {
    if (code != SQLITE_OK)
        throw SqliteFailure::of(handle, code, sql);
}

} // namespace holdfast::db
