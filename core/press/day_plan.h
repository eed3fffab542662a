#pragma once
// The plan of a day at the press: which garment when, in heat runs.
//
// One maker and one or two presses. A platen heats and cools at its own rates, so the order matters; cooling
// needs neither platen nor hands, so the next garment is pressed meanwhile. Dispatch rules give the order
// (earliest promise, least set-up, apparent tardiness cost with set-ups after Lee, Bhaskaran and Pinedo 1997);
// the best by (weighted lateness, end, temperature changes) is taken. Deterministic.

#include "core/press/press.h"
#include "core/press/route.h"
#include "core/trade/dates.h"
#include "core/trade/ids.h"

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
};

struct PlatenNow {
    Press press;
    std::optional<Celsius> temperature; // none: cold, at room temperature
};

struct PlanRequest {
    std::vector<PlatenNow> platens;
    std::vector<PressJob> jobs;
    Instant start;
    std::function<bool()> shouldStop; // asked now and then by long searches; may be empty
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
    Instant begins;
    Instant ends;
    Seconds late{0};     // beyond its due time
};

struct HeatRun {
    PressId press;
    Celsius temperature;
    Seconds change{0};     // heating or cooling before it
    std::optional<Celsius> changedFrom;
    Instant begins;
    Instant ends;
    std::vector<PlannedGarment> garments;
};

struct DayPlan {
    std::vector<HeatRun> runs;      // by beginning
    std::vector<PlannedSpan> spans; // by beginning
    std::vector<GarmentId> unplaced; // no press in the request serves them
    Instant ends;
    Seconds lateness{0};  // weighted sum, rounded to seconds
    int changes = 0;      // of temperature

    const PlannedGarment* find(GarmentId garment) const;
};

DayPlan planDay(const PlanRequest& request);

// The plan of garments in exactly this order: what the dispatch rules and every later search are judged by.
DayPlan planInOrder(const PlanRequest& request, const std::vector<std::size_t>& order);

// Seconds to bring a platen from one temperature to another.
Seconds changeTime(const Press& press, Celsius from, Celsius to);

} // namespace holdfast
