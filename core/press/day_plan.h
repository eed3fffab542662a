// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The plan of a day at the press: which garment when, in heat runs.
//
// One maker and one or two presses. A platen heats and cools at its own rates, so the order matters; cooling
// needs neither platen nor hands, so the next garment is pressed meanwhile. Dispatch rules give a first order
// (earliest promise, least set-up, apparent tardiness cost with set-ups after Lee, Bhaskaran and Pinedo
// 1997), and so does what is left of the plan before; from the best by lateness and end (see DayScore) a
// better one is searched, among all orders up to eight garments (day_search.h). The same request gives the
// same plan on every machine, however busy: what is spent on it is counted, not timed.
//
// How time is calculated for a given order: see day_plan_timing.h. Times are whole seconds; a step's
// attended, platen and waiting time each count at most 366 days, and sums saturate.

#include "core/facts/press.h"
#include "core/press/route.h"
#include "core/trade/dates.h"
#include "core/trade/ids.h"

#include <chrono>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace holdfast {

struct PressJob {
    GarmentId garment;
    std::vector<RouteStep> steps; // what is still to be done, in order
    std::optional<PressId> press; // where it must be pressed; none: any
    Instant due;                  // pressed by then, the promise is kept
    double weight = 1;
    bool isUnderway = false;      // already begun: it is finished first
    bool hasBeenOnPlaten = false; // with a step that is done or under way
    bool isOnPlaten = false;      // it lies there now (see platenSoFar in timed_steps.h)
};

struct PlatenNow {
    Press press;
    std::optional<Celsius> temperature; // none: cold, at room temperature
};

// What a window waits for: ten to twenty milliseconds, the rules included.
inline constexpr std::uint64_t kWorkAtOnce = 20'000;

// How long a better order is looked for, and from where. Where the numbers are drawn from changes with the
// order that the search goes on from, so that going on again and again looks at other orders each time.
struct PlanSearch {
    std::uint64_t work = kWorkAtOnce; // garments run through in trials. 0: no search
    std::uint64_t seed = 1;
    // The order of the plan shown before: this one is not worse than what is left of that order. Garments
    // that are no longer there are passed over, new ones come after them, the earliest promise first.
    std::vector<GarmentId> goesOnFrom;
    // The order that the maker sees: kept, unless another is worth the change (isWorthTheChange).
    std::vector<GarmentId> shown;
};

struct PlanRequest {
    std::vector<PlatenNow> platens;
    std::vector<PressJob> jobs;
    Instant start;
    PlanSearch search;
    std::function<bool()> shouldStop; // asked every few milliseconds; may be empty
};

enum class Resource { Platen, Hands, Rack };

// One stretch of time of one resource, for the strip of the day.
struct PlannedSpan {
    GarmentId garment;
    std::size_t step = 0; // index into the job's steps
    Resource resource = Resource::Hands;
    PressId press;
    Instant begins;
    Instant ends;
};

struct PlannedGarment {
    GarmentId garment;
    PressId press;
    Celsius temperature; // of its first press pass
    Instant begins;      // the maker takes it up
    Instant ends;        // its last step is over
    Seconds late{0};     // beyond its due time
};

// Garments pressed one after the other at one temperature of one platen. The change to the next run begins as
// soon as the platen is let go, often while the last garments of this one still cool.
struct HeatRun {
    PressId press;
    Celsius temperature;
    Seconds change{0};                    // heating or cooling before it
    std::optional<Celsius> changedFrom;   // none: no change, or warmed up from cold
    Instant begins;                       // the platen is first used
    Instant ends;                         // its last garment is over
    std::vector<PlannedGarment> garments; // by the time they are taken up; each is in one run
    std::vector<GarmentId>
        again; // here for a later pass; their first is in an earlier run. A run may have only these
};

struct DayPlan {
    std::vector<HeatRun> runs;        // by beginning
    std::vector<PlannedSpan> spans;   // by beginning
    std::vector<GarmentId> unplaced;  // no press in the request serves them; see whyUnplaced
    std::vector<GarmentId> order;     // in which they ask for hands and platen; see PlanSearch::goesOnFrom
    std::vector<GarmentId> bestOrder; // the best found: another than `order` where the order shown was kept
    Instant ends;
    Seconds lateness{0};     // weighted sum, rounded to seconds
    int changes = 0;         // of temperature; warming up from cold is none
    bool isCutShort = false; // with more work, or had it not been stopped, it may be better

    const PlannedGarment* find(GarmentId garment) const;
    int lateGarments() const;
    // Of the same request: less late, or as late and over sooner (see DayScore).
    bool isBetterThan(const DayPlan& other) const;
};

DayPlan planDay(const PlanRequest& request);

// Whether a better plan of the same request is worth that the walk shown changes before the maker's eyes:
// fewer garments are late, or the lateness is less by a twentieth, or nothing is late in either and it is
// over five minutes sooner (a change of temperature counting for two, see DayScore). Our own measure.
bool isWorthTheChange(const DayPlan& better, const DayPlan& shown);

// The plan of garments in exactly this order (indices into request.jobs; those under way go before the others
// all the same): what the dispatch rules and every later search are judged by. Jobs not named are not
// planned. REQUIRES: each index below jobs.size(), none twice. An index that is not so is passed over.
DayPlan planInOrder(const PlanRequest& request, const std::vector<std::size_t>& order);

// Why no press in the request serves a job, in words; none: one does. A press whose rate of heating or
// cooling is not above zero cannot change: it serves only what is pressed at the temperature it has now.
std::optional<Sentence> whyUnplaced(const PlanRequest& request, const PressJob& job);

// Whole seconds to bring a platen from one temperature to another, rounded up; Seconds::max() where it never
// gets there (see whyUnplaced). A change counts at most 366 days.
Seconds changeTime(const Press& press, Celsius from, Celsius to);

// Temperature of a platen that has not been switched on today.
inline constexpr Celsius kRoomTemperature{20};

} // namespace holdfast
