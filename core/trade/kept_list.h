// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The part of JSON that kept sentences are written in: arrays, strings and whole numbers, without spaces.

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace holdfast {

class KeptItem {
public:
    using List = std::vector<KeptItem>;

    KeptItem(std::string text)
        : m_held(std::move(text)) {}
    KeptItem(const char* text)
        : m_held(std::string{text}) {}
    KeptItem(std::int64_t number)
        : m_held(number) {}
    explicit KeptItem(List list)
        : m_held(std::move(list)) {}

    // Nothing where it is another.
    const std::string* text() const { return std::get_if<std::string>(&m_held); }
    const std::int64_t* number() const { return std::get_if<std::int64_t>(&m_held); }
    const List* list() const { return std::get_if<List>(&m_held); }

private:
    std::variant<std::string, std::int64_t, List> m_held;
};

std::string keptText(const KeptItem& item);

// Nothing where the text is not of this form, or has lists in more lists than a sentence can.
std::optional<KeptItem> keptItem(std::string_view text);

} // namespace holdfast
