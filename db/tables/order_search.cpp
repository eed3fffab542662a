// SPDX-License-Identifier: GPL-3.0-or-later
#include "db/tables/order_search.h"

#include "core/trade/folded.h"
#include "core/trade/near_words.h"
#include "core/trade/paper_code.h"
#include "core/trade/plain_letters.h"
#include "db/sqlite/query.h"
#include "db/tables/shop_phones.h"
#include "db/tables/shop_words.h"

#include <algorithm>
#include <cctype>
#include <optional>

namespace holdfast::db {

namespace {

constexpr std::size_t kInsideFrom = 3;       // letters that are looked for anywhere inside a word
constexpr std::size_t kNearFrom = 4;         // letters that may have a slip of the hand in them
constexpr std::size_t kPhoneFrom = 3;        // digits that may be of a phone number
constexpr std::size_t kGroupedPhoneFrom = 6; // digits in groups that may be one
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

std::string onlyDigits(std::string_view text) {
    std::string digits;
    std::ranges::copy_if(text, std::back_inserter(digits),
                         [](char each) { return each >= '0' && each <= '9'; });
    return digits;
}

bool isDigits(std::string_view word) {
    return std::ranges::all_of(word, [](char each) { return each >= '0' && each <= '9'; });
}

bool mayBePhone(const std::string& word) {
    return isDigits(word) && word.size() >= kPhoneFrom;
}

// Numbers are looked for as they are typed: of theirs nearly every one would be near.
bool mayHaveWrongLetter(const std::string& word) {
    return word.size() >= kNearFrom && !isDigits(word);
}

// A word of the shop, and where what was typed is in it.
struct Place {
    std::size_t at = std::string::npos;
    bool isByIndex = false; // it begins with what was typed as it was typed: the index finds it

    bool isThere() const { return at != std::string::npos; }
};

Place placeIn(const std::string& word, const std::string& plainTyped, const std::string& typed) {
    const std::size_t at = withPlainLetters(word).find(plainTyped);
    return {at, word.starts_with(typed)};
}

bool isNearOf(const std::string& plainTyped, const std::string& word) {
    return isNearlyBeginningOf(plainTyped, word) || isNearly(plainTyped, word);
}

// "far" → every word of the shop that it is a part of, and those that begin with it but for how letters are
// written; none where those are too many. What has a letter in it is in no number.
std::vector<std::string> wordsWith(Connection& connection, const std::string& part) {
    std::vector<std::string> with;
    const std::string plain = withPlainLetters(part);
    const auto shop = wordsOfShop(connection);
    for (const std::string& word : shop->words) {
        const Place place = placeIn(word, plain, part);
        if (place.isThere() && !place.isByIndex && (place.at == 0 || part.size() >= kInsideFrom))
            with.push_back(word);
    }
    if (with.size() > kMostWords)
        with.clear();
    return with;
}

// "farant" → the words of the shop that it is, or is the beginning of, but for one letter. Two letters are in
// no number, nor nearly.
std::vector<std::string> wordsNear(Connection& connection, const std::string& typed) {
    std::vector<std::string> near;
    const std::string plain = withPlainLetters(typed);
    const auto shop = wordsOfShop(connection);
    const auto add = [&](const std::vector<std::string>& words) {
        for (const std::string& word : words)
            if (near.size() < kMostWords && isNearOf(plain, withPlainLetters(word)))
                near.push_back(word);
    };
    add(shop->words);
    if (typed.size() - onlyDigits(typed).size() < 2)
        add(shop->numbers);
    return near;
}

// A word for order_text MATCH.
std::string matchOf(Connection& connection, const std::string& word, Spelling spelling) {
    std::string match = "(\"" + word + "\"*";
    const auto addAll = [&](const std::vector<std::string>& others) {
        for (const std::string& other : others)
            match += " OR \"" + other + "\"";
    };
    const bool isPlain = withPlainLetters(word) == word && word.find('i') == std::string::npos;
    if (!isDigits(word) && (word.size() >= kInsideFrom || !isPlain))
        addAll(wordsWith(connection, word));
    if (spelling == Spelling::Near && mayHaveWrongLetter(word))
        addAll(wordsNear(connection, word));
    return match + ")";
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

using OrderPhones = std::vector<ShopPhones::OfOrder>; // lowest id first

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

// Those with this phone number, or with the digits at the beginning of a word or of another number.
void keepWithDigits(OrderPhones& orders, Connection& connection, const ShopPhones& phones,
                    const std::string& digits) {
    const PhoneNumber typed = readPhone(digits);
    std::vector<bool> isOfPhone;
    for (const PhoneNumber& phone : phones.numbers)
        isOfPhone.push_back(isPartOfPhone(typed, phone));
    const auto isByPhone = [&](const ShopPhones::OfOrder& each) { return isOfPhone[each.phone]; };
    if (!std::ranges::all_of(orders, isByPhone))
        keepFound(orders, connection, '"' + digits + "\"*", isByPhone);
}

// Those in which each of the words is found.
OrderPhones withWords(OrderPhones orders, Connection& connection, const ShopPhones& phones,
                      const std::vector<std::string>& words) {
    for (const std::string& word : words) {
        if (mayBePhone(word))
            keepWithDigits(orders, connection, phones, word);
        else
            keepFound(orders, connection, matchOf(connection, word, Spelling::Right),
                      [](const auto&) { return false; });
    }
    return orders;
}

bool isAmong(const OrderPhones& orders, OrderId order) {
    const auto found = std::ranges::lower_bound(orders, order, {}, &ShopPhones::OfOrder::order);
    return found != orders.end() && found->order == order;
}

bool isSignOfPhone(char each) {
    return std::string_view{"+-/.()"}.find(each) != std::string_view::npos;
}

// "+44", "(0)7700-900": digits, and signs that are between those of a phone number.
bool isOfNumbers(std::string_view chunk) {
    const auto isDigit = [](char each) { return each >= '0' && each <= '9'; };
    return std::ranges::any_of(chunk, isDigit) &&
           std::ranges::all_of(chunk, [&](char each) { return isDigit(each) || isSignOfPhone(each); });
}

std::size_t endOfChunk(std::string_view typed, std::size_t from) {
    return std::min(typed.find(' ', from), typed.size());
}

} // namespace

OrderSearch::OrderSearch(const TypedSearch& typed)
    : m_now(typed.now) {
    const auto code = orderOfCode(typed.words);
    if (code && typed.meant.empty()) {
        add(std::to_string(*code));
        return;
    }
    add(typed.words);
    for (const MeantWords& meant : typed.meant)
        m_terms.push_back({wordsOf(meant.words), {}, meant.meaning});
}

// What is written in groups is one number: "+44 7700 900421".
void OrderSearch::add(std::string_view typed) {
    std::size_t at = 0;
    while (at < typed.size()) {
        std::size_t end = endOfChunk(typed, at);
        if (!isOfNumbers(typed.substr(at, end - at))) {
            for (std::string& word : wordsOf(typed.substr(at, end - at)))
                m_terms.push_back({{std::move(word)}});
        } else {
            for (std::size_t next = end + 1; next < typed.size(); next = end + 1) {
                const std::size_t nextEnd = endOfChunk(typed, next);
                if (nextEnd > next && !isOfNumbers(typed.substr(next, nextEnd - next)))
                    break;
                end = nextEnd;
            }
            addNumbers(typed.substr(at, end - at));
        }
        at = end + 1;
    }
}

void OrderSearch::addNumbers(std::string_view run) {
    std::vector<std::string> words = wordsOf(run);
    if (words.size() > 1 && onlyDigits(run).size() >= kGroupedPhoneFrom) {
        m_terms.push_back({std::move(words), readPhone(run), {}});
        return;
    }
    for (std::string& word : words) {
        const bool isPhone = mayBePhone(word);
        const std::string_view written = words.size() == 1 ? run : std::string_view{word};
        Term term{{}, isPhone ? std::optional{readPhone(written)} : std::nullopt, {}};
        term.words.push_back(std::move(word));
        m_terms.push_back(std::move(term));
    }
}

bool OrderSearch::isNumber() const {
    return m_terms.size() == 1 && m_terms.front().words.size() == 1 && !m_terms.front().meaning &&
           isDigits(m_terms.front().words.front());
}

bool OrderSearch::mayBeNear() const {
    return std::ranges::any_of(m_terms, [](const Term& term) {
        return term.isOnlyText() && std::ranges::any_of(term.words, mayHaveWrongLetter);
    });
}

std::string OrderSearch::match(Connection& connection, Spelling spelling) const {
    std::string match;
    for (const Term& term : m_terms)
        if (term.isOnlyText())
            for (const std::string& word : term.words)
                match += (match.empty() ? "" : " AND ") + matchOf(connection, word, spelling);
    return match;
}

std::optional<std::vector<OrderId>> OrderSearch::ordersListed(Connection& connection,
                                                              const std::string& match) const {
    if (std::ranges::all_of(m_terms, &Term::isOnlyText))
        return std::nullopt;
    const auto phones = phonesOfShop(connection);
    OrderPhones orders = phones->orders;
    for (const Term& term : m_terms) {
        if (term.isOnlyText())
            continue;
        const OrderPhones inText = withWords(orders, connection, *phones, term.words);
        std::vector<bool> isPhone;
        for (const PhoneNumber& phone : phones->numbers)
            isPhone.push_back(term.phone && isPartOfPhone(*term.phone, phone));
        const std::vector<OrderId> meant =
            term.meaning ? ordersMeant(connection, *term.meaning, m_now) : std::vector<OrderId>{};
        std::erase_if(orders, [&](const ShopPhones::OfOrder& each) {
            return !isPhone[each.phone] && !std::ranges::binary_search(meant, each.order) &&
                   !isAmong(inText, each.order);
        });
    }
    if (!match.empty())
        keepFound(orders, connection, match, [](const auto&) { return false; });
    std::vector<OrderId> found;
    for (const ShopPhones::OfOrder& each : orders)
        found.push_back(each.order);
    return found;
}

bool OrderSearch::matches(const OrderText& order, Spelling spelling) const {
    std::vector<std::string> words =
        wordsOf((order.number ? std::to_string(*order.number) : "") + ' ' + order.phone + ' ' + order.words);
    std::ranges::transform(words, words.begin(), withPlainLetters);
    const PhoneNumber phone = readPhone(order.phone);
    const auto isInText = [&](const std::string& typed) {
        const std::string wanted = withPlainLetters(typed);
        const bool isNumber = isDigits(wanted);
        return (isNumber && isPartOfPhone(readPhone(wanted), phone)) ||
               std::ranges::any_of(words, [&](const std::string& word) {
                   const std::size_t at = word.find(wanted);
                   return at == 0 || (at != std::string::npos && !isNumber && wanted.size() >= kInsideFrom) ||
                          (spelling == Spelling::Near && mayHaveWrongLetter(wanted) &&
                           isNearOf(wanted, word));
               });
    };
    return std::ranges::all_of(m_terms, [&](const Term& term) {
        const bool isOnItsDays =
            term.meaning && std::ranges::any_of(term.meaning->days, [&](const auto& days) {
                return std::ranges::any_of(
                    order.days, [&](LocalDate day) { return days.first <= day && day <= days.last; });
            });
        return isOnItsDays || (term.phone && isPartOfPhone(*term.phone, phone)) ||
               std::ranges::all_of(term.words, isInText);
    });
}

} // namespace holdfast::db
