// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/team_list.h"

#include "core/csv/csv.h"
#include "core/trade/limits.h"
#include "core/trade/unit_words.h"

#include <algorithm>
#include <array>
#include <optional>

namespace holdfast {

namespace {

enum class Column { Name, Number, Size };

struct Heading {
    std::string_view word;
    Column column;
};
constexpr std::array kHeadings{
    Heading{"name", Column::Name},    Heading{"names", Column::Name},    Heading{"player", Column::Name},
    Heading{"wording", Column::Name}, Heading{"number", Column::Number}, Heading{"no", Column::Number},
    Heading{"no.", Column::Number},   Heading{"nr", Column::Number},     Heading{"#", Column::Number},
    Heading{"size", Column::Size},    Heading{"sizes", Column::Size}};

std::optional<Column> headingOf(const std::string& field) {
    const std::string word = inSmallLetters(trimmed(field));
    const auto found = std::ranges::find(kHeadings, word, &Heading::word);
    return found == kHeadings.end() ? std::nullopt : std::optional{found->column};
}

bool isDigits(std::string_view text) {
    return !text.empty() && std::ranges::all_of(text, [](char each) { return each >= '0' && each <= '9'; });
}

// "xxl", "2 XL" and "2XL" as one: "2xl".
std::string plainSize(std::string_view size) {
    std::string plain = inSmallLetters(std::string{size});
    std::erase_if(plain, [](char each) { return each == ' ' || each == '-' || each == '.'; });
    const std::size_t exes = plain.find_first_not_of('x');
    if (exes != std::string::npos && exes > 1)
        plain = std::to_string(exes) + "x" + plain.substr(exes);
    return plain;
}

// One that the style does not have: "4XL", "XXS".
bool looksLikeSize(std::string_view field) {
    const std::string plain = plainSize(field);
    const std::size_t digits = std::min(plain.find_first_not_of("0123456789"), plain.size());
    const std::string_view rest = std::string_view{plain}.substr(digits);
    return (rest == "xs" || rest == "xl" || (digits == 0 && (rest == "s" || rest == "m" || rest == "l"))) &&
           digits <= 2;
}

class LineReader {
public:
    LineReader(std::span<const std::string> sizes, const std::vector<std::optional<Column>>& columns)
        : m_sizes(sizes)
        , m_columns(columns) {}

    TeamLine read(const CsvRecord& record) {
        m_line = {};
        m_line.line = record.line;
        for (std::size_t at = 0; at < record.fields.size(); ++at)
            if (const std::string field = trimmed(record.fields[at]); !field.empty())
                take(field, at < m_columns.size() ? m_columns[at] : std::nullopt);
        check();
        return m_line;
    }

private:
    void take(const std::string& field, std::optional<Column> column) {
        if (column == Column::Size || (!column && m_line.size.empty() && sizeAmong(m_sizes, field)))
            takeSize(field);
        else if (column == Column::Number || (!column && m_line.number.empty() && isDigits(field)))
            m_line.number = field;
        else if (!column && m_line.size.empty() && looksLikeSize(field))
            takeSize(field);
        else
            m_line.name += (m_line.name.empty() ? "" : " ") + field;
    }

    void takeSize(const std::string& field) {
        if (const auto size = sizeAmong(m_sizes, field))
            m_line.size = *size;
        else
            m_line.wrong = said("There is no size “{size}”.", {{"size", field}});
    }

    void check() {
        constexpr std::size_t kMostDigits = 4;
        if (!m_line.wrong.empty())
            return;
        if (m_line.name.empty() && m_line.number.empty())
            m_line.wrong = said("It has neither a name nor a number.");
        else if (m_line.number.size() > kMostDigits)
            m_line.wrong = said("A number has up to {n} digits.", {{"n", Numeral{kMostDigits}}});
        else if (const auto text = typedText(
                     m_line.name, {.field = "name", .what = phrase("The name"), .least = 0, .most = 60});
                 !text.ok())
            m_line.wrong = text.error().message;
    }

    std::span<const std::string> m_sizes;
    const std::vector<std::optional<Column>>& m_columns;
    TeamLine m_line;
};

// A line without separators, by its words.
std::vector<std::string> wordsOf(const std::string& field) {
    std::vector<std::string> words;
    std::string word;
    for (const char each : field + ' ') {
        if (each != ' ') {
            word += each;
        } else if (!word.empty()) {
            words.push_back(word);
            word.clear();
        }
    }
    return words;
}

// What each column is, where all of the first line are headings; else nothing.
std::vector<std::optional<Column>> columnsIn(const CsvRecord& record) {
    std::vector<std::optional<Column>> columns;
    for (const std::string& field : record.fields)
        columns.push_back(headingOf(field));
    const bool isHeading =
        std::ranges::all_of(columns, [](const auto& column) { return column.has_value(); });
    return isHeading ? columns : std::vector<std::optional<Column>>{};
}

} // namespace

std::optional<std::string> sizeAmong(std::span<const std::string> sizes, std::string_view written) {
    const auto found =
        std::ranges::find(sizes, plainSize(written), [](const std::string& size) { return plainSize(size); });
    return found == sizes.end() ? std::nullopt : std::optional{*found};
}

Result<std::vector<TeamLine>> readTeamList(std::string_view text, std::span<const std::string> sizes) {
    std::vector<TeamLine> lines;
    std::vector<std::optional<Column>> columns;
    CsvReader reader{text};
    for (bool isFirst = true;; isFirst = false) {
        auto read = reader.next();
        if (!read.ok())
            return read.error();
        if (!*read)
            return lines;
        CsvRecord record = std::move(**read);
        if (record.fields.size() == 1)
            record.fields = wordsOf(record.fields.front());
        if (isFirst)
            columns = columnsIn(record);
        const bool isBlank = std::ranges::all_of(
            record.fields, [](const std::string& field) { return trimmed(field).empty(); });
        if (isBlank || (isFirst && !columns.empty()))
            continue;
        if (lines.size() == kMostTeamLines)
            return fieldError("list",
                              said("A list has up to {n} garments.", {{"n", Numeral{kMostTeamLines}}}));
        lines.push_back(LineReader{sizes, columns}.read(record));
    }
}

} // namespace holdfast
