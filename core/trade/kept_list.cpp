// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/kept_list.h"

#include <charconv>

namespace holdfast {

namespace {

constexpr int kDeepestList = 32;
constexpr std::string_view kHexDigits = "0123456789abcdef";

void addText(std::string& to, std::string_view text) {
    to += '"';
    for (const char letter : text) {
        const auto code = static_cast<unsigned char>(letter);
        if (letter == '"' || letter == '\\')
            (to += '\\') += letter;
        else if (code < 0x20)
            ((to += "\\u00") += kHexDigits[code >> 4]) += kHexDigits[code & 0xF];
        else
            to += letter;
    }
    to += '"';
}

void addItem(std::string& to, const KeptItem& item) {
    if (const auto* text = item.text())
        return addText(to, *text);
    if (const auto* number = item.number()) {
        to += std::to_string(*number);
        return;
    }
    to += '[';
    for (const KeptItem& each : *item.list()) {
        if (to.back() != '[')
            to += ',';
        addItem(to, each);
    }
    to += ']';
}

class ListReader {
public:
    explicit ListReader(std::string_view text)
        : m_text(text) {}

    std::optional<KeptItem> whole() {
        auto item = next(0);
        return m_at == m_text.size() ? item : std::nullopt;
    }

private:
    std::optional<KeptItem> next(int depth) {
        if (depth > kDeepestList || m_at >= m_text.size())
            return std::nullopt;
        if (takes('['))
            return list(depth);
        if (takes('"'))
            return text();
        std::int64_t number = 0;
        const auto [end, code] = std::from_chars(m_text.data() + m_at, m_text.data() + m_text.size(), number);
        if (code != std::errc{})
            return std::nullopt;
        m_at = static_cast<std::size_t>(end - m_text.data());
        return KeptItem{number};
    }

    bool takes(char letter) {
        const bool isThere = m_at < m_text.size() && m_text[m_at] == letter;
        m_at += isThere ? 1 : 0;
        return isThere;
    }

    std::optional<KeptItem> list(int depth) {
        KeptItem::List items;
        if (takes(']'))
            return KeptItem{std::move(items)};
        do {
            auto item = next(depth + 1);
            if (!item)
                return std::nullopt;
            items.push_back(std::move(*item));
        } while (takes(','));
        return takes(']') ? std::optional{KeptItem{std::move(items)}} : std::nullopt;
    }

    std::optional<KeptItem> text() {
        std::string text;
        while (m_at < m_text.size()) {
            const char letter = m_text[m_at++];
            if (letter == '"')
                return KeptItem{std::move(text)};
            if (letter != '\\') {
                text += letter;
                continue;
            }
            const auto escaped = escapedLetter();
            if (!escaped)
                return std::nullopt;
            text += *escaped;
        }
        return std::nullopt;
    }

    // Behind a backslash: a quote, a backslash, or "u00" and two digits of a control character.
    std::optional<char> escapedLetter() {
        if (takes('"'))
            return '"';
        if (takes('\\'))
            return '\\';
        constexpr std::string_view kControl = "u00";
        if (m_text.substr(m_at, kControl.size()) != kControl || m_at + 5 > m_text.size())
            return std::nullopt;
        const auto high = kHexDigits.find(m_text[m_at + 3]);
        const auto low = kHexDigits.find(m_text[m_at + 4]);
        if (high > 1 || low == std::string_view::npos)
            return std::nullopt;
        m_at += 5;
        return static_cast<char>(high << 4 | low);
    }

    std::string_view m_text;
    std::size_t m_at = 0;
};

} // namespace

std::string keptText(const KeptItem& item) {
    std::string text;
    addItem(text, item);
    return text;
}

std::optional<KeptItem> keptItem(std::string_view text) {
    return ListReader{text}.whole();
}

} // namespace holdfast
