// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Instants are UTC seconds; promises and received days are local calendar dates and times.
// core never asks what time it is: whoever calls hands in a Now.

#include <chrono>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace holdfast {

using Instant = std::chrono::sys_seconds;
using LocalTime = std::chrono::local_seconds;
using LocalDate = std::chrono::local_days;
using Days = std::chrono::days;
using Hours = std::chrono::hours;
using Minutes = std::chrono::minutes;

inline double daysBetween(Instant from, Instant to) {
    return std::chrono::duration<double, Days::period>(to - from).count();
}

class ClockChanges; // core/trade/clock_changes.h

// The present moment and the clock on the workshop's wall.
struct Now {
    Instant instant;
    std::chrono::seconds offset{0};                // at that moment
    std::shared_ptr<const ClockChanges> changes{}; // none: the offset is the same at all times

    LocalTime local() const { return toLocal(instant); }
    LocalDate today() const { return std::chrono::floor<Days>(local()); }
    LocalTime toLocal(Instant when) const {
        return changes ? toChangedLocal(when) : LocalTime{when.time_since_epoch() + offset};
    }
    Instant toInstant(LocalTime when) const {
        return changes ? toChangedInstant(when) : Instant{when.time_since_epoch() - offset};
    }
    // What the clock shows when that span has passed, also where it is put forward or back in between.
    LocalTime later(LocalTime from, std::chrono::seconds span) const {
        return toLocal(toInstant(from) + span);
    }

private:
    LocalTime toChangedLocal(Instant when) const;
    Instant toChangedInstant(LocalTime when) const;
};

inline LocalDate dateOf(LocalTime when) {
    return std::chrono::floor<Days>(when);
}

inline LocalDate localDate(int year, unsigned month, unsigned day) {
    return LocalDate{std::chrono::year{year} / std::chrono::month{month} / std::chrono::day{day}};
}

// ISO 8601 calendar date, "2026-11-25". Reading accepts exactly that and only days that exist.
std::string isoDate(LocalDate date);
std::optional<LocalDate> parseIsoDate(std::string_view text);

// "2026-11-25T09:30:00Z"; "2026-11-25T09:30" for local time.
std::string isoInstant(Instant instant);
std::string isoLocalMinute(LocalTime time);
// Exactly as that writes it.
std::optional<LocalTime> parseIsoMinute(std::string_view text);

// "Wed 25 Nov", as a maker says a near day; "25 Nov 2026" where the year matters; "09:30".
std::string spokenDay(LocalDate date);
std::string spokenDate(LocalDate date);
std::string clockTime(LocalTime time);

} // namespace holdfast
