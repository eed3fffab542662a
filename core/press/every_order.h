// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Every order of a small day searched, garment after garment, but for those that can only be worse than the
// best known (DayBound), or come to where another order came as soon (DayMemory). Branch and bound: Land and
// Doig 1960 [M]. The most promising beginnings are gone on from first.

#include "core/press/day_bound.h"
#include "core/press/day_memory.h"
#include "core/press/day_plan_simulation.h"

#include <cstdint>
#include <functional>
#include <span>
#include <vector>

namespace holdfast {

class EveryOrder {
public:
    // REQUIRES: a start cleaned by the day, of at most 64 garments.
    EveryOrder(const TimedDay& day, std::vector<std::size_t> start);

    // The best of all orders; where it is asked to stop, the best it has met, never worse than the start.
    std::vector<std::size_t> best(const std::function<bool()>& mustStop) &&;

private:
    // One more garment given, and the day run on as far as that goes.
    struct Beginning {
        std::size_t index = 0; // of the garment in m_jobs
        DayScore least;        // that can still come of it
        DayState state;
    };

    struct Depth {
        std::vector<Beginning> beginnings; // kept from one use to the next, for their memory
        std::vector<std::size_t> byPromise;
    };

    void goOnFrom(const DayState& state, const std::function<bool()>& mustStop);
    bool tryNext(const DayState& state, std::size_t index, Beginning& next);
    bool mayBeNext(std::size_t index) const;
    void setGiven(std::size_t index, bool isGiven);
    DayScore least(const DayState& state);

    const TimedDay& m_day;
    DaySimulation m_simulation;
    DayBound m_bound;
    DayMemory m_memory;
    std::vector<std::size_t> m_jobs;
    std::vector<std::size_t> m_best;
    DayScore m_leastScore;
    std::vector<std::size_t> m_order; // given so far
    std::uint64_t m_given = 0;        // a bit for each of m_jobs
    std::vector<std::size_t> m_notGiven;
    std::vector<Depth> m_depths; // by how many were given
    bool m_isStopped = false;
};

// Nothing but their numbers, promises and weights tells them apart.
bool areAlike(const TimedJob& one, const TimedJob& other);

} // namespace holdfast
