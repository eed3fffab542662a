// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// One line of a file that is read in, by its headings. The first thing that is wrong in it is kept, and
// everything read afterwards is a fallback: whoever reads asks once, at the end of the line.

#include "core/csv/csv.h"
#include "core/trade/dates.h"
#include "core/trade/money.h"
#include "db/tables/codes.h"

#include <initializer_list>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

class ImportRow {
public:
    // Headings and the place of each; `numbers` is of the whole file.
    ImportRow(const std::map<std::string, std::size_t, std::less<>>& columns, CsvNumbers& numbers,
              const Currency& currency);

    void hold(CsvRecord record);
    std::size_t line() const { return m_record.line; }

    std::string
    text(std::string_view heading) const; // trimmed and unguarded; empty where there is no such column
    bool has(std::string_view heading) const { return !text(heading).empty(); }
    std::vector<std::string> list(std::string_view heading) const;
    std::int64_t whole(std::string_view heading, std::int64_t fallback = 0);
    double number(std::string_view heading, double fallback = 0);
    Money money(std::string_view heading);
    bool yesNo(std::string_view heading, bool fallback);
    std::uint32_t rgb(std::string_view heading, std::string_view text);
    std::optional<LocalDate> day(std::string_view heading);

    // One of the words of the shop file.
    template <class Choice>
    Choice choice(std::string_view heading, std::initializer_list<Choice> all, Choice fallback) {
        return choiceOf(heading, text(heading), all, fallback);
    }
    template <class Choice>
    Choice choiceOf(std::string_view heading, const std::string& word, std::initializer_list<Choice> all,
                    Choice fallback) {
        if (word.empty())
            return fallback;
        std::string words;
        for (const Choice each : all) {
            if (codeOf(each) == word)
                return each;
            words += (words.empty() ? "" : ", ") + std::string{codeOf(each)};
        }
        wrong(heading, said("“{typed}” is none of {words}.", {{"typed", word}, {"words", words}}));
        return fallback;
    }

    void wrong(std::string_view heading, Sentence what);
    // The first that was wrong, with the line's number and the heading.
    const std::optional<Error>& whatIsWrong() const { return m_wrong; }
    // An error of the action that writes the line.
    Error refused(const Error& error) const;

private:
    const std::map<std::string, std::size_t, std::less<>>& m_columns;
    CsvNumbers& m_numbers;
    const Currency& m_currency;
    CsvRecord m_record;
    std::optional<Error> m_wrong;
};

} // namespace holdfast::db
