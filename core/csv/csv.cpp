// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/csv/csv.h"

#include "core/trade/limits.h"

#include <algorithm>
#include <array>

namespace holdfast {

namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
constexpr std::string_view kBeginsFormula = "=+-@\t\r\n";

// Comma, semicolon or tab: whichever the first line has most of outside quotation marks.
char separatorIn(std::string_view text) {
    std::array<std::size_t, 3> counts{};
    constexpr std::string_view separators = ",;\t";
    bool isQuoted = false;
    for (const char letter : text) {
        if (letter == '"')
            isQuoted = !isQuoted;
        else if (!isQuoted && (letter == '\n' || letter == '\r'))
            break;
        else if (const auto at = separators.find(letter); !isQuoted && at != std::string_view::npos)
            ++counts[at];
    }
    return separators[static_cast<std::size_t>(std::ranges::max_element(counts) - counts.begin())];
}

bool isGuarded(std::string_view text) {
    return !text.empty() &&
           (kBeginsFormula.find(text.front()) != std::string_view::npos || text.front() == '\'');
}

} // namespace

CsvReader::CsvReader(std::string_view text)
    : m_text(text) {
    if (m_text.starts_with(kByteOrderMark))
        m_text.remove_prefix(kByteOrderMark.size());
    m_separator = separatorIn(m_text);
}

double CsvReader::share() const {
    return m_text.empty() ? 1.0 : static_cast<double>(m_at) / static_cast<double>(m_text.size());
}

bool CsvReader::isAtLineEnd() const {
    return m_at >= m_text.size() || m_text[m_at] == '\n' || m_text[m_at] == '\r';
}

void CsvReader::passLineEnd() {
    if (m_at < m_text.size() && m_text[m_at] == '\r')
        ++m_at;
    if (m_at < m_text.size() && m_text[m_at] == '\n')
        ++m_at;
    ++m_line;
}

Error CsvReader::wrong(std::size_t line, Sentence what) const {
    return plainError(said("Line {line}: {what}", {{"line", line}, {"what", std::move(what)}}));
}

Result<std::optional<CsvRecord>> CsvReader::next() {
    while (m_at < m_text.size() && isAtLineEnd())
        passLineEnd();
    if (m_at >= m_text.size())
        return std::optional<CsvRecord>{};
    CsvRecord record{m_line, {}};
    for (;;) {
        const bool isQuoted = m_at < m_text.size() && m_text[m_at] == '"';
        auto field = isQuoted ? quotedField() : plainField();
        if (!field)
            return field.error();
        if (!characterCount(*field))
            return wrong(record.line, said("this is not UTF-8. Save the file as UTF-8 text."));
        record.fields.push_back(std::move(field).value());
        if (isAtLineEnd())
            break;
        ++m_at; // the separator
    }
    passLineEnd();
    return std::optional{std::move(record)};
}

Result<std::string> CsvReader::quotedField() {
    const std::size_t begun = m_line;
    std::string field;
    for (++m_at; m_at < m_text.size(); ++m_at) {
        const char letter = m_text[m_at];
        if (letter == '"') {
            if (m_at + 1 >= m_text.size() || m_text[m_at + 1] != '"') {
                ++m_at;
                if (!isAtLineEnd() && m_text[m_at] != m_separator)
                    return wrong(m_line,
                                 said("something follows a closing quotation mark. Quotation marks within a "
                                      "quoted field are doubled."));
                return field;
            }
            ++m_at;
        } else if (letter == '\n') {
            ++m_line;
        }
        field += letter;
    }
    return wrong(begun, said("a quotation mark is opened here and never closed."));
}

Result<std::string> CsvReader::plainField() {
    const std::size_t begun = m_at;
    for (; !isAtLineEnd() && m_text[m_at] != m_separator; ++m_at)
        if (m_text[m_at] == '"')
            return wrong(
                m_line, said("a quotation mark is inside a field that does not begin with one. Put the whole "
                             "field in quotation marks and double those within."));
    return std::string{m_text.substr(begun, m_at - begun)};
}

Result<std::string> CsvNumbers::plain(std::string_view typed) {
    std::string text = trimmed(typed);
    if (text.empty())
        return text;
    constexpr std::string_view minus = "\xE2\x88\x92"; // as people print it
    if (text.starts_with(minus))
        text.replace(0, minus.size(), "-");
    const std::size_t begin = text.front() == '-' || text.front() == '+' ? 1 : 0;
    std::size_t digits = 0;
    char mark = 0;
    for (std::size_t at = begin; at < text.size(); ++at) {
        const char letter = text[at];
        if (letter >= '0' && letter <= '9') {
            ++digits;
        } else if ((letter == '.' || letter == ',') && mark == 0) {
            mark = letter;
            text[at] = '.';
        } else {
            return plainError(
                said("“{typed}” is not a number. Write digits and one decimal mark, no spaces or thousands "
                     "marks.",
                     {{"typed", typed}}));
        }
    }
    if (digits == 0)
        return plainError(said("“{typed}” is not a number.", {{"typed", typed}}));
    if (mark != 0 && m_mark != 0 && mark != m_mark)
        return plainError(mark == ','
                              ? said("“{typed}” has a decimal comma, numbers before it had a decimal point. "
                                     "Write all in one way.",
                                     {{"typed", typed}})
                              : said("“{typed}” has a decimal point, numbers before it had a decimal comma. "
                                     "Write all in one way.",
                                     {{"typed", typed}}));
    if (mark != 0)
        m_mark = mark;
    return text.front() == '+' ? text.substr(1) : text;
}

CsvLine& CsvLine::text(std::string_view text) {
    return isGuarded(text) ? plain("'" + std::string{text}) : plain(text);
}

CsvLine& CsvLine::plain(std::string_view text) {
    if (!m_isFirst)
        m_line += ',';
    m_isFirst = false;
    if (text.find_first_of("\",;\r\n\t") == std::string_view::npos && !text.starts_with(' ') &&
        !text.ends_with(' ')) {
        m_line += text;
        return *this;
    }
    m_line += '"';
    for (const char letter : text)
        m_line.append(letter == '"' ? 2 : 1, letter);
    m_line += '"';
    return *this;
}

std::string CsvLine::end() {
    std::string line = std::move(m_line) + "\r\n";
    m_line.clear();
    m_isFirst = true;
    return line;
}

std::string unguarded(std::string text) {
    if (text.starts_with('\'') && isGuarded(std::string_view{text}.substr(1)))
        text.erase(0, 1);
    return text;
}

std::string joinedList(const std::vector<std::string>& parts) {
    std::string list;
    for (const std::string& part : parts) {
        if (!list.empty())
            list += " | ";
        for (const char letter : part) {
            if (letter == '|' || letter == '\\')
                list += '\\';
            list += letter;
        }
    }
    return list;
}

std::vector<std::string> splitList(std::string_view text) {
    std::vector<std::string> parts;
    std::string part;
    const auto take = [&] {
        if (auto whole = trimmed(part); !whole.empty())
            parts.push_back(std::move(whole));
        part.clear();
    };
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (text[at] == '\\' && at + 1 < text.size())
            part += text[++at];
        else if (text[at] == '|')
            take();
        else
            part += text[at];
    }
    take();
    return parts;
}

} // namespace holdfast
