// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/orders/promise_wash.h"

#include <algorithm>

namespace holdfast {

namespace {

constexpr Hours kLastLoadBegins{21};
constexpr Seconds kLongestWash{Days{366}};
constexpr std::int64_t kHeaviestBlanks = 1'000'000'000;

std::int64_t grams(Grams weight) {
    return std::clamp<std::int64_t>(weight.value, 0, kHeaviestBlanks);
}

} // namespace

WashEvenings::WashEvenings(const ShopSettings& settings, std::span<const OpenStretch> hours, const Now& now,
                           LocalTime busyUntil)
    : m_settings(settings)
    , m_hours(hours)
    , m_now(now)
    , m_busyUntil(std::max(now.local(), busyUntil))
    , m_takes(std::clamp<Seconds>(settings.washTakes, kShortestWash, kLongestWash)) {}

std::optional<LocalTime> WashEvenings::put(Grams weight, LocalTime there) {
    const std::int64_t holds = grams(m_settings.washerHolds);
    auto at = static_cast<std::size_t>(std::ranges::lower_bound(m_loads, there, {}, &Load::begins) -
                                       m_loads.begin());
    for (;; ++at) {
        if (at == m_loads.size() && !addLoad())
            return std::nullopt;
        Load& load = m_loads[at];
        if (load.begins < there || (load.filled > 0 && load.filled + grams(weight) > holds))
            continue;
        load.filled += std::max<std::int64_t>(grams(weight), 1);
        return load.begins;
    }
}

bool WashEvenings::addLoad() {
    const std::optional<LocalTime> begins = nextBegin();
    if (begins)
        m_loads.push_back({*begins, 0});
    return begins.has_value();
}

std::optional<LocalTime> WashEvenings::nextBegin() {
    const LocalTime free = m_loads.empty() ? m_busyUntil : m_now.later(m_loads.back().begins, m_takes);
    if (m_looksAtToday) {
        // Today's working hours may be over while its evening is not.
        const LocalDate today = m_now.today();
        const auto open = m_settings.hoursOn(today);
        const bool isOver = open && m_now.local() >= LocalTime{today} + open->closes;
        if (isOver && free <= LocalTime{today} + kLastLoadBegins)
            return free;
        m_looksAtToday = false;
    }
    for (; m_day < m_hours.size(); ++m_day) {
        const LocalTime closes = m_hours[m_day].ends;
        const LocalTime begins = std::max(closes, free);
        if (begins <= std::max(closes, LocalTime{dateOf(m_hours[m_day].begins)} + kLastLoadBegins))
            return begins;
    }
    return std::nullopt;
}

} // namespace holdfast
