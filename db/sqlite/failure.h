// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What SQLite could not do. Thrown and caught inside db/ only; Shop::act and Shop::read turn it into a
// Result.

#include "core/trade/result.h"

#include <exception>
#include <string>
#include <string_view>

struct sqlite3;

namespace holdfast::db {

class SqliteFailure : public std::exception {
public:
    // `code` is SQLite's extended result code, `message` what it says of it, `sql` the statement at fault.
    SqliteFailure(int code, std::string message, std::string_view sql = {});

    static SqliteFailure of(sqlite3* handle, int code, std::string_view sql = {});

    // A refusal of our own: `words` reach the person.
    static SqliteFailure inWords(Sentence words);
    // The same where nobody can tell whether it was done.
    static SqliteFailure notKnown(Sentence words);

    int code() const { return m_code; }
    int primaryCode() const { return m_code & 0xff; }
    bool isDamage() const;
    bool isOfTheDisk() const; // it could not be read or written
    bool isOfARule() const;   // a row would break a rule of its table
    bool isOfSchema() const;  // a table or a column is not there
    bool isBusy() const;
    bool isStopped() const; // see stopping.h
    bool isNotKnown() const;

    const char* what() const noexcept override { return m_message.c_str(); }

    // In words for the person at the desk: a full disk, a file in use, a damaged file.
    Error error() const;

private:
    int m_code;
    std::string m_message;
    Sentence m_words; // of a refusal of our own
};

// Throws SqliteFailure unless `code` is SQLITE_OK.
void require(sqlite3* handle, int code, std::string_view sql = {});

} // namespace holdfast::db
