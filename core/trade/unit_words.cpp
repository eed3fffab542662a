// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/unit_words.h"

#include <array>
#include <charconv>
#include <cmath>

namespace holdfast {

std::string numberWords(double number) {
    const double tenths = std::round(number * 10.0) / 10.0;
    const bool isWhole = tenths == std::trunc(tenths);
    std::array<char, 48> text{};
    // Adding zero turns a rounded "-0" into "0".
    const auto [end, error] = std::to_chars(text.data(), text.data() + text.size(), tenths + 0.0,
                                            std::chars_format::fixed, isWhole ? 0 : 1);
    return error == std::errc{} ? std::string(text.data(), end) : "?";
}

std::string temperatureWords(Celsius temperature) {
    return numberWords(temperature.value) + " °C";
}

std::string lengthWords(Millimetres length) {
    return std::to_string(length.value) + " mm";
}

std::string sizeWords(Millimetres width, Millimetres height) {
    return std::to_string(width.value) + " × " + std::to_string(height.value) + " mm";
}

std::string secondsWords(Seconds seconds) {
    return std::to_string(seconds.count()) + " s";
}

std::string bandWords(double low, double high, std::string_view unit) {
    return numberWords(low) + "–" + numberWords(high) + " " + std::string(unit);
}

std::string countWords(std::int64_t count, std::string_view one) {
    return std::to_string(count) + " " + std::string(one) + (count == 1 ? "" : "s");
}

std::string withCapital(std::string text) {
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text;
}

std::string inSmallLetters(std::string text) {
    for (char& letter : text)
        if (letter >= 'A' && letter <= 'Z')
            letter = static_cast<char>(letter - 'A' + 'a');
    return text;
}

} // namespace holdfast
