// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/money.h"

#include "core/trade/assertion.h"

#include <algorithm>
#include <limits>

namespace holdfast {

namespace {

// Products of an amount and a factor may pass 64 bits before they are divided again.
__extension__ using Wide = __int128;

std::int64_t narrowed(Wide value) {
    HOLDFAST_ASSERT(value <= std::numeric_limits<std::int64_t>::max() &&
                    value >= std::numeric_limits<std::int64_t>::min());
    return static_cast<std::int64_t>(value);
}

bool isDigit(char character) {
    return character >= '0' && character <= '9';
}

std::string_view withoutSpacesAround(std::string_view text) {
    const auto isSpace = [](char character) { return character == ' ' || character == '\t'; };
    while (!text.empty() && isSpace(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && isSpace(text.back()))
        text.remove_suffix(1);
    return text;
}

// Takes the currency's sign or code off the front or the back.
std::string_view withoutCurrency(std::string_view text, const Currency& currency) {
    for (const std::string& mark : {currency.sign, currency.code}) {
        if (mark.empty())
            continue;
        if (text.starts_with(mark))
            return withoutSpacesAround(text.substr(mark.size()));
        if (text.ends_with(mark))
            return withoutSpacesAround(text.substr(0, text.size() - mark.size()));
    }
    return text;
}

// Where the decimals begin: at the last mark, if it is the only one of its kind.
std::size_t decimalMarkOf(std::string_view text, const Currency& currency) {
    const std::size_t last = text.find_last_of(".,");
    const bool isMark =
        last != std::string_view::npos && currency.exponent > 0 && text.find(text[last]) == last;
    return isMark ? last : std::string_view::npos;
}

// "1,451" as "1451": whole groups of three after one kind of mark. Nothing where the groups are others.
std::optional<std::string> withoutGroups(std::string_view units) {
    const std::size_t first = units.find_first_of("., ");
    if (first == std::string_view::npos)
        return std::string{units};
    if (first == 0 || first > 3)
        return std::nullopt;
    std::string digits{units.substr(0, first)};
    for (std::size_t at = first; at < units.size(); at += 4) {
        const std::string_view group = units.substr(at + 1, 3);
        if (units[at] != units[first] || group.size() < 3)
            return std::nullopt;
        digits += group;
    }
    return digits;
}

bool takeMinus(std::string_view& text) {
    constexpr std::string_view kTypesetMinus = "\u2212";
    for (const std::string_view minus : {std::string_view{"-"}, kTypesetMinus}) {
        if (text.starts_with(minus)) {
            text = withoutSpacesAround(text.substr(minus.size()));
            return true;
        }
    }
    return false;
}

} // namespace

Money divided(Money amount, std::int64_t numerator, std::int64_t denominator, Rounding rounding) {
    HOLDFAST_ASSERT(denominator > 0);
    const Wide product = static_cast<Wide>(amount.minor) * numerator;
    const bool isNegative = product < 0;
    const Wide magnitude = isNegative ? -product : product;
    Wide quotient = magnitude / denominator;
    const Wide twiceRest = (magnitude % denominator) * 2;
    const bool isHalf = twiceRest == denominator;
    if (twiceRest > denominator || (isHalf && (rounding == Rounding::HalfUp || quotient % 2 != 0)))
        ++quotient;
    return {narrowed(isNegative ? -quotient : quotient)};
}

Money partOf(Money amount, Percentage share, Rounding rounding) {
    return divided(amount, share.hundredths, kWholePercentage.hundredths, rounding);
}

std::string plainAmount(Money amount, const Currency& currency) {
    const bool isNegative = amount.minor < 0;
    const Wide magnitude = isNegative ? -static_cast<Wide>(amount.minor) : static_cast<Wide>(amount.minor);
    std::string digits = std::to_string(static_cast<std::uint64_t>(magnitude));
    const auto exponent = static_cast<std::size_t>(std::max(currency.exponent, 0));
    if (exponent > 0) {
        if (digits.size() <= exponent)
            digits.insert(0, exponent + 1 - digits.size(), '0');
        digits.insert(digits.size() - exponent, 1, '.');
    }
    return isNegative ? "-" + digits : digits;
}

std::string groupedAmount(Money amount, const Currency& currency) {
    std::string written = plainAmount(amount, currency);
    const std::size_t first = amount.minor < 0 ? 1 : 0;
    for (std::size_t at = std::min(written.find('.'), written.size()); at > first + 3;) {
        at -= 3;
        written.insert(at, 1, ',');
    }
    return written;
}

std::string spokenAmount(Money amount, const Currency& currency) {
    const std::string written = groupedAmount(amount, currency);
    return amount.minor < 0 ? "-" + currency.sign + written.substr(1) : currency.sign + written;
}

std::optional<Money> parseAmount(std::string_view text, const Currency& currency) {
    text = withoutSpacesAround(text);
    bool isNegative = takeMinus(text);
    text = withoutCurrency(text, currency);
    if (!isNegative)
        isNegative = takeMinus(text);

    const std::size_t mark = decimalMarkOf(text, currency);
    const auto ungrouped = withoutGroups(text.substr(0, mark));
    if (!ungrouped)
        return std::nullopt;
    const std::string& units = *ungrouped;
    const std::string_view decimals =
        mark == std::string_view::npos ? std::string_view{} : text.substr(mark + 1);
    const auto exponent = static_cast<std::size_t>(std::max(currency.exponent, 0));
    if (units.empty() && decimals.empty())
        return std::nullopt;
    if (mark != std::string_view::npos && (decimals.empty() || decimals.size() > exponent))
        return std::nullopt;
    if (!std::ranges::all_of(units, isDigit) || !std::ranges::all_of(decimals, isDigit))
        return std::nullopt;

    constexpr Wide kLargest = std::numeric_limits<std::int64_t>::max();
    Wide minor = 0;
    const auto append = [&](char digit) {
        minor = minor * 10 + (digit - '0');
        return minor <= kLargest;
    };
    for (const char digit : units) {
        if (!append(digit))
            return std::nullopt;
    }
    for (std::size_t place = 0; place < exponent; ++place) {
        if (!append(place < decimals.size() ? decimals[place] : '0'))
            return std::nullopt;
    }
    return Money{narrowed(isNegative ? -minor : minor)};
}

std::optional<Percentage> parsePercentage(std::string_view text) {
    constexpr int kDecimals = 2;
    const auto read = parseAmount(text, Currency{{}, "%", kDecimals});
    return read ? std::optional{Percentage{read->minor}} : std::nullopt;
}

std::vector<Money> sharedOut(Money amount, std::span<const Money> weights) {
    HOLDFAST_ASSERT(!weights.empty());
    Wide whole = 0;
    for (const Money weight : weights) {
        HOLDFAST_ASSERT(weight >= Money{});
        whole += weight.minor;
    }
    const bool isEven = whole == 0;
    if (isEven)
        whole = static_cast<Wide>(weights.size());
    const Wide magnitude = amount.minor < 0 ? -static_cast<Wide>(amount.minor) : amount.minor;
    struct Part {
        Wide whole;
        Wide rest;
        std::size_t at;
    };
    std::vector<Part> parts;
    Wide left = magnitude;
    for (const Money weight : weights) {
        const Wide share = magnitude * (isEven ? 1 : weight.minor);
        parts.push_back({share / whole, share % whole, parts.size()});
        left -= parts.back().whole;
    }
    std::vector<Part> byRest = parts;
    std::ranges::stable_sort(byRest, std::ranges::greater{}, &Part::rest);
    for (std::size_t at = 0; left > 0; ++at, --left)
        ++parts[byRest[at].at].whole;
    std::vector<Money> shares;
    for (const Part& part : parts)
        shares.push_back({narrowed(amount.minor < 0 ? -part.whole : part.whole)});
    return shares;
}

} // namespace holdfast
