// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/log_measures.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace holdfast {

namespace {

// A number and the unit written after it, if any.
struct Measured {
    double number = 0;
    std::string_view unit;
};

std::optional<Measured> readMeasured(std::string_view field, bool decimalComma) {
    if (field.starts_with('+'))
        field.remove_prefix(1);
    std::array<char, 32> digits{};
    std::size_t length = 0;
    bool hasPoint = false;
    for (; length < field.size() && length < digits.size(); ++length) {
        const char character = field[length];
        const bool isPoint = character == '.' || (decimalComma && character == ',');
        const bool isNumeral = (character >= '0' && character <= '9') || (character == '-' && length == 0);
        if (!isNumeral && (!isPoint || hasPoint))
            break;
        hasPoint = hasPoint || isPoint;
        digits[length] = isPoint ? '.' : character;
    }
    Measured measured;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + length, measured.number);
    if (error != std::errc{} || end != digits.data() + length || !std::isfinite(measured.number))
        return std::nullopt;
    measured.unit = field.substr(length);
    while (measured.unit.starts_with(' '))
        measured.unit.remove_prefix(1);
    return measured;
}

std::string_view withoutDegreeSign(std::string_view unit) {
    for (const std::string_view sign :
         {std::string_view{"\u00B0"}, std::string_view{"\xB0"}, std::string_view{"\u00BA"}}) {
        if (unit.starts_with(sign))
            return unit.substr(sign.size());
    }
    return unit;
}

} // namespace

std::optional<Celsius> readLoggedTemperature(std::string_view field, bool decimalComma, bool& isFahrenheit) {
    const auto measured = readMeasured(field, decimalComma);
    if (!measured)
        return std::nullopt;
    const std::string_view unit = withoutDegreeSign(measured->unit);
    if (unit == "F" || unit == "f")
        isFahrenheit = true;
    else if (unit == "C" || unit == "c")
        isFahrenheit = false;
    else if (!measured->unit.empty())
        return std::nullopt;
    return Celsius{isFahrenheit ? (measured->number - 32.0) * 5.0 / 9.0 : measured->number};
}

std::optional<Humidity> readLoggedHumidity(std::string_view field, bool decimalComma) {
    const auto measured = readMeasured(field, decimalComma);
    constexpr std::array<std::string_view, 6> kUnits{"", "%", "%RH", "% RH", "%rh", "% rh"};
    if (!measured || std::ranges::find(kUnits, measured->unit) == kUnits.end())
        return std::nullopt;
    if (measured->number < 0 || measured->number > 100)
        return std::nullopt;
    return Humidity{measured->number};
}

} // namespace holdfast
