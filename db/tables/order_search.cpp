#include "db/tables/order_search.h"

#include "core/trade/folded.h"
#include "core/trade/near_words.h"
#include "core/trade/paper_code.h"

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
constexpr int kMostWords = 1000;

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

// "far" → every word of the shop that it is a part of, and those that begin with it but for a dot; none where
// those are too many.
std::vector<std::string> wordsWith(Connection& connection, const std::string& part) {
    std::vector<std::string> words;
    Query rows =
        connection.query("SELECT term FROM order_word WHERE CASE instr(replace(term, 'ı', 'i'), ?1) "
                         "WHEN 0 THEN 0 WHEN 1 THEN ?1 <> ?2 OR instr(term, 'ı') ELSE ?3 END LIMIT ?4",
                         withDots(part), part, part.size() >= kInsideFrom, kMostWords + 1);
    while (rows.step())
        words.push_back(rows.text(0));
    if (words.size() > kMostWords)
        words.clear();
    return words;
}

// "farant" → the same, or where no word of the shop has it in it those that it is the beginning of but for
// one letter. All words are read once: a shop of fifteen years has some 27,000.
std::vector<std::string> wordsWithOrNear(Connection& connection, const std::string& typed) {
    std::vector<std::string> with;
    std::vector<std::string> near;
    const std::string dotted = withDots(typed);
    bool isInAny = false;
    Query rows = connection.query("SELECT term FROM order_word");
    while (rows.step()) {
        const std::string_view term = rows.view(0);
        const bool isDotless = term.find(kDotless) != std::string_view::npos;
        const std::string replaced = isDotless ? withDots(std::string(term)) : std::string();
        const std::string_view word = isDotless ? std::string_view(replaced) : term;
        const std::size_t at = word.find(dotted);
        isInAny = isInAny || at != std::string_view::npos;
        // What begins with it as it was typed is found by the index.
        const bool isByIndex = at == 0 && dotted == typed && !isDotless;
        if (at != std::string_view::npos && !isByIndex && with.size() <= kMostWords)
            with.emplace_back(term);
        else if (!isInAny && near.size() < kMostWords && isNearlyBeginningOf(dotted, word))
            near.emplace_back(term);
    }
    if (with.size() > kMostWords)
        with.clear();
    return isInAny ? with : near;
}

// Besides those that begin with it.
std::vector<std::string> otherWords(Connection& connection, const std::string& typed) {
    if (typed.size() >= kNearFrom && onlyDigits(typed).size() < typed.size())
        return wordsWithOrNear(connection, typed);
    const bool mayBeInside = typed.size() >= kInsideFrom || withDots(typed).find('i') != std::string::npos;
    return mayBeInside ? wordsWith(connection, typed) : std::vector<std::string>{};
}

// "418-b", as it is printed on a bag tag, and the codes "418.KHTR" and "418-b.KHTR": order 418.
std::optional<std::int64_t> orderOfCode(std::string_view typed) {
    while (typed.starts_with(' '))
        typed.remove_prefix(1);
    while (typed.ends_with(' '))
        typed.remove_suffix(1);
    const auto code = readPaperCode(typed);
    if (!code || code->kind == ScannedCode::Kind::Roll)
        return std::nullopt;
    const bool isGarment =
        code->kind == ScannedCode::Kind::Garment && typed.find('-') != std::string_view::npos;
    return isGarment || !code->check.empty() ? std::optional(code->number) : std::nullopt;
}

std::string ofPhone(const std::string& digits) {
    const std::string inside = digits.size() >= kPhoneInsideFrom ? "%" : "";
    return "order_card.id IN (SELECT shop_order.id FROM customer "
           "CROSS JOIN shop_order ON shop_order.customer_id = customer.id "
           "WHERE replace(replace(replace(replace(replace(replace(phone, ' ', ''), '-', ''), '(', ''), ')', "
           "''), "
           "'.', ''), '/', '') LIKE '%" +
           digits + inside + "')";
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

std::string OrderSearch::conditions() const {
    std::string sql;
    for (const std::string& word : m_words)
        if (mayBePhone(word))
            sql += " AND (order_card.id IN (SELECT rowid FROM order_text WHERE order_text MATCH '\"" + word +
                   "\"*') OR " + ofPhone(word) + ")";
    return sql;
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
