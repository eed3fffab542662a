// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/clock.h"

#include <QDateTime>
#include <QTimeZone>

#include <ctime>

namespace holdfast::app {

namespace {

constexpr Days kBefore{400};
constexpr Days kFarthestPromise{5 * 366};
constexpr Days kHalfAYear{183}; // the clocks of a place with summer time are others then

std::chrono::milliseconds sinceBoot() {
    timespec time{};
    ::clock_gettime(CLOCK_BOOTTIME, &time);
    return std::chrono::seconds{time.tv_sec} + std::chrono::milliseconds{time.tv_nsec / 1'000'000};
}

std::chrono::seconds systemOffset(Instant instant) {
    const auto when = QDateTime::fromSecsSinceEpoch(instant.time_since_epoch().count(), QTimeZone::utc());
    return std::chrono::seconds{QTimeZone::systemTimeZone().offsetFromUtc(when)};
}

Instant systemNow() {
    return std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
}

} // namespace

std::shared_ptr<const ClockChanges> KnownClockChanges::around(Instant now, const OffsetAt& offsetAt) {
    const std::scoped_lock lock(m_guard);
    const bool isRight = m_known && now + kFarthestPromise < m_known->until() &&
                         m_known->offsetAt(now) == offsetAt(now) &&
                         m_known->offsetAt(now + kHalfAYear) == offsetAt(now + kHalfAYear);
    if (!isRight)
        m_known =
            std::make_shared<ClockChanges>(now - kBefore, now + kFarthestPromise + kHalfAYear, offsetAt);
    return m_known;
}

Clock systemClock() {
    return {systemNow, sinceBoot, systemOffset};
}

Clock clockFrom(Instant start) {
    const std::chrono::milliseconds started = sinceBoot();
    return {
        [start, started] { return start + std::chrono::floor<std::chrono::seconds>(sinceBoot() - started); },
        sinceBoot, systemOffset};
}

Clock clockOn(LocalDate date, std::chrono::minutes timeOfDay) {
    const LocalTime begins = LocalTime{date} + timeOfDay;
    const Instant about{begins.time_since_epoch()};
    return clockFrom(ClockChanges(about - Days{3}, about + Days{3}, systemOffset).toInstant(begins));
}

} // namespace holdfast::app
