// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/language.h"

#include "core/trade/assertion.h"
#include "core/trade/limits.h"
#include "core/trade/unit_words.h"

#include <variant>

namespace holdfast {

namespace {

std::string englishValue(const std::string& name) {
    return name;
}

std::string englishValue(std::int64_t count) {
    return groupedNumber(count);
}

std::string englishValue(Numeral numeral) {
    return std::to_string(numeral.value);
}

std::string englishValue(const Decimal& number) {
    return number.places ? decimalNumber(number.value, *number.places) : numberWords(number.value);
}

std::string englishValue(LocalDate date) {
    return spokenDay(date);
}

std::string englishValue(DateWithYear date) {
    return spokenDate(date.date);
}

constexpr std::size_t kWeekdayLetters = 3; // "Wed" of "Wed 25 Nov"

std::string englishValue(Weekday day) {
    return spokenDay(day.date).substr(0, kWeekdayLetters);
}

std::string englishValue(DayOfMonth day) {
    return spokenDay(day.date).substr(kWeekdayLetters + 1);
}

std::string englishValue(const DaySpan& span) {
    return spokenSpan(span);
}

std::string englishValue(const NearSpan& near) {
    return nearSpan(near.span);
}

std::string englishValue(LocalTime time) {
    return spokenDay(dateOf(time)) + " " + clockTime(time);
}

std::string englishValue(TimeOfDay time) {
    return clockTime(time.time);
}

std::string englishValue(const Amount& amount) {
    return spokenAmount(amount.money, amount.currency);
}

std::string englishValue(Millimetres length) {
    return lengthWords(length);
}

std::string englishValue(InMetres length) {
    return decimalNumber(length.length.metres(), 2) + " m";
}

std::string englishValue(const Extent& size) {
    return sizeWords(size.width, size.height);
}

std::string englishValue(Celsius temperature) {
    return temperatureWords(temperature);
}

std::string englishValue(Seconds seconds) {
    return secondsWords(seconds);
}

std::string englishValue(const Parts&) {
    HOLDFAST_ASSERT(false);
    return {};
}

} // namespace

std::string Language::pattern(std::string_view english, std::optional<std::int64_t> count) const {
    return std::string{englishForm(english, count)};
}

std::string Language::written(const Value& value) const {
    return std::visit([](const auto& held) { return englishValue(held); }, value.held());
}

std::string Language::withinLine(std::string text) const {
    if (!text.empty() && text.front() >= 'A' && text.front() <= 'Z')
        text.front() = static_cast<char>(text.front() - 'A' + 'a');
    return text;
}

const Language& englishLanguage() {
    static const Language language;
    return language;
}

std::string_view englishForm(std::string_view pattern, std::optional<std::int64_t> count) {
    const auto bar = pattern.find('|');
    if (!count || bar == std::string_view::npos)
        return pattern;
    return *count == 1 ? pattern.substr(0, bar) : pattern.substr(bar + 1);
}

} // namespace holdfast
