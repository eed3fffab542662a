// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/log_text.h"

#include <algorithm>
#include <cstdint>
#include <optional>

namespace holdfast {

namespace {

constexpr std::string_view kUtf8Mark = "\xEF\xBB\xBF";
constexpr std::string_view kLowFirstMark = "\xFF\xFE";
constexpr std::string_view kHighFirstMark = "\xFE\xFF";
constexpr std::size_t kBytesLookedAt = 512;
constexpr std::uint32_t kReplacement = 0xFFFD; // Unicode 15, 3.9: for what is no character

void appendUtf8(std::string& text, std::uint32_t character) {
    const auto add = [&](std::uint32_t byte) { text += static_cast<char>(byte); };
    const auto addRest = [&](int shift) { add(0x80 | ((character >> shift) & 0x3F)); };
    if (character < 0x80) {
        add(character);
    } else if (character < 0x800) {
        add(0xC0 | (character >> 6));
        addRest(0);
    } else if (character < 0x10000) {
        add(0xE0 | (character >> 12));
        addRest(6);
        addRest(0);
    } else {
        add(0xF0 | (character >> 18));
        addRest(12);
        addRest(6);
        addRest(0);
    }
}

// Without a mark: digits, separators and line ends have a zero byte each, always on the same side.
std::optional<bool> isLowByteFirst(std::string_view file) {
    const std::string_view head = file.substr(0, std::min(file.size(), kBytesLookedAt) & ~std::size_t{1});
    std::size_t evenZeros = 0;
    std::size_t oddZeros = 0;
    for (std::size_t at = 0; at < head.size(); ++at) {
        if (head[at] == '\0')
            ++(at % 2 == 0 ? evenZeros : oddZeros);
    }
    const std::size_t most = head.size() / 4; // half of all letters
    if (head.empty() || (evenZeros > 0) == (oddZeros > 0) || std::max(evenZeros, oddZeros) < most)
        return std::nullopt;
    return oddZeros > 0;
}

} // namespace

LogText::LogText(std::string_view file)
    : m_plain(file) {
    if (file.starts_with(kLowFirstMark) || file.starts_with(kHighFirstMark))
        convert(file.substr(kLowFirstMark.size()), file.starts_with(kLowFirstMark));
    else if (const auto lowByteFirst = isLowByteFirst(file))
        convert(file, *lowByteFirst);
    else if (file.starts_with(kUtf8Mark))
        m_plain.remove_prefix(kUtf8Mark.size());
    m_isText = utf8().find('\0') == std::string_view::npos;
}

void LogText::convert(std::string_view utf16, bool lowByteFirst) {
    m_isConverted = true;
    m_converted.reserve(utf16.size() / 2);
    const auto unitAt = [&](std::size_t at) {
        const auto first = static_cast<unsigned char>(utf16[at]);
        const auto second = static_cast<unsigned char>(utf16[at + 1]);
        return static_cast<std::uint32_t>(lowByteFirst ? first | second << 8 : second | first << 8);
    };
    const auto isHighHalf = [](std::uint32_t unit) { return unit >= 0xD800 && unit < 0xDC00; };
    const auto isLowHalf = [](std::uint32_t unit) { return unit >= 0xDC00 && unit < 0xE000; };
    for (std::size_t at = 0; at + 1 < utf16.size(); at += 2) {
        const std::uint32_t unit = unitAt(at);
        if (isHighHalf(unit) && at + 3 < utf16.size() && isLowHalf(unitAt(at + 2))) {
            appendUtf8(m_converted, 0x10000 + ((unit - 0xD800) << 10) + (unitAt(at + 2) - 0xDC00));
            at += 2;
        } else {
            appendUtf8(m_converted, isHighHalf(unit) || isLowHalf(unit) ? kReplacement : unit);
        }
    }
}

} // namespace holdfast
