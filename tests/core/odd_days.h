// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Days at the press made at random, also of kinds that a shop seldom has: three presses, several waits in a
// row, steps that nobody attends to, garments with nothing left to do.

#include "tests/core/random_days.h"

namespace holdfast::press_days {

// More waits, also several in a row and before all else.
inline void addWaits(RandomDays& days, PlanRequest& request) {
    for (PressJob& job : request.jobs) {
        if (!days.oneIn(3))
            continue;
        const std::int64_t at = days.between(0, static_cast<std::int64_t>(job.steps.size()));
        job.steps.insert(job.steps.begin() + at, cooled(days.between(0, 60)));
    }
}

// Steps that nobody attends to, and garments with nothing left to do.
inline void leaveOutHandWork(RandomDays& days, PlanRequest& request) {
    for (PressJob& job : request.jobs) {
        if (days.oneIn(10))
            job.steps.clear();
        for (RouteStep& step : job.steps) {
            if (days.oneIn(6))
                step.attended = Seconds{0};
        }
    }
}

inline PlanRequest oddDay(RandomDays& days, int day) {
    PlanRequest request = days.day(static_cast<std::size_t>(days.between(1, 40)), day % 2 == 0);
    if (day % 7 == 0)
        request.platens.push_back(platen(3, 140.0));
    if (day % 5 == 0)
        addWaits(days, request);
    if (day % 5 == 1)
        leaveOutHandWork(days, request);
    return request;
}

} // namespace holdfast::press_days
