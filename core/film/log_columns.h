// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How the lines of a logger's text are divided: what is between fields, and which column is which.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast {

// One line of a table after another (RFC 4180: a quoted field may hold the separator, line ends and doubled
// quotes). Line ends may be LF or CRLF.
class LogRecords {
public:
    LogRecords(std::string_view text, char separator);

    // The next line that is not empty; false at the end. What `fields` held before is gone.
    bool next();
    const std::vector<std::string_view>& fields() const { return m_fields; }
    std::size_t line() const { return m_line; }   // where it begins, from 1
    std::size_t position() const { return m_at; } // of the text before this

private:
    void splitPlain(std::string_view record);
    bool splitQuoted(); // false where a quote stays open

    std::string_view m_text;
    char m_separator;
    std::size_t m_at = 0;
    std::size_t m_line = 0;
    std::size_t m_nextLine = 1;
    std::vector<std::string_view> m_fields;
    std::vector<std::string> m_unquoted; // what fields that held quotes point to
};

// Tab, semicolon or comma: what divides most of the first lines into three fields or more.
char separatorOf(std::string_view text);

struct LogColumns {
    std::size_t time = 0;
    std::optional<std::size_t> clock; // where date and clock are apart; `time` is the date then
    std::size_t temperature = 1;
    std::optional<std::size_t> humidity = 2; // none: a log of temperature alone
    bool isFahrenheit = false;
};

// What a header line names; nothing where it is no header.
std::optional<LogColumns> columnsOf(const std::vector<std::string_view>& header);

} // namespace holdfast
