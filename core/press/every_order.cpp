// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/every_order.h"

#include <algorithm>
#include <utility>

namespace holdfast {

bool areAlike(const TimedJob& one, const TimedJob& other) {
    return one.isUnderway == other.isUnderway && one.hasBeenOnPlaten == other.hasBeenOnPlaten &&
           one.isOnPlaten == other.isOnPlaten && one.platens == other.platens && one.steps == other.steps;
}

EveryOrder::EveryOrder(const TimedDay& day, std::vector<std::size_t> start)
    : m_day(day)
    , m_simulation(day)
    , m_bound(day)
    , m_jobs(start)
    , m_best(std::move(start))
    , m_leastScore(day.score(m_best))
    , m_depths(m_jobs.size()) {
    for (Depth& depth : m_depths)
        depth.beginnings.resize(m_jobs.size());
}

std::vector<std::size_t> EveryOrder::best(const std::function<bool()>& mustStop) && {
    m_simulation.begin(m_jobs);
    goOnFrom(DayState{m_simulation.state()}, mustStop);
    return std::move(m_best);
}

void EveryOrder::goOnFrom(const DayState& state, const std::function<bool()>& mustStop) {
    if (m_order.size() == m_jobs.size()) {
        if (state.score < m_leastScore) {
            m_leastScore = state.score;
            m_best = m_order;
        }
        return;
    }
    Depth& depth = m_depths[m_order.size()];
    depth.byPromise.clear();
    for (std::size_t index = 0; index < m_jobs.size(); ++index) {
        if (!mayBeNext(index))
            continue;
        m_isStopped = m_isStopped || mustStop();
        if (m_isStopped)
            return;
        if (tryNext(state, index, depth.beginnings[depth.byPromise.size()]))
            depth.byPromise.push_back(depth.byPromise.size());
    }
    std::ranges::stable_sort(depth.byPromise, [&](std::size_t one, std::size_t other) {
        return depth.beginnings[one].least < depth.beginnings[other].least;
    });
    for (const std::size_t next : depth.byPromise) {
        const Beginning& beginning = depth.beginnings[next];
        if (m_isStopped || !(beginning.least < m_leastScore))
            return;
        setGiven(beginning.index, true);
        if (!m_memory.hasMetAsGood(beginning.state, m_given))
            goOnFrom(beginning.state, mustStop);
        setGiven(beginning.index, false);
    }
}

// Whether the best order may go on with this garment.
bool EveryOrder::tryNext(const DayState& state, std::size_t index, Beginning& next) {
    m_simulation.begin(state);
    m_simulation.give(m_jobs[index]);
    setGiven(index, true);
    bool isPromising = least(m_simulation.state()) < m_leastScore;
    if (isPromising) {
        m_simulation.run(m_leastScore.lateness);
        next.index = index;
        next.state = m_simulation.state();
        next.least = least(next.state);
        isPromising = next.least < m_leastScore;
    }
    setGiven(index, false);
    return isPromising;
}

DayScore EveryOrder::least(const DayState& state) {
    m_notGiven.clear();
    for (std::size_t index = 0; index < m_jobs.size(); ++index) {
        if ((m_given >> index & 1) == 0)
            m_notGiven.push_back(m_jobs[index]);
    }
    return m_bound.least(state, m_notGiven);
}

void EveryOrder::setGiven(std::size_t index, bool isGiven) {
    m_given ^= std::uint64_t{1} << index;
    if (isGiven)
        m_order.push_back(m_jobs[index]);
    else
        m_order.pop_back();
}

// Those under way come first; of garments alike in everything, the first.
bool EveryOrder::mayBeNext(std::size_t index) const {
    if ((m_given >> index & 1) != 0)
        return false;
    const TimedJob& job = m_day.jobs()[m_jobs[index]];
    for (std::size_t other = 0; other < m_jobs.size(); ++other) {
        if ((m_given >> other & 1) != 0 || other == index)
            continue;
        const TimedJob& rival = m_day.jobs()[m_jobs[other]];
        if (rival.isUnderway && !job.isUnderway)
            return false;
        if (other < index && rival.due == job.due && rival.weight == job.weight && areAlike(rival, job))
            return false;
    }
    return true;
}

} // namespace holdfast
