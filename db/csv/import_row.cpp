// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/csv/import_row.h"

#include "core/trade/limits.h"
#include "core/trade/unit_words.h"

#include <charconv>

namespace holdfast::db {

ImportRow::ImportRow(const std::map<std::string, std::size_t, std::less<>>& columns, CsvNumbers& numbers,
                     const Currency& currency)
    : m_columns(columns)
    , m_numbers(numbers)
    , m_currency(currency) {}

void ImportRow::hold(CsvRecord record) {
    m_record = std::move(record);
    m_wrong.reset();
}

std::string ImportRow::text(std::string_view heading) const {
    const auto column = m_columns.find(heading);
    if (column == m_columns.end() || column->second >= m_record.fields.size())
        return {};
    return unguarded(trimmed(m_record.fields[column->second]));
}

std::vector<std::string> ImportRow::list(std::string_view heading) const {
    return splitList(text(heading));
}

std::int64_t ImportRow::whole(std::string_view heading, std::int64_t fallback) {
    const std::string typed = text(heading);
    if (typed.empty())
        return fallback;
    std::int64_t number = 0;
    const auto plain = m_numbers.plain(typed);
    if (!plain) {
        wrong(heading, plain.error().message);
        return fallback;
    }
    const auto [end, code] = std::from_chars(plain->data(), plain->data() + plain->size(), number);
    if (code != std::errc{} || end != plain->data() + plain->size()) {
        wrong(heading, said("“{typed}” is not a whole number.", {{"typed", typed}}));
        return fallback;
    }
    return number;
}

double ImportRow::number(std::string_view heading, double fallback) {
    const std::string typed = text(heading);
    if (typed.empty())
        return fallback;
    const auto plain = m_numbers.plain(typed);
    if (!plain) {
        wrong(heading, plain.error().message);
        return fallback;
    }
    double number = 0;
    std::from_chars(plain->data(), plain->data() + plain->size(), number);
    return number;
}

Money ImportRow::money(std::string_view heading) {
    const std::string typed = text(heading);
    if (typed.empty())
        return {};
    const auto plain = m_numbers.plain(typed);
    const auto amount = plain ? parseAmount(*plain, m_currency) : std::nullopt;
    if (!amount)
        wrong(heading, said("“{typed}” is not an amount in {currency}, such as {example}.",
                            {{"typed", typed},
                             {"currency", m_currency.code},
                             {"example", plainAmount({2650}, m_currency)}}));
    return amount.value_or(Money{});
}

bool ImportRow::yesNo(std::string_view heading, bool fallback) {
    const std::string word = inSmallLetters(text(heading));
    if (word.empty())
        return fallback;
    if (word == "yes" || word == "1")
        return true;
    if (word == "no" || word == "0")
        return false;
    wrong(heading, said("write yes or no."));
    return fallback;
}

std::uint32_t ImportRow::rgb(std::string_view heading, std::string_view text) {
    std::uint32_t colour = 0;
    const auto digits = text.starts_with('#') ? text.substr(1) : std::string_view{};
    const auto [end, code] = std::from_chars(digits.data(), digits.data() + digits.size(), colour, 16);
    if (digits.size() != 6 || code != std::errc{} || end != digits.data() + digits.size()) {
        wrong(heading, said("write a colour as # and six digits 0 to F, such as #6B7F5A."));
        return 0;
    }
    return colour;
}

std::optional<LocalDate> ImportRow::day(std::string_view heading) {
    const std::string typed = text(heading);
    if (typed.empty())
        return std::nullopt;
    const auto date = parseIsoDate(typed);
    if (!date)
        wrong(heading, said("“{typed}” is not a day. Write it as 2026-11-25.", {{"typed", typed}}));
    return date;
}

void ImportRow::wrong(std::string_view heading, Sentence what) {
    if (!m_wrong)
        m_wrong = fieldError(std::string{heading},
                             said("Line {line}, {heading}: {wrong}",
                                  {{"line", line()}, {"heading", heading}, {"wrong", std::move(what)}}));
}

Error ImportRow::refused(const Error& error) const {
    return fieldError(error.field,
                      said("Line {line}: {wrong}", {{"line", line()}, {"wrong", error.message}}));
}

} // namespace holdfast::db
