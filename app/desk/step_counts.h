// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The seconds of every step under way that is counted down: heat on the platen, cooling on the rack.
//
// left = counted − elapsed. The first time a step is seen, what has elapsed is read from the wall clock (the
// program may have been closed meanwhile); from then on it grows by Clock::steady, which runs on while the
// window is hidden or the machine sleeps and does not follow a wall clock that is set. A step that is seen
// first and begins in the future (the clock was set back while the program was closed) cannot be counted: it
// is askew until its count is started again.

#include "app/desk/clock.h"
#include "core/shop/reckoned_shop.h"

#include <chrono>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::app {

struct StepCount {
    GarmentId garment;
    Instant startedAt;
    Seconds counted{0};
    std::chrono::milliseconds left{0}; // negative: seconds over
    bool isAskew = false;              // begun in the future; left is all that is counted
    bool isHeat = false;               // the platen is closed; else it cools

    bool isOver() const { return !isAskew && left.count() <= 0; }
    Seconds secondsLeft() const; // rounded up: 0 only when it is over
    Seconds secondsOver() const;
};

class StepCounts {
public:
    explicit StepCounts(const Clock& clock)
        : m_clock(clock) {}

    // Takes note of steps that were opened, and forgets those that are closed.
    void see(const ReckonedShop& shop);

    std::optional<StepCount> of(GarmentId garment) const;
    std::vector<StepCount> all() const;
    // The count that ends next; none when nothing counts.
    std::optional<StepCount> soonest() const;
    bool isEmpty() const { return m_sights.empty(); }

private:
    struct Sight {
        std::string key;
        int attempt = 1;
        Instant startedAt;
        Seconds counted{0};
        std::chrono::milliseconds seenAt{0};  // steady
        std::chrono::milliseconds elapsed{0}; // by then
        bool isAskew = false;
        bool isHeat = false;
    };

    Sight firstSight(const Garment& garment, const RouteStep& step, Instant startedAt) const;
    StepCount countOf(GarmentId garment, const Sight& sight) const;

    const Clock& m_clock;
    std::map<GarmentId, Sight> m_sights;
};

} // namespace holdfast::app
