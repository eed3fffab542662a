// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Comma-separated values as RFC 4180 has them: fields with a comma, a quotation mark or a line break are in
// quotation marks, those within are doubled, lines end with CR LF. UTF-8.
//
// Reading also takes LF alone, a byte order mark, semicolons or tabs between fields (whichever the first line
// has most of), and lines with nothing in them, which it passes over. It refuses what could mean two things,
// and names the line.

#include "core/trade/result.h"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast {

struct CsvRecord {
    std::size_t line = 0; // where it begins, from 1
    std::vector<std::string> fields;
};

class CsvReader {
public:
    // `text` must stay as long as the reader does.
    explicit CsvReader(std::string_view text);

    // The next record, or nothing at the end.
    Result<std::optional<CsvRecord>> next();
    char separator() const { return m_separator; }
    // How much of the text is read: 0 to 1.
    double share() const;

private:
    Result<std::string> quotedField();
    Result<std::string> plainField();
    bool isAtLineEnd() const;
    void passLineEnd();
    Error wrong(std::size_t line, Sentence what) const;

    std::string_view m_text;
    std::size_t m_at = 0;
    std::size_t m_line = 1;
    char m_separator = ',';
};

// Numbers of one file, all with a decimal point or all with a decimal comma.
class CsvNumbers {
public:
    // "3.5" for "3.5" and for "3,5"; an error in words for what is no number, for a thousands mark, and for a
    // comma where there were points before. Empty stays empty.
    Result<std::string> plain(std::string_view text);

private:
    char m_mark = 0; // the decimal mark seen so far
};

// One line, field by field.
class CsvLine {
public:
    // What people wrote. A spreadsheet would take a text that begins with = + - @ (or a tab or line break)
    // for a formula and run it, so an apostrophe is put before it, and before a text that begins with one, so
    // that it is known which to take away again.
    CsvLine& text(std::string_view text);
    // What the program wrote: numbers, days, words of its own.
    CsvLine& plain(std::string_view text);
    CsvLine& empty() { return plain({}); }

    // With its CR LF; the next begins.
    std::string end();

private:
    std::string m_line;
    bool m_isFirst = true;
};

// A text as it was before CsvLine::text guarded it.
std::string unguarded(std::string text);

// Several in one field: "S | M | L". A bar within one is written "\|".
std::string joinedList(const std::vector<std::string>& parts);
std::vector<std::string> splitList(std::string_view text);

} // namespace holdfast
