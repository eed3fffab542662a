// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/order_search.h"

#include "core/trade/folded.h"
#include "core/trade/near_words.h"
#include "core/trade/paper_code.h"
#include "db/tables/shop_phones.h"
#include "db/tables/shop_words.h"

#include <algorithm>
#include <cctype>
#include <optional>

namespace holdfast::db {

namespace {

constexpr std::size_t kInsideFrom = 3;      // letters that are looked for anywhere inside a word
constexpr std::size_t kNearFrom = 5;        // letters that may have a slip of the hand in them
constexpr std::size_t kPhoneEndFrom = 3;    // digits at the end of a phone number
constexpr std::size_t kPhoneInsideFrom = 5; // digits anywhere in it
// More words of the shop than this hold what was typed: too little was typed to look inside words.
constexpr std::size_t kMostWords = 1000;

bool isPartOfWord(char each) {
    // Letters and digits of any script belong to a word; the signs of ASCII end it, as the index has it.
    return static_cast<unsigned char>(each) >= 0x80 || std::isalnum(static_cast<unsigned char>(each));
}

std::vector<std::string> wordsOf(std::string_view text) {
    std::vector<std::string> words(1);
    for (const char each : folded(text)) {
        if (isPartOfWord(each))
            words.back() += each;
        else if (!words.back().empty())
            words.emplace_back();
    }
    if (words.back().empty())
        words.pop_back();
    return words;
}

// "ışık" → "işik". The i without a dot is a letter of its own to the index, yet its capital is the I of every
// other language: "Işık" is kept with one dot, and typed in small letters it has none.
constexpr std::string_view kDotless = "\u0131";

std::string withDots(std::string text) {
    for (std::size_t at = text.find(kDotless); at != std::string::npos; at = text.find(kDotless, at))
        text.replace(at, kDotless.size(), "i");
    return text;
}

std::string onlyDigits(std::string_view text) {
    std::string digits;
    std::ranges::copy_if(text, std::back_inserter(digits),
                         [](char each) { return each >= '0' && each <= '9'; });
    return digits;
}

// A word of the shop, and where what was typed is in it.
struct Place {
    std::size_t at = std::string::npos;
    bool isByIndex = false; // it begins with what was typed as it was typed: the index finds it

    bool isThere() const { return at != std::string::npos; }
};

Place placeIn(const std::string& word, const std::string& dotted, const std::string& typed) {
    const bool isDotless = word.find(kDotless) != std::string::npos;
    const std::size_t at = isDotless ? withDots(word).find(dotted) : word.find(dotted);
    return {at, at == 0 && dotted == typed && !isDotless};
}

// "far" → every word of the shop that it is a part of, and those that begin with it but for a dot; none where
// those are too many. What has a letter in it is in no number.
std::vector<std::string> wordsWith(Connection& connection, const std::string& part) {
    std::vector<std::string> with;
    const std::string dotted = withDots(part);
    const auto shop = wordsOfShop(connection);
    for (const std::string& word : shop->words) {
        const Place place = placeIn(word, dotted, part);
        if (place.isThere() && !place.isByIndex && (place.at == 0 || part.size() >= kInsideFrom))
            with.push_back(word);
    }
    if (with.size() > kMostWords)
        with.clear();
    return with;
}

// "farant" → the same, or where no word of the shop has it in it those that it is the beginning of but for
// one letter. Two letters are in no number, nor nearly.
std::vector<std::string> wordsWithOrNear(Connection& connection, const std::string& typed) {
    std::vector<std::string> with;
    std::vector<std::string> near;
    const std::string dotted = withDots(typed);
    bool isInAny = false;
    const auto shop = wordsOfShop(connection);
    for (const std::string& word : shop->words) {
        const Place place = placeIn(word, dotted, typed);
        isInAny = isInAny || place.isThere();
        if (place.isThere() && !place.isByIndex && with.size() <= kMostWords)
            with.push_back(word);
        else if (!isInAny && near.size() < kMostWords && isNearlyBeginningOf(dotted, withDots(word)))
            near.push_back(word);
    }
    if (with.size() > kMostWords)
        with.clear();
    if (!isInAny && typed.size() - onlyDigits(typed).size() < 2)
        for (const std::string& number : shop->numbers)
            if (near.size() < kMostWords && isNearlyBeginningOf(dotted, number))
                near.push_back(number);
    return isInAny ? with : near;
}

// Besides those that begin with it.
std::vector<std::string> otherWords(Connection& connection, const std::string& typed) {
    if (typed.size() >= kNearFrom && onlyDigits(typed).size() < typed.size())
        return wordsWithOrNear(connection, typed);
    const bool mayBeInside = typed.size() >= kInsideFrom || withDots(typed).find('i') != std::string::npos;
    return mayBeInside ? wordsWith(connection, typed) : std::vector<std::string>{};
}

// "418-b", as it is printed on a bag tag, and the codes "418.KHTR" and "418-b.KHTR": order 418. With a space
// inside, "418 dusk", it is words.
std::optional<std::int64_t> orderOfCode(std::string_view typed) {
    while (typed.starts_with(' '))
        typed.remove_prefix(1);
    while (typed.ends_with(' '))
        typed.remove_suffix(1);
    if (typed.find(' ') != std::string_view::npos)
        return std::nullopt;
    const auto code = readPaperCode(typed);
    if (!code || code->kind == ScannedCode::Kind::Roll)
        return std::nullopt;
    const bool isGarment =
        code->kind == ScannedCode::Kind::Garment && typed.find('-') != std::string_view::npos;
    return isGarment || !code->check.empty() ? std::optional(code->number) : std::nullopt;
}

std::vector<OrderId> foundByIndex(Connection& connection, const std::string& match) {
    std::vector<OrderId> found;
    Query rows =
        connection.query("SELECT rowid FROM order_text WHERE order_text MATCH ?1 ORDER BY rowid", match);
    while (rows.step())
        found.push_back(rows.id<OrderId>(0));
    return found;
}

using OrderPhones = std::vector<ShopPhones::OfOrder>; // the lowest id first

// Out of `orders` go those that the index does not find, but not one that `isFoundAlready`.
template <class IsFoundAlready>
void keepFound(OrderPhones& orders, Connection& connection, const std::string& match,
               const IsFoundAlready& isFoundAlready) {
    const std::vector<OrderId> found = foundByIndex(connection, match);
    auto next = found.begin();
    std::erase_if(orders, [&](const ShopPhones::OfOrder& each) {
        if (isFoundAlready(each))
            return false;
        while (next != found.end() && *next < each.order)
            ++next;
        return next == found.end() || *next != each.order;
    });
}

// Those with these digits in the phone number, or at the beginning of a word or of another number.
void keepWithDigits(OrderPhones& orders, Connection& connection, const ShopPhones& phones,
                    const std::string& digits) {
    std::vector<bool> isOfPhone;
    for (const std::string& phone : phones.digits)
        isOfPhone.push_back(digits.size() >= kPhoneInsideFrom ? phone.find(digits) != std::string::npos
                                                              : phone.ends_with(digits));
    const auto isByPhone = [&](const ShopPhones::OfOrder& each) { return isOfPhone[each.phone]; };
    if (!std::ranges::all_of(orders, isByPhone))
        keepFound(orders, connection, '"' + digits + "\"*", isByPhone);
}

} // namespace

OrderSearch::OrderSearch(std::string_view typed)
    : m_words(wordsOf(typed)) {
    if (const auto order = orderOfCode(typed))
        m_words = {std::to_string(*order)};
}

bool OrderSearch::isDigits(std::string_view word) {
    return onlyDigits(word).size() == word.size();
}

bool OrderSearch::mayBePhone(const std::string& word) {
    return isDigits(word) && word.size() >= kPhoneEndFrom;
}

std::string OrderSearch::match(Connection& connection) const {
    std::string match;
    for (const std::string& word : m_words) {
        if (mayBePhone(word))
            continue;
        match += (match.empty() ? "(\"" : " AND (\"") + word + "\"*";
        for (const std::string& other : otherWords(connection, word))
            match += " OR \"" + other + "\"";
        match += ")";
    }
    return match;
}

std::optional<std::vector<OrderId>> OrderSearch::ordersByDigits(Connection& connection,
                                                                const std::string& match) const {
    if (std::ranges::none_of(m_words, mayBePhone))
        return std::nullopt;
    const auto phones = phonesOfShop(connection);
    OrderPhones orders = phones->orders;
    for (const std::string& word : m_words)
        if (mayBePhone(word))
            keepWithDigits(orders, connection, *phones, word);
    if (!match.empty())
        keepFound(orders, connection, match, [](const auto&) { return false; });
    std::vector<OrderId> found;
    for (const ShopPhones::OfOrder& each : orders)
        found.push_back(each.order);
    return found;
}

bool OrderSearch::matches(const OrderText& order) const {
    const std::vector<std::string> words =
        wordsOf(std::to_string(order.number) + ' ' + order.phone + ' ' + order.words);
    const std::string phone = onlyDigits(order.phone);
    return std::ranges::all_of(m_words, [&](const std::string& wanted) {
        const bool isNumber = isDigits(wanted);
        const bool isInText = std::ranges::any_of(words, [&](const std::string& word) {
            const std::size_t at = withDots(word).find(withDots(wanted));
            return at == 0 || (at != std::string::npos && !isNumber && wanted.size() >= kInsideFrom) ||
                   (!isNumber && isNearlyBeginningOf(withDots(wanted), withDots(word)));
        });
        return isInText || (isNumber && wanted.size() >= kPhoneEndFrom && phone.ends_with(wanted)) ||
               (isNumber && wanted.size() >= kPhoneInsideFrom && phone.find(wanted) != std::string::npos);
    });
}

} // namespace holdfast::db
