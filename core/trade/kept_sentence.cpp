// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trade/kept_sentence.h"

#include "core/trade/enumerators.h"
#include "core/trade/kept_list.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace holdfast {

namespace {

// What is read comes from other files too: parts in parts, and a place that stands often, would multiply.
constexpr int kDeepest = 8;
constexpr int kMostOfAPlace = 2;
constexpr std::size_t kLongest = 8'000;
constexpr std::int64_t kLargestKept = 1'000'000'000'000'000;
constexpr int kMostDecimals = 9;
constexpr int kMostExponent = 4;
constexpr std::int64_t kLastDay = 300'000; // since 1970: in the year 2791

using List = std::vector<KeptItem>;

KeptItem keptOf(const Sentence& sentence);

std::string shortest(double number) {
    char digits[32];
    const auto [end, code] = std::to_chars(std::begin(digits), std::end(digits), number);
    return {digits, end};
}

KeptItem keptOf(const LocalDate& date) {
    return KeptItem{std::int64_t{date.time_since_epoch().count()}};
}

KeptItem keptOf(const LocalTime& time) {
    return KeptItem{std::int64_t{time.time_since_epoch().count()}};
}

// Each kind with what it is made of.
List kept(const std::string& name) {
    return {"name", name};
}
List kept(std::int64_t count) {
    return {"count", count};
}
List kept(Numeral numeral) {
    return {"number", numeral.value};
}
List kept(const Decimal& number) {
    List list{"decimal", shortest(number.value)};
    if (number.places)
        list.push_back(std::int64_t{*number.places});
    return list;
}
List kept(LocalDate date) {
    return {"day", keptOf(date)};
}
List kept(DateWithYear date) {
    return {"date", keptOf(date.date)};
}
List kept(Weekday day) {
    return {"weekday", keptOf(day.date)};
}
List kept(DayOfMonth day) {
    return {"day of month", keptOf(day.date)};
}
List kept(const DaySpan& span) {
    return {"days", keptOf(span.first), keptOf(span.last)};
}
List kept(const NearSpan& near) {
    return {"near days", keptOf(near.span.first), keptOf(near.span.last)};
}
List kept(LocalTime time) {
    return {"moment", keptOf(time)};
}
List kept(TimeOfDay time) {
    return {"time", keptOf(time.time)};
}
List kept(const Amount& amount) {
    return {"amount", amount.money.minor, amount.currency.code, amount.currency.sign,
            std::int64_t{amount.currency.exponent}};
}
List kept(Millimetres length) {
    return {"length", length.value};
}
List kept(InMetres length) {
    return {"metres", length.length.value};
}
List kept(const Extent& size) {
    return {"size", size.width.value, size.height.value};
}
List kept(Celsius temperature) {
    return {"temperature", shortest(temperature.value)};
}
List kept(Seconds seconds) {
    return {"seconds", std::int64_t{seconds.count()}};
}
List kept(const Parts& parts) {
    List list{"parts", static_cast<std::int64_t>(parts.beginning())};
    for (const Sentence& sentence : parts.sentences())
        list.push_back(keptOf(sentence));
    return list;
}

KeptItem keptOf(const Sentence& sentence) {
    if (sentence.isAsItIs() || sentence.empty())
        return sentence.pattern();
    List list{sentence.pattern()};
    for (const NamedValue& named : sentence.values()) {
        List value = std::visit([](const auto& held) { return kept(held); }, named.value.held());
        value.insert(value.begin(), named.name);
        list.push_back(KeptItem{std::move(value)});
    }
    return KeptItem{std::move(list)};
}

// What is not as it should be makes the whole unreadable.
class KeptReading {
public:
    std::optional<Sentence> read(const KeptItem& item) {
        Sentence sentence = sentenceOf(item, 0);
        return m_isSound ? std::optional{std::move(sentence)} : std::nullopt;
    }

private:
    std::string text(const List& list, std::size_t at) {
        const auto* text = at < list.size() ? list[at].text() : nullptr;
        m_isSound = m_isSound && text != nullptr;
        return text != nullptr ? *text : std::string{};
    }

    std::int64_t number(const List& list, std::size_t at, std::int64_t least = -kLargestKept,
                        std::int64_t most = kLargestKept) {
        const auto* number = at < list.size() ? list[at].number() : nullptr;
        const bool isSound = number != nullptr && *number >= least && *number <= most;
        m_isSound = m_isSound && isSound;
        return isSound ? *number : least;
    }

    double decimal(const List& list, std::size_t at) {
        const std::string digits = text(list, at);
        double number = 0;
        const auto [end, code] = std::from_chars(digits.data(), digits.data() + digits.size(), number);
        const bool isSound = code == std::errc{} && end == digits.data() + digits.size() &&
                             std::isfinite(number) && std::abs(number) < static_cast<double>(kLargestKept);
        m_isSound = m_isSound && isSound;
        return isSound ? number : 0;
    }

    LocalDate day(const List& list, std::size_t at) {
        return LocalDate{Days{static_cast<int>(number(list, at, 0, kLastDay))}};
    }

    LocalTime moment(const List& list, std::size_t at) {
        return LocalTime{Seconds{number(list, at, 0, kLastDay * 86'400)}};
    }

    Millimetres length(const List& list, std::size_t at) { return {number(list, at)}; }

    Decimal decimalOf(const List& list) {
        Decimal number{decimal(list, 2), std::nullopt};
        if (list.size() > 3)
            number.places = static_cast<int>(this->number(list, 3, 0, kMostDecimals));
        return number;
    }

    Amount amountOf(const List& list) {
        return {Money{number(list, 2)},
                {text(list, 3), text(list, 4), static_cast<int>(number(list, 5, 0, kMostExponent))}};
    }

    Parts partsOf(const List& list, int depth) {
        constexpr auto kLast = static_cast<std::int64_t>(enumeratorCount<Beginning>()) - 1;
        const auto beginning = static_cast<Beginning>(number(list, 2, 0, kLast));
        std::vector<Sentence> sentences;
        for (std::size_t at = 3; at < list.size(); ++at)
            sentences.push_back(sentenceOf(list[at], depth + 1));
        return Parts{std::move(sentences), beginning};
    }

    // Of a list of name, kind and what it is made of.
    Value valueOf(const List& list, int depth) {
        const std::string kind = text(list, 1);
        if (kind == "name")
            return text(list, 2);
        if (kind == "count")
            return number(list, 2);
        if (kind == "number")
            return Numeral{number(list, 2)};
        if (kind == "decimal")
            return decimalOf(list);
        if (kind == "amount")
            return amountOf(list);
        if (kind == "length")
            return length(list, 2);
        if (kind == "metres")
            return InMetres{length(list, 2)};
        if (kind == "size")
            return Extent{length(list, 2), length(list, 3)};
        if (kind == "temperature")
            return Celsius{decimal(list, 2)};
        if (kind == "seconds")
            return Seconds{number(list, 2)};
        if (kind == "parts")
            return partsOf(list, depth);
        return timeOf(kind, list);
    }

    Value timeOf(const std::string& kind, const List& list) {
        if (kind == "day")
            return day(list, 2);
        if (kind == "date")
            return DateWithYear{day(list, 2)};
        if (kind == "weekday")
            return Weekday{day(list, 2)};
        if (kind == "day of month")
            return DayOfMonth{day(list, 2)};
        if (kind == "days")
            return DaySpan{day(list, 2), day(list, 3)};
        if (kind == "near days")
            return NearSpan{{day(list, 2), day(list, 3)}};
        if (kind == "moment")
            return moment(list, 2);
        if (kind == "time")
            return TimeOfDay{moment(list, 2)};
        m_isSound = false;
        return std::string{};
    }

    Sentence sentenceOf(const KeptItem& item, int depth) {
        if (const auto* words = item.text())
            return words->empty() ? Sentence{} : asItIs(*words);
        const auto* list = item.list();
        m_isSound = m_isSound && list != nullptr && depth < kDeepest;
        if (!m_isSound)
            return {};
        std::string pattern = text(*list, 0);
        std::vector<NamedValue> values;
        for (std::size_t at = 1; at < list->size() && m_isSound; ++at) {
            const auto* value = (*list)[at].list();
            m_isSound = value != nullptr;
            if (m_isSound) {
                values.push_back({text(*value, 0), valueOf(*value, depth)});
                m_isSound = m_isSound && standsSeldom(pattern, values.back().name);
            }
        }
        return {std::move(pattern), std::move(values)};
    }

    // In each of the pattern's forms.
    static bool standsSeldom(std::string_view pattern, const std::string& name) {
        const std::string place = "{" + name + "}";
        int count = 0;
        for (auto at = pattern.find(place); at != std::string_view::npos; at = pattern.find(place, at + 1))
            ++count;
        return count <= kMostOfAPlace;
    }

    bool m_isSound = true;
};

} // namespace

std::string keptForm(const Sentence& sentence) {
    if (sentence.isAsItIs() || sentence.empty())
        return {};
    std::string text = keptText(keptOf(sentence));
    return sentenceKept(text) ? text : std::string{};
}

std::optional<Sentence> sentenceKept(std::string_view text) {
    if (text.size() > kLongest)
        return std::nullopt;
    const auto item = keptItem(text);
    return item && item->list() != nullptr ? KeptReading{}.read(*item) : std::nullopt;
}

} // namespace holdfast
