// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Random numbers of the strip searches, the same everywhere for a seed. SplitMix64: Steele, Lea and Flood
// 2014 [M].

#include <cstddef>
#include <cstdint>

namespace holdfast {

class StripRandom {
public:
    explicit StripRandom(std::uint64_t seed)
        : m_state(seed) {}

    std::uint64_t next() {
        m_state += 0x9e3779b97f4a7c15;
        return mixed(m_state);
    }
    std::uint32_t below(std::size_t bound) {
        return static_cast<std::uint32_t>(((next() >> 32) * bound) >> 32);
    }
    double share() { return static_cast<double>(next() >> 11) * 0x1p-53; } // 0 to below 1

    static std::uint64_t mixed(std::uint64_t value) {
        value = (value ^ (value >> 30)) * 0xbf58476d1ce4e5b9;
        value = (value ^ (value >> 27)) * 0x94d049bb133111eb;
        return value ^ (value >> 31);
    }

private:
    std::uint64_t m_state;
};

} // namespace holdfast
