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
//    who presses stands ready to lift.
//  - Platen: busy while it is loaded and while it is closed. A garment stays on it from its first step there
//    to its last before a wait (preheat, place, press), and laying a decal just before a press is loading.
//  - Temperature: a platen stays at one temperature while a garment begun there still needs it. The next
//    garment of the order is taken up meanwhile if it is pressed at that temperature and the one before it
//    has come to the platen, unless a garment begun before stands ready for another temperature. Otherwise
//    the platen changes as soon as it is let go.
//  - Where several presses serve a garment, it goes to the one that would have it done first.

#include "core/press/day_plan.h"

#include <compare>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace holdfast {

// What plans are compared by; less is better.
struct DayScore {
    double lateness = 0;   // weighted seconds
    std::int64_t ends = 0; // seconds from the start
    int changes = 0;

    auto operator<=>(const DayScore&) const = default;
};

// Seconds from the request's start are used throughout.
struct TimedStep {
    std::int64_t attended = 0;
    std::int64_t platen = 0;
    std::int64_t waiting = 0;
    bool usesPlaten = false;
    bool keepsPlaten = false;          // the garment lies there until its next step
    std::optional<double> temperature; // none: as the platen is
};

struct TimedJob {
    GarmentId garment;
    std::vector<TimedStep> steps;
    std::vector<std::size_t> nextOnPlaten; // for each step, the first from it on that uses the platen
    std::vector<std::size_t> platens;      // that serve it
    double weight = 1;
    std::int64_t due = 0;
    std::int64_t work = 0; // attended and platen seconds
    bool isUnderway = false;

    std::optional<double> firstTemperature() const;
    std::optional<double> lastTemperature() const;
    bool isPressed() const { return !steps.empty() && nextOnPlaten.front() < steps.size(); }
};

// A request made ready for reckoning many orders of it. The request must stay alive and unchanged.
class TimedDay {
public:
    explicit TimedDay(const PlanRequest& request);

    const PlanRequest& request() const { return m_request; }
    std::span<const TimedJob> jobs() const { return m_jobs; }
    bool isPlaced(std::size_t job) const { return !m_jobs[job].platens.empty(); }

    // Seconds from one temperature of a platen to another; none stands for "as it is".
    std::int64_t changeOn(std::size_t platen, double from, std::optional<double> to) const;
    double temperatureNow(std::size_t platen) const;

    // Placed jobs only, those under way first, nothing twice.
    std::vector<std::size_t> cleaned(std::span<const std::size_t> order) const;

    // REQUIRES: cleaned order.
    DayScore score(std::span<const std::size_t> order) const;
    DayPlan plan(std::span<const std::size_t> order) const;

private:
    const PlanRequest& m_request;
    std::vector<TimedJob> m_jobs;
};

} // namespace holdfast
