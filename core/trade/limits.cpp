// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/limits.h"

#include <array>
#include <charconv>
#include <cmath>

namespace holdfast {
namespace {

struct Character {
    char32_t code = 0;
    std::size_t bytes = 0; // 0: no UTF-8
};

// The character that begins the text. Overlong forms, surrogates and codes beyond U+10FFFF are no UTF-8.
Character firstCharacter(std::string_view text) {
    const auto byteAt = [&](std::size_t at) { return static_cast<unsigned char>(text[at]); };
    const unsigned char lead = byteAt(0);
    if (lead < 0x80)
        return {lead, 1};
    const std::size_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    if (lead < 0xC2 || lead > 0xF4 || text.size() < length)
        return {};
    char32_t code = lead & (0xFFU >> (length + 1));
    for (std::size_t at = 1; at < length; ++at) {
        if ((byteAt(at) & 0xC0U) != 0x80U)
            return {};
        code = (code << 6U) | (byteAt(at) & 0x3FU);
    }
    const bool isOverlong = (length == 3 && code < 0x800) || (length == 4 && code < 0x10000);
    const bool isSurrogate = code >= 0xD800 && code <= 0xDFFF;
    if (isOverlong || isSurrogate || code > 0x10FFFF)
        return {};
    return {code, length};
}

bool isSpace(char32_t code) {
    return code == ' ' || (code >= 0x09 && code <= 0x0D) || code == 0x85 || code == 0xA0 || code == 0x1680 ||
           (code >= 0x2000 && code <= 0x200B) || code == 0x2028 || code == 0x2029 || code == 0x202F ||
           code == 0x205F || code == 0x3000 || code == 0xFEFF;
}

bool isControl(char32_t code, bool mayBreakLines) {
    if (mayBreakLines && (code == '\n' || code == '\t'))
        return false;
    return code < 0x20 || (code >= 0x7F && code <= 0x9F) || code == 0x2028 || code == 0x2029;
}

struct Reading {
    std::size_t characters = 0;
    bool isText = true;
    bool hasControl = false;
};

Reading readThrough(std::string_view text, bool mayBreakLines) {
    Reading reading;
    while (!text.empty()) {
        const Character next = firstCharacter(text);
        if (next.bytes == 0) {
            reading.isText = false;
            return reading;
        }
        reading.hasControl = reading.hasControl || isControl(next.code, mayBreakLines);
        ++reading.characters;
        text.remove_prefix(next.bytes);
    }
    return reading;
}

std::string_view withoutLeadingSpace(std::string_view text) {
    while (!text.empty()) {
        const Character next = firstCharacter(text);
        if (next.bytes == 0 || !isSpace(next.code))
            break;
        text.remove_prefix(next.bytes);
    }
    return text;
}

std::string_view withoutTrailingSpace(std::string_view text) {
    while (!text.empty()) {
        std::size_t start = text.size() - 1;
        while (start > 0 && (static_cast<unsigned char>(text[start]) & 0xC0U) == 0x80U)
            --start;
        const std::string_view last = text.substr(start);
        const Character character = firstCharacter(last);
        if (character.bytes != last.size() || !isSpace(character.code))
            break;
        text = text.substr(0, start);
    }
    return text;
}

Error outside(const NumberLimits& limits, std::optional<Value> number) {
    std::vector<NamedValue> values{
        {"what", limits.what}, {"least", limits.least}, {"most", limits.most}, {"unit", limits.unit}};
    if (!number)
        return fieldError(std::string{limits.field}, said("{what} must be {least} to {most}{unit}.", values));
    values.push_back({"number", std::move(*number)});
    return fieldError(std::string{limits.field},
                      said("{what} must be {least} to {most}{unit}, not {number}{unit}.", values));
}

} // namespace

std::string trimmed(std::string_view text) {
    return std::string{withoutTrailingSpace(withoutLeadingSpace(text))};
}

std::optional<std::size_t> characterCount(std::string_view text) {
    const Reading reading = readThrough(text, true);
    return reading.isText ? std::optional{reading.characters} : std::nullopt;
}

Result<std::string> typedText(std::string_view text, const TextLimits& limits) {
    std::string kept = trimmed(text);
    const auto wrong = [&](Sentence why) { return fieldError(std::string{limits.field}, std::move(why)); };
    const Reading reading = readThrough(kept, limits.mayBreakLines);
    if (!reading.isText)
        return wrong(said("{what} has bytes that are not text.", {{"what", limits.what}}));
    if (reading.hasControl)
        return wrong(said("{what} may hold no control characters.", {{"what", limits.what}}));
    const std::vector<NamedValue> most{
        {"what", limits.what}, {"most", limits.most}, {"number", reading.characters}};
    if (reading.characters > limits.most && limits.least == 0)
        return wrong(said("{what} may have up to {most} characters, not {number}.", most));
    if (reading.characters < limits.least || reading.characters > limits.most)
        return wrong(said("{what} needs {least} to {most} characters, not {number}.",
                          {{"what", limits.what},
                           {"least", limits.least},
                           {"most", limits.most},
                           {"number", reading.characters}}));
    return kept;
}

Result<Done> within(std::int64_t number, const NumberLimits& limits) {
    if (number < limits.least || number > limits.most)
        return outside(limits, number);
    return Done{};
}

Result<Done> measuredWithin(double number, const NumberLimits& limits) {
    if (!std::isfinite(number))
        return outside(limits, {});
    if (number < static_cast<double>(limits.least) || number > static_cast<double>(limits.most))
        return outside(limits, Decimal{number, 1});
    return Done{};
}

std::optional<Error> firstError(std::initializer_list<Result<Done>> checks) {
    for (const Result<Done>& check : checks)
        if (!check.ok())
            return check.error();
    return std::nullopt;
}

std::string groupedNumber(std::int64_t number) {
    // Negated as unsigned, so that the lowest number has its digits, too.
    const bool isNegative = number < 0;
    const auto magnitude =
        isNegative ? 0U - static_cast<std::uint64_t>(number) : static_cast<std::uint64_t>(number);
    std::string digits = std::to_string(magnitude);
    for (std::size_t at = digits.size(); at > 3;) {
        at -= 3;
        digits.insert(at, ",");
    }
    return isNegative ? "−" + digits : digits;
}

std::string decimalNumber(double number, int decimals) {
    std::array<char, 400> written{};
    const auto end = std::to_chars(written.data(), written.data() + written.size(), std::abs(number),
                                   std::chars_format::fixed, decimals);
    const std::string digits{written.data(), end.ptr};
    const bool isZero = digits.find_first_not_of("0.") == std::string::npos;
    return number < 0 && !isZero ? "−" + digits : digits;
}

} // namespace holdfast
