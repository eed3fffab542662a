// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Days at the press for the tests, short to write: steps, garments, platens.

#include "core/press/day_plan.h"

#include <initializer_list>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace holdfast::press_days {

inline constexpr Instant kStart{Seconds{1'794'300'000}};

inline Instant after(std::int64_t seconds) {
    return kStart + Seconds{seconds};
}

inline RouteStep byHand(std::int64_t seconds, StepKind kind = StepKind::LintRoll) {
    RouteStep step;
    step.kind = kind;
    step.attended = Seconds{seconds};
    return step;
}

inline RouteStep pressed(double temperature, std::int64_t seconds, std::int64_t attended = 0) {
    RouteStep step;
    step.kind = StepKind::Press;
    step.attended = Seconds{attended};
    step.platen = Seconds{seconds};
    step.temperature = Celsius{temperature};
    return step;
}

inline RouteStep cooled(std::int64_t seconds) {
    RouteStep step;
    step.kind = StepKind::Cool;
    step.waiting = Seconds{seconds};
    return step;
}

inline PlatenNow platen(std::int64_t id, std::optional<double> temperature) {
    PlatenNow now;
    now.press.id = PressId{id};
    now.press.name = "Bench press";
    now.press.heatsPerMinute = 20;
    now.press.coolsPerMinute = 5;
    if (temperature)
        now.temperature = Celsius{*temperature};
    return now;
}

// One platen at 150 °C and a garment for each list of steps, numbered from 1, all due an hour from the start.
inline PlanRequest aDay(std::vector<std::vector<RouteStep>> garments,
                        std::optional<double> temperature = 150) {
    PlanRequest request;
    request.start = kStart;
    request.platens = {platen(1, temperature)};
    std::int64_t number = 0;
    for (std::vector<RouteStep>& steps : garments) {
        PressJob job;
        job.garment = GarmentId{++number};
        job.steps = std::move(steps);
        job.due = after(3600);
        request.jobs.push_back(std::move(job));
    }
    return request;
}

inline std::vector<std::size_t> asGiven(const PlanRequest& request) {
    std::vector<std::size_t> order(request.jobs.size());
    for (std::size_t job = 0; job < order.size(); ++job)
        order[job] = job;
    return order;
}

} // namespace holdfast::press_days
