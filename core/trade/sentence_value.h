// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What can be put into a sentence. A type of its own wherever the same fact is written in two ways.

#include "core/trade/dates.h"
#include "core/trade/day_span.h"
#include "core/trade/money.h"
#include "core/trade/phrase.h"
#include "core/trade/units.h"

#include <concepts>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace holdfast {

class Sentence;

struct Decimal { // "4.3" and "4"; with `places`, always that many digits after the point
    double value = 0;
    std::optional<int> places = std::nullopt;

    bool operator==(const Decimal&) const = default;
};

struct Numeral { // "10427": the number of an order, a line, a year; never grouped
    std::int64_t value = 0;

    bool operator==(const Numeral&) const = default;
};

struct DateWithYear { // "12 Oct 2026"; a LocalDate is "Mon 12 Oct"
    LocalDate date;

    bool operator==(const DateWithYear&) const = default;
};

struct Weekday { // "Mon"
    LocalDate date;

    bool operator==(const Weekday&) const = default;
};

struct DayOfMonth { // "12 Oct"
    LocalDate date;

    bool operator==(const DayOfMonth&) const = default;
};

struct NearSpan { // "2–20 Jan"; a DaySpan is "2–20 Jan 2027"
    DaySpan span;

    bool operator==(const NearSpan&) const = default;
};

struct TimeOfDay { // "08:30"; a LocalTime is "Mon 12 Oct 08:30"
    LocalTime time;

    bool operator==(const TimeOfDay&) const = default;
};

struct Amount { // "£26.50"
    Money money;
    Currency currency;

    bool operator==(const Amount&) const = default;
};

struct InMetres { // "3.4 m"; Millimetres are "3400 mm"
    Millimetres length;

    bool operator==(const InMetres&) const = default;
};

struct Extent { // "280 × 300 mm"
    Millimetres width;
    Millimetres height;

    bool operator==(const Extent&) const = default;
};

// How a part begins: with a capital where it comes first, and else as it is written; with a small letter,
// though it has a capital alone; or as it does alone, wherever it stands.
enum class Beginning { ByPlace, Small, AsAlone };

// Sentences inside another one; several have commas between them.
class Parts {
public:
    explicit Parts(std::vector<Sentence> sentences, Beginning beginning = Beginning::ByPlace);

    const std::vector<Sentence>& sentences() const { return *m_sentences; }
    Beginning beginning() const { return m_beginning; }

    bool operator==(const Parts& other) const;

private:
    // By pointer: a sentence holds values, so that it is not yet complete here.
    std::shared_ptr<const std::vector<Sentence>> m_sentences;
    Beginning m_beginning;
};

// A type that is one of those in a variant. Asked instead of constructible_from, which would ask about the
// very constructor that it guards.
template <class Fact, class Variant>
inline constexpr bool kIsIn = false;
template <class Fact, class... Kinds>
inline constexpr bool kIsIn<Fact, std::variant<Kinds...>> = (std::same_as<Fact, Kinds> || ...);

class Value {
public:
    using Held = std::variant<std::string, std::int64_t, Numeral, Decimal, LocalDate, DateWithYear, Weekday,
                              DayOfMonth, DaySpan, NearSpan, LocalTime, TimeOfDay, Amount, Millimetres,
                              InMetres, Extent, Celsius, Seconds, Parts>;

    // As it is: a name, a label, what a person typed.
    Value(std::string name)
        : m_held(std::move(name)) {}
    Value(std::string_view name)
        : m_held(std::string{name}) {}
    Value(const char* name)
        : m_held(std::string{name}) {}
    // A count: "12", "1,200".
    template <std::integral Whole>
    Value(Whole count)
        : m_held(static_cast<std::int64_t>(count)) {}
    Value(Sentence part);
    Value(Phrase part);
    Value(Parts parts);
    Value(std::vector<Sentence> parts);
    template <class Fact>
        requires kIsIn<Fact, Held> && (!std::integral<Fact>)
    Value(Fact fact)
        : m_held(std::in_place_type<Fact>, std::move(fact)) {}

    const Held& held() const { return m_held; }

    bool operator==(const Value&) const = default;

private:
    Held m_held;
};

} // namespace holdfast
