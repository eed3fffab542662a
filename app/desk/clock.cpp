// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/clock.h"

#include <QDateTime>
#include <QTimeZone>

#include <ctime>

namespace holdfast::app {

namespace {

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
    const Instant guess{begins.time_since_epoch()};
    return clockFrom(guess - systemOffset(guess));
}

} // namespace holdfast::app
