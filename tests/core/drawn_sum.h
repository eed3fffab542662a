// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Random input that is the same everywhere, and one number for all that comes of it.

#include "core/trade/sentence.h"

#include <cmath>
#include <concepts>
#include <cstdint>
#include <string_view>

namespace holdfast::test {

// Knuth's linear congruential generator (MMIX): the library's distributions need not draw alike everywhere.
class Draw {
public:
    explicit Draw(std::uint64_t seed)
        : m_state(seed) {}
    std::int64_t between(std::int64_t low, std::int64_t high) {
        m_state = m_state * 6364136223846793005ULL + 1442695040888963407ULL;
        return low + static_cast<std::int64_t>((m_state >> 33) % static_cast<std::uint64_t>(high - low + 1));
    }
    bool oneIn(std::int64_t times) { return between(1, times) == 1; }
    // From 0 to 1, in steps of a thousandth.
    double share() { return static_cast<double>(between(0, 1000)) / 1000; }

private:
    std::uint64_t m_state;
};

// Fowler, Noll and Vo's 64-bit sum.
class DrawnSum {
public:
    template <std::integral Number>
    DrawnSum& operator<<(Number number) {
        for (int byte = 0; byte < 8; ++byte)
            addByte(static_cast<std::uint64_t>(static_cast<std::int64_t>(number) >> (8 * byte)) & 0xFF);
        return *this;
    }
    DrawnSum& operator<<(std::string_view words) {
        for (const char letter : words)
            addByte(static_cast<unsigned char>(letter));
        return *this << words.size();
    }
    DrawnSum& operator<<(const std::string& words) { return *this << std::string_view{words}; }
    DrawnSum& operator<<(const char* words) { return *this << std::string_view{words}; }
    DrawnSum& operator<<(const Sentence& sentence) { return *this << std::string_view{sentence.english()}; }
    DrawnSum& operator<<(Phrase phrase) { return *this << phrase.english; }
    // To a few millionths of itself: libraries differ in the last digits.
    DrawnSum& operator<<(double number) {
        if (number == 0)
            return *this << 0;
        const double scale = std::pow(10, 5 - std::floor(std::log10(std::abs(number))));
        return *this << std::llround(number * scale) << std::lround(std::log10(scale));
    }
    std::uint64_t value() const { return m_sum; }

private:
    void addByte(std::uint64_t byte) {
        m_sum ^= byte;
        m_sum *= 1099511628211ULL;
    }

    std::uint64_t m_sum = 14695981039346656037ULL;
};

} // namespace holdfast::test
