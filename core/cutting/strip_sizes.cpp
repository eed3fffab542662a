// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_sizes.h"

#include <algorithm>
#include <bit>

namespace holdfast {

namespace {

constexpr std::int64_t kSmallSize = 4'096;

} // namespace

void StripSizes::settle() {
    std::ranges::sort(m_sizes);
    m_sizes.erase(std::ranges::unique(m_sizes).begin(), m_sizes.end());
    m_isSmall = m_sizes.empty() || m_sizes.back() < kSmallSize;
    const std::size_t slots = std::bit_ceil(m_sizes.size() * 2 + 2);
    m_slots.assign(m_isSmall && !m_sizes.empty() ? static_cast<std::size_t>(m_sizes.back()) + 1 : slots,
                   kNone);
    for (std::size_t index = 0; index < m_sizes.size(); ++index) {
        std::size_t slot = slotOf(m_sizes[index]);
        while (m_slots[slot] != kNone)
            slot = (slot + 1) & (m_slots.size() - 1);
        m_slots[slot] = static_cast<std::uint32_t>(index);
    }
}

std::size_t StripSizes::slotOf(std::int64_t size) const {
    if (m_isSmall)
        return static_cast<std::size_t>(size);
    constexpr std::uint64_t kSpread = 0x9e3779b97f4a7c15; // 2^64 over the golden ratio
    return static_cast<std::size_t>((static_cast<std::uint64_t>(size) * kSpread) >> 32) &
           (m_slots.size() - 1);
}

std::uint32_t StripSizes::find(std::int64_t size) const {
    if (m_isSmall)
        return static_cast<std::size_t>(size) < m_slots.size() ? m_slots[static_cast<std::size_t>(size)]
                                                               : kNone;
    for (std::size_t slot = slotOf(size); m_slots[slot] != kNone; slot = (slot + 1) & (m_slots.size() - 1)) {
        if (m_sizes[m_slots[slot]] == size)
            return m_slots[slot];
    }
    return kNone;
}

std::uint32_t StripSizes::countUpTo(std::int64_t size) const {
    return static_cast<std::uint32_t>(std::ranges::upper_bound(m_sizes, size) - m_sizes.begin());
}

} // namespace holdfast
