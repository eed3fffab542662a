// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What a person types to find an order. Every word must be found: at the beginning of a word of its number,
// customer, phone, styles, colours, artwork, wording, shades or place, or from three letters on anywhere
// inside one. Digits are also looked for in the phone number, however it is written there and here: from
// three on at its end, from five on anywhere, with the country or without. The number of a garment, "418-b",
// finds its order. A word that has a meaning finds the orders of which that is true as well. Any text may be
// typed: quotes and signs have no meaning of their own.
//
// Where nothing is found so, one wrong letter is forgiven (core/trade/near_words.h).

#include "core/trade/phone_number.h"
#include "db/tables/order_meaning.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast::db {

enum class Spelling { Right, Near };

// What was typed; what of it has a meaning is apart.
struct TypedSearch {
    std::string words;
    std::vector<MeantWords> meant{};
    Now now{};
};

class OrderSearch {
public:
    explicit OrderSearch(std::string_view typed)
        : OrderSearch(TypedSearch{std::string(typed)}) {}
    explicit OrderSearch(const TypedSearch& typed);

    const Now& now() const { return m_now; }
    bool isEmpty() const { return m_terms.empty(); }
    // Of an order that was looked for by its number alone.
    bool isNumber() const;
    const std::string& number() const { return m_terms.front().words.front(); }
    // With a word in which a letter may be wrong.
    bool mayBeNear() const;

    // For order_text MATCH; empty where nothing of it is to be looked for there.
    std::string match(Connection& connection, Spelling spelling) const;
    // Where something was typed that the text alone does not show, such as digits of a phone number: the
    // orders in which that and the words of `match` are found, the lowest id first.
    std::optional<std::vector<OrderId>> ordersListed(Connection& connection, const std::string& match) const;

    // The same of an order that has no card.
    struct OrderText {
        std::optional<std::int64_t> number;
        std::string phone;
        std::string words;
        std::vector<LocalDate> days; // on which it was taken, for which it was promised
    };
    bool matches(const OrderText& order, Spelling spelling) const;

private:
    // A word, or words that belong together. They are found in the text one by one; or else one of these is
    // true.
    struct Term {
        std::vector<std::string> words{}; // folded
        std::optional<PhoneNumber> phone{};
        std::optional<OrderMeaning> meaning{};

        bool isOnlyText() const { return !phone && !meaning; }
    };

    void add(std::string_view typed);
    void addNumbers(std::string_view run);

    std::vector<Term> m_terms;
    Now m_now;
};

} // namespace holdfast::db
