// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Units of the trade as types, with the number inside: a width is never a temperature.
// Lengths are whole millimetres (what a cutter and a ledger keep), weights whole grams.

#include <chrono>
#include <cstdint>

namespace holdfast {

struct Millimetres {
    std::int64_t value = 0;

    constexpr auto operator<=>(const Millimetres&) const = default;
    constexpr Millimetres operator+(Millimetres other) const { return {value + other.value}; }
    constexpr Millimetres operator-(Millimetres other) const { return {value - other.value}; }
    constexpr Millimetres operator-() const { return {-value}; }
    constexpr Millimetres operator*(std::int64_t times) const { return {value * times}; }
    constexpr Millimetres& operator+=(Millimetres other) {
        value += other.value;
        return *this;
    }
    constexpr double metres() const { return static_cast<double>(value) / 1000.0; }
};

struct Grams {
    std::int64_t value = 0;

    constexpr auto operator<=>(const Grams&) const = default;
    constexpr Grams operator+(Grams other) const { return {value + other.value}; }
    constexpr Grams operator*(std::int64_t times) const { return {value * times}; }
};

struct Celsius {
    double value = 0;

    constexpr auto operator<=>(const Celsius&) const = default;
};

// Relative humidity in percent, 0 to 100.
struct Humidity {
    double percent = 0;

    constexpr auto operator<=>(const Humidity&) const = default;
};

template <class Unit>
struct Band {
    Unit low;
    Unit high;

    constexpr bool contains(Unit unit) const { return low <= unit && unit <= high; }
    constexpr bool operator==(const Band&) const = default;
};

using Seconds = std::chrono::seconds;

namespace literals {
constexpr Millimetres operator""_mm(unsigned long long value) {
    return {static_cast<std::int64_t>(value)};
}
constexpr Grams operator""_g(unsigned long long value) {
    return {static_cast<std::int64_t>(value)};
}
constexpr Celsius operator""_C(unsigned long long value) {
    return {static_cast<double>(value)};
}
constexpr Celsius operator""_C(long double value) {
    return {static_cast<double>(value)};
}
constexpr Humidity operator""_rh(unsigned long long value) {
    return {static_cast<double>(value)};
}
} // namespace literals

} // namespace holdfast
