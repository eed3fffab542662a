// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The different sizes there are of some pieces, ascending, found at once.

#include <cstddef>
#include <cstdint>
#include <limits>
#include <vector>

namespace holdfast {

class StripSizes {
public:
    static constexpr std::uint32_t kNone = std::numeric_limits<std::uint32_t>::max();

    void add(std::int64_t size) { m_sizes.push_back(size); }
    // REQUIRED between adding and asking.
    void settle();

    std::uint32_t find(std::int64_t size) const; // or kNone
    std::uint32_t countUpTo(std::int64_t size) const;
    std::size_t count() const { return m_sizes.size(); }
    std::int64_t operator[](std::size_t index) const { return m_sizes[index]; }

private:
    std::size_t slotOf(std::int64_t size) const;

    std::vector<std::int64_t> m_sizes;
    std::vector<std::uint32_t> m_slots; // by a hash; where all are small, by the size itself
    bool m_isSmall = false;
};

} // namespace holdfast
