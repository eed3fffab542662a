// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// How long a day at the press takes when its garments are taken up in a given order. Exact and deterministic:
// the dispatch rules, and every later search, are judged by it.
//
// A step takes the maker's hands for its attended time, then the closed platen for its platen time, then the
// rack for its waiting time. What is planned is a semi-active schedule: every step is begun as soon as what
// it needs is free, and where two steps ask for the same, the garment earlier in the order goes first.
//
//  - Hands: one maker, one thing at a time; free while a platen is closed. Hand work is not begun where it
//    would run past the opening of a platen, nor a platen closed that would open while the hands are busy:
//    the maker waits to lift.
//  - Platen: busy while it is loaded and while it is closed. A garment stays on it from its first step there
//    to its last before a wait (preheat, place, press), and laying a decal just before a press is loading.
//  - Temperature: a platen stays at one temperature while a garment begun there still needs it. The next
//    garment of the order is taken up meanwhile if it is pressed at that temperature and the one before it
//    has come to the platen, unless a garment begun before is ready for another temperature. Otherwise
//    the platen changes as soon as it is let go.
//  - Where several presses serve a garment, it goes to the one that would have it done first.

#include "core/press/day_plan.h"
#include "core/press/timed_steps.h"

#include <compare>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace holdfast {

// A change of temperature is worth this much of a later end: without it a day would be heated up and cooled
// down to end a few seconds sooner. Common practice, no source.
inline constexpr std::int64_t kChangeCountsFor = 120;

// What plans are compared by; less is better: lateness, then the end with what the changes count for, then
// the end.
struct DayScore {
    double lateness = 0;   // weighted seconds
    std::int64_t ends = 0; // seconds from the start
    int changes = 0;
    int lateGarments = 0; // not compared

    std::int64_t endWithChanges() const { return ends + kChangeCountsFor * changes; }
    bool operator==(const DayScore& other) const {
        return lateness == other.lateness && ends == other.ends && changes == other.changes;
    }
    std::partial_ordering operator<=>(const DayScore& other) const {
        if (const auto byLateness = lateness <=> other.lateness; byLateness != 0)
            return byLateness;
        if (const auto byEnd = endWithChanges() <=> other.endWithChanges(); byEnd != 0)
            return byEnd;
        return ends <=> other.ends;
    }
};

struct ScoredOrder {
    std::vector<std::size_t> order;
    DayScore score;
};

struct TimedJob {
    GarmentId garment;
    std::vector<TimedStep> steps;
    std::vector<std::size_t> nextOnPlaten;    // for each step, the first from it on that uses the platen
    std::vector<std::int64_t> lengthFrom;     // seconds from each step to the last, nothing between them
    std::vector<std::int64_t> handWorkFrom;   // the attended ones of them
    std::vector<std::int64_t> platenWorkFrom; // those in which it takes the platen
    std::vector<std::size_t> platens;         // that serve it
    double weight = 1;
    std::int64_t due = 0;
    std::int64_t work = 0; // attended and platen seconds
    std::size_t firstHeat = kAnyHeat;
    std::size_t lastHeat = kAnyHeat;
    bool isUnderway = false;
    bool hasBeenOnPlaten = false;
    bool isOnPlaten = false;

    bool isPressed() const { return !steps.empty() && nextOnPlaten.front() < steps.size(); }
};

// A request made ready for reckoning many orders of it. The request must stay alive and unchanged.
class TimedDay {
public:
    explicit TimedDay(const PlanRequest& request);

    const PlanRequest& request() const { return m_request; }
    std::span<const TimedJob> jobs() const { return m_jobs; }
    bool isPlaced(std::size_t job) const { return !m_jobs[job].platens.empty(); }

    std::size_t heats() const { return m_temperatures.size(); }
    double temperatureOf(std::size_t heat) const { return m_temperatures[heat]; }
    std::size_t heatNow(std::size_t platen) const { return m_heatsNow[platen]; }
    // Seconds from one temperature of a platen to another. REQUIRES: from is not kAnyHeat.
    std::int64_t changeOn(std::size_t platen, std::size_t from, std::size_t to) const {
        const std::size_t heats = m_temperatures.size();
        return to == kAnyHeat ? 0 : m_changes[(platen * heats + from) * heats + to];
    }
    // Weighted, of a job that is ready then.
    double latenessOf(std::size_t job, std::int64_t readyAt) const {
        const std::int64_t late = readyAt - m_jobs[job].due;
        return late > 0 ? m_jobs[job].weight * static_cast<double>(late) : 0;
    }

    // Placed jobs only, those under way first, nothing twice.
    std::vector<std::size_t> cleaned(std::span<const std::size_t> order) const;

    // REQUIRES: cleaned order.
    DayScore score(std::span<const std::size_t> order) const;
    DayPlan plan(std::span<const std::size_t> order) const;

private:
    std::size_t heatOf(double temperature);
    TimedJob timedJob(const PressJob& job);

    const PlanRequest& m_request;
    std::vector<double> m_temperatures;
    std::vector<std::size_t> m_heatsNow; // by platen
    std::vector<TimedJob> m_jobs;
    std::vector<std::int64_t> m_changes; // by platen, from, to
};

} // namespace holdfast
