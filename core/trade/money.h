// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Money in whole minor units (pence, cents) of the shop's one currency. Never a fraction, never a double.
// Minor units per currency: ISO 4217 (exponent 0 for JPY, 3 for KWD, 2 for most).

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace holdfast {

struct Money {
    std::int64_t minor = 0;

    constexpr auto operator<=>(const Money&) const = default;
    constexpr Money operator+(Money other) const { return {minor + other.minor}; }
    constexpr Money operator-(Money other) const { return {minor - other.minor}; }
    constexpr Money operator-() const { return {-minor}; }
    constexpr Money operator*(std::int64_t times) const { return {minor * times}; }
    constexpr Money& operator+=(Money other) {
        minor += other.minor;
        return *this;
    }
};

struct Currency {
    std::string code = "GBP"; // ISO 4217
    std::string sign = "£";   // what is written before an amount
    int exponent = 2;         // minor units are 10^-exponent of the unit

    bool operator==(const Currency&) const = default;
};

enum class Rounding { HalfUp, HalfEven };

// Of a whole: 7.5 % is 750 hundredths.
struct Percentage {
    std::int64_t hundredths = 0;

    double percent() const { return static_cast<double>(hundredths) / 100; }
    constexpr auto operator<=>(const Percentage&) const = default;
};

inline constexpr Percentage kWholePercentage{10'000};

// numerator / denominator to whole minor units; half away from zero, or to the even neighbour.
// REQUIRES: denominator > 0.
Money divided(Money amount, std::int64_t numerator, std::int64_t denominator, Rounding rounding);

// "1451.50" for files, "1,451.50" for columns, "£1,451.50" in a sentence; minus in front of the sign:
// "-£3.00".
std::string plainAmount(Money amount, const Currency& currency);
std::string groupedAmount(Money amount, const Currency& currency);
std::string spokenAmount(Money amount, const Currency& currency);

// 7.5 % of an amount.
Money partOf(Money amount, Percentage share, Rounding rounding);

// Reads "26.5", "26,50", "£26.50", "1,451.50", "1 451,50"; nothing for text that is no amount or has more
// decimals than the currency.
std::optional<Money> parseAmount(std::string_view text, const Currency& currency);
// Reads "7.5", "7,5 %", "%7.5"; nothing for what has more than two decimals.
std::optional<Percentage> parsePercentage(std::string_view text);

// An amount shared out by weight to the last minor unit: each part rounded down, and what is left goes to
// those that lost the most by that, of equal ones to the earlier (the largest remainder method). Where all
// weights are 0, everybody weighs the same. REQUIRES: no weight below 0, at least one.
std::vector<Money> sharedOut(Money amount, std::span<const Money> weights);

} // namespace holdfast
