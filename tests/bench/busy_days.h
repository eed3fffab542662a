// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Busy days at the press, drawn at random as those of the tests are (tests/core/random_days.h), with promises
// so close that many cannot be kept: 24 of 30 to 120 garments on one press and on two.

#include "tests/core/random_days.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace holdfast::bench {

struct BusyDay {
    std::string name; // presses-garments-number
    PlanRequest request;
};

// The same for the same seed; another seed is another set.
inline std::vector<BusyDay> busyDays(unsigned seed) {
    std::vector<BusyDay> days;
    for (const std::size_t presses : {1, 2}) {
        for (const std::size_t garments : {30, 60, 90, 120}) {
            for (const std::int64_t number : {1, 2, 3}) {
                press_days::RandomDays drawn{seed + static_cast<unsigned>(number) +
                                             10 * static_cast<unsigned>(garments)};
                PlanRequest request = drawn.day(garments, presses == 2);
                const std::int64_t apart = 25 + 15 * number; // seconds between promises, on average
                for (PressJob& job : request.jobs) {
                    job.due =
                        press_days::after(drawn.between(0, static_cast<std::int64_t>(garments) * apart));
                    job.isUnderway = job.hasBeenOnPlaten = job.isOnPlaten = false;
                }
                days.push_back(
                    {std::to_string(presses) + "-" + std::to_string(garments) + "-" + std::to_string(number),
                     std::move(request)});
            }
        }
    }
    return days;
}

} // namespace holdfast::bench
