// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a form may hold: how long a text may be, how large a number. Each answers in a sentence
// that says what is allowed, with the name of the field.
//
// Texts are UTF-8 and are counted in characters (code points), so that "Zoë" has three.

#include "core/trade/result.h"

#include <cstddef>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

namespace holdfast {

// Without white space at either end; no-break, zero-width and other Unicode spaces count as such.
std::string trimmed(std::string_view text);

// None where the bytes are no UTF-8.
std::optional<std::size_t> characterCount(std::string_view text);

struct TextLimits {
    std::string_view field; // "customerName"
    Phrase what;            // "The customer’s name", as the sentence begins
    std::size_t least = 1;
    std::size_t most = 80;
    bool mayBreakLines = false;
};

// The text trimmed, or what is wrong with it. Control characters are refused; line breaks unless allowed.
Result<std::string> typedText(std::string_view text, const TextLimits& limits);

struct NumberLimits {
    std::string_view field;
    Sentence what; // "The width"
    std::int64_t least = 0;
    std::int64_t most = 0;
    std::string_view unit = {}; // " mm", " °C", " %"
};

Result<Done> within(std::int64_t number, const NumberLimits& limits);
// Refuses what is no number, too.
Result<Done> measuredWithin(double number, const NumberLimits& limits);

// The first of the checks that failed.
std::optional<Error> firstError(std::initializer_list<Result<Done>> checks);

// "5,000", "−40".
std::string groupedNumber(std::int64_t number);
// With this many decimals and a point, whatever the machine's language: "19.0", "−3.5".
std::string decimalNumber(double number, int decimals);

} // namespace holdfast
