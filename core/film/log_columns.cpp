// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/log_columns.h"

#include <algorithm>
#include <array>
#include <initializer_list>

namespace holdfast {

namespace {

constexpr std::size_t kLinesLookedAt = 60;
constexpr std::size_t kLongestQuoted = 4096; // of a line with quotes: a loose quote must not eat the log

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && (text.front() == ' ' || text.front() == '\t'))
        text.remove_prefix(1);
    while (!text.empty() && (text.back() == ' ' || text.back() == '\t'))
        text.remove_suffix(1);
    return text;
}

// Lower-case words of a column's name; the degree sign falls away in whichever encoding, "℉" becomes "f".
std::vector<std::string> wordsOf(std::string_view name) {
    std::vector<std::string> words;
    std::string word;
    const auto close = [&] {
        if (!word.empty())
            words.push_back(std::move(word));
        word.clear();
    };
    for (std::size_t at = 0; at < name.size(); ++at) {
        const char character = name[at];
        if (name.substr(at).starts_with("\u2109")) {
            close();
            words.emplace_back("f");
            at += 2;
        } else if (character >= 'A' && character <= 'Z') {
            word += static_cast<char>(character - 'A' + 'a');
        } else if (character >= 'a' && character <= 'z') {
            word += character;
        } else if (character == '%') {
            close();
            words.emplace_back("%");
        } else {
            close();
        }
    }
    close();
    return words;
}

bool names(const std::vector<std::string>& words, std::initializer_list<std::string_view> parts) {
    return std::ranges::any_of(words, [&](const std::string& word) {
        return std::ranges::any_of(
            parts, [&](std::string_view part) { return word.find(part) != std::string::npos; });
    });
}

bool isOneOf(const std::vector<std::string>& words, std::initializer_list<std::string_view> wanted) {
    return std::ranges::any_of(
        words, [&](const std::string& word) { return std::ranges::find(wanted, word) != wanted.end(); });
}

bool isDewPoint(const std::vector<std::string>& words) {
    return names(words, {"dew", "taupunkt"});
}

bool namesTemperature(const std::vector<std::string>& words) {
    return !isDewPoint(words) && names(words, {"temp", "celsius", "fahrenheit"});
}

bool hasTemperatureUnit(const std::vector<std::string>& words) {
    return !isDewPoint(words) && isOneOf(words, {"c", "f", "degc", "degf", "t"});
}

bool namesHumidity(const std::vector<std::string>& words) {
    return !names(words, {"abs"}) &&
           (names(words, {"humid", "feucht", "vocht"}) || isOneOf(words, {"rh", "rf", "hum"}));
}

bool hasHumidityUnit(const std::vector<std::string>& words) {
    return isOneOf(words, {"%"}) && !names(words, {"batt"});
}

bool namesDate(const std::vector<std::string>& words) {
    return names(words, {"date", "datum", "day"});
}

bool namesClock(const std::vector<std::string>& words) {
    return !names(words, {"elapsed"}) && names(words, {"time", "zeit", "clock", "heure", "tijd"});
}

} // namespace

LogRecords::LogRecords(std::string_view text, char separator)
    : m_text(text)
    , m_separator(separator) {}

bool LogRecords::next() {
    while (m_at < m_text.size()) {
        m_line = m_nextLine;
        const std::size_t end = std::min(m_text.find('\n', m_at), m_text.size());
        std::string_view record = m_text.substr(m_at, end - m_at);
        if (record.find('"') != std::string_view::npos) {
            if (splitQuoted())
                return true;
            // A quote that nothing closes is an ordinary character.
        }
        m_at = std::min(end + 1, m_text.size());
        ++m_nextLine;
        if (record.ends_with('\r'))
            record.remove_suffix(1);
        if (trimmed(record).empty())
            continue;
        splitPlain(record);
        return true;
    }
    return false;
}

void LogRecords::splitPlain(std::string_view record) {
    m_fields.clear();
    std::size_t begins = 0;
    for (std::size_t at = 0; at < record.size(); ++at) {
        if (record[at] == m_separator) {
            m_fields.push_back(trimmed(record.substr(begins, at - begins)));
            begins = at + 1;
        }
    }
    m_fields.push_back(trimmed(record.substr(begins)));
}

bool LogRecords::splitQuoted() {
    const std::size_t begins = m_at;
    const std::size_t ends = std::min(m_text.size(), begins + kLongestQuoted);
    std::size_t lines = m_nextLine;
    m_unquoted.assign(1, {});
    bool isQuoted = false;
    std::size_t at = begins;
    for (; at < ends; ++at) {
        const char character = m_text[at];
        std::string& field = m_unquoted.back();
        if (character == '\n')
            ++lines;
        if (isQuoted) {
            if (character != '"') {
                field += character;
            } else if (at + 1 < ends && m_text[at + 1] == '"') {
                field += '"';
                ++at;
            } else {
                isQuoted = false;
            }
        } else if (character == '"' && trimmed(field).empty()) {
            field.clear();
            isQuoted = true;
        } else if (character == m_separator) {
            m_unquoted.emplace_back();
        } else if (character == '\n') {
            ++at;
            break;
        } else if (character != '\r') {
            field += character;
        }
    }
    if (isQuoted)
        return false;
    m_at = at;
    m_nextLine = at == m_text.size() && m_text.back() != '\n' ? lines + 1 : lines;
    m_fields.clear();
    for (const std::string& field : m_unquoted)
        m_fields.push_back(trimmed(field));
    return true;
}

char separatorOf(std::string_view text) {
    constexpr std::array kSeparators{'\t', ';', ','};
    // Where hardly a line has three fields, the log is of temperature alone.
    for (const std::size_t fields : {3U, 2U}) {
        char best = ',';
        std::size_t mostLines = 0;
        std::size_t all = 0;
        for (const char separator : kSeparators) {
            LogRecords records{text, separator};
            std::size_t lines = 0;
            std::size_t looked = 0;
            for (; looked < kLinesLookedAt && records.next(); ++looked)
                lines += records.fields().size() >= fields ? 1 : 0;
            all = looked;
            if (lines > mostLines) {
                best = separator;
                mostLines = lines;
            }
        }
        if (mostLines * 2 >= all && mostLines > 0)
            return best;
    }
    return ',';
}

std::optional<LogColumns> columnsOf(const std::vector<std::string_view>& header) {
    std::vector<std::vector<std::string>> named;
    named.reserve(header.size());
    for (const std::string_view field : header)
        named.push_back(wordsOf(field));

    std::vector<bool> isTaken(named.size(), false);
    const auto first = [&](auto&& matches) -> std::optional<std::size_t> {
        for (std::size_t column = 0; column < named.size(); ++column) {
            if (!isTaken[column] && matches(named[column])) {
                isTaken[column] = true;
                return column;
            }
        }
        return std::nullopt;
    };

    auto humidity = first(namesHumidity);
    if (!humidity)
        humidity = first(hasHumidityUnit);
    auto temperature = first(namesTemperature);
    if (!temperature)
        temperature = first(hasTemperatureUnit);
    const auto date = first(namesDate);
    const auto clock = first(namesClock);
    if (!temperature || (!date && !clock))
        return std::nullopt;

    LogColumns columns;
    columns.humidity = humidity;
    columns.temperature = *temperature;
    columns.time = date ? *date : *clock;
    // "Date and time" in one column, and an idle column named for time next to it, is not taken apart.
    if (date && clock && !namesClock(named[*date]))
        columns.clock = clock;
    const std::vector<std::string>& words = named[*temperature];
    columns.isFahrenheit = isOneOf(words, {"f", "degf", "tempf"}) || names(words, {"fahrenheit"});
    return columns;
}

} // namespace holdfast
