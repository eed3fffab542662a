// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/film/log_clock.h"

#include "core/trade/units.h"

#include <algorithm>

namespace holdfast {

namespace {

// Clocks are never changed twice within two days.
constexpr Hours kAround{24};
// A log with a longer interval may have no time in the doubled hour at all.
constexpr Hours kDenseEnough{1};

struct Offsets {
    Seconds before;
    Seconds behind;
};

// The two offsets that a local time may have, the same on nearly every day; asked once an hour of the log.
class OffsetsAround {
public:
    explicit OffsetsAround(const OffsetAt& offsetAt)
        : m_offsetAt(offsetAt) {}

    const Offsets& of(LocalTime local) {
        const auto hour = std::chrono::floor<Hours>(local.time_since_epoch());
        if (m_hour != hour) {
            m_hour = hour;
            const Instant near{hour};
            m_offsets = {m_offsetAt(near - kAround), m_offsetAt(near + kAround)};
        }
        return m_offsets;
    }

    // The instants at which the clocks show that time: none in the hour that is left out.
    struct Shown {
        std::optional<Instant> first;
        std::optional<Instant> second;
    };
    Shown shown(LocalTime local) {
        const Offsets& around = of(local);
        const Instant before{local.time_since_epoch() - around.before};
        const Instant behind{local.time_since_epoch() - around.behind};
        if (around.before == around.behind)
            return {before, std::nullopt};
        Shown shown;
        if (m_offsetAt(before) == around.before)
            shown.first = before;
        if (m_offsetAt(behind) == around.behind)
            (shown.first ? shown.second : shown.first) = behind;
        return shown;
    }

private:
    const OffsetAt& m_offsetAt;
    std::optional<Hours> m_hour;
    Offsets m_offsets{};
};

Instant following(LocalTime local, std::optional<Instant> previous, OffsetsAround& offsets) {
    const auto shown = offsets.shown(local);
    if (!shown.first)
        return Instant{local.time_since_epoch() - offsets.of(local).before};
    const bool isSecond = shown.second && previous && *previous >= *shown.first;
    return isSecond ? *shown.second : *shown.first;
}

// Whether the log keeps the time that it was started with: it has a time that the clocks of the place never
// show, or passes the doubled hour once, reading upon reading.
bool keepsOneTime(std::span<const LocalTime> times, OffsetsAround& offsets) {
    for (std::size_t at = 0; at < times.size(); ++at) {
        const auto shown = offsets.shown(times[at]);
        if (!shown.first)
            return true;
        if (!shown.second)
            continue;
        const std::size_t begins = at;
        bool isTwice = false;
        for (; at < times.size() && offsets.shown(times[at]).second; ++at)
            isTwice = isTwice || (at > begins && times[at] <= times[at - 1]);
        const bool isPassed = begins > 0 && at < times.size() &&
                              times[begins] - times[begins - 1] <= kDenseEnough &&
                              times[at] - times[at - 1] <= kDenseEnough;
        if (isPassed && !isTwice)
            return true;
    }
    return false;
}

std::vector<Instant> instantsOfRising(std::span<const LocalTime> times, const OffsetAt& offsetAt) {
    OffsetsAround offsets{offsetAt};
    std::vector<Instant> instants;
    instants.reserve(times.size());
    if (keepsOneTime(times, offsets)) {
        const Seconds kept = offsets.of(times.front()).before;
        for (const LocalTime time : times)
            instants.push_back(Instant{time.time_since_epoch() - kept});
        return instants;
    }
    for (const LocalTime time : times)
        instants.push_back(
            following(time, instants.empty() ? std::nullopt : std::optional{instants.back()}, offsets));
    return instants;
}

} // namespace

Instant instantFollowing(LocalTime local, std::optional<Instant> previous, const OffsetAt& offsetAt) {
    OffsetsAround offsets{offsetAt};
    return following(local, previous, offsets);
}

std::vector<Instant> instantsOfLog(std::span<const LocalTime> times, const OffsetAt& offsetAt) {
    if (times.empty())
        return {};
    if (times.front() <= times.back())
        return instantsOfRising(times, offsetAt);
    std::vector<LocalTime> rising(times.rbegin(), times.rend());
    auto instants = instantsOfRising(rising, offsetAt);
    std::ranges::reverse(instants);
    return instants;
}

} // namespace holdfast
