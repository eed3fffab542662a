// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a person types to find an order. Every word must be found: at the beginning of a word of its number,
// customer, phone, styles, colours, artwork, wording, shades or place, or from three letters on anywhere
// inside one; one wrong letter in five or more is forgiven where nothing has them right. Digits are also
// looked for in the phone number, whatever signs are between its digits: from three on at its end, from
// five on anywhere. The number of a garment, "418-b", finds its order. Any text may be typed: quotes and
// signs have no meaning of their own.

#include "core/trade/ids.h"
#include "db/sqlite/connection.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

class OrderSearch {
public:
    explicit OrderSearch(std::string_view typed);

    bool isEmpty() const { return m_words.empty(); }
    // Of an order that was looked for by its number alone.
    bool isNumber() const { return m_words.size() == 1 && isDigits(m_words.front()); }
    const std::string& number() const { return m_words.front(); }

    // For order_text MATCH; empty where nothing of it is to be looked for there.
    std::string match(Connection& connection) const;
    // Where digits were typed that may be of a phone number: the orders in which they and the words of
    // `match` are found, the lowest id first.
    std::optional<std::vector<OrderId>> ordersByDigits(Connection& connection,
                                                       const std::string& match) const;

    // The same of an order that has no card.
    struct OrderText {
        std::int64_t number = 0;
        std::string phone;
        std::string words;
    };
    bool matches(const OrderText& order) const;

private:
    static bool isDigits(std::string_view word);
    static bool mayBePhone(const std::string& word);

    std::vector<std::string> m_words; // folded
};

} // namespace holdfast::db
