#include "core/press/day_bound.h"

#include "core/press/day_trials.h"

#include <algorithm>
#include <functional>
#include <limits>

namespace holdfast {

DayScore DayBound::least(const DayState& state, std::span<const std::size_t> notGiven) {
    list(state, notGiven);
    DayScore least = leastFrom(state);
    if (m_left.empty())
        return least;
    double lateness = std::max(aloneLateness(), handsLateness(state));
    if (state.platens.size() == 1)
        lateness = std::max(lateness, platenLateness(state));
    least.lateness += lateness;
    return least;
}

void DayBound::list(const DayState& state, std::span<const std::size_t> notGiven) {
    m_left.clear();
    m_lightest = std::numeric_limits<double>::infinity();
    const auto add = [&](std::size_t job, std::size_t step, std::int64_t from) {
        m_left.push_back({job, step, from});
        m_lightest = std::min(m_lightest, m_day.jobs()[job].weight);
    };
    for (const DayState::Platen& platen : state.platens) {
        for (const DayState::Garment& garment : platen.begun)
            add(garment.job, garment.next, std::max(state.now, garment.readyAt));
        for (const DayState::Garment& garment : platen.queue)
            add(garment.job, 0, state.now);
    }
    for (const std::size_t job : notGiven)
        add(job, 0, state.now);
}

double DayBound::aloneLateness() const {
    double lateness = 0;
    for (const Left& left : m_left)
        lateness += m_day.latenessOf(left.job, left.from + m_day.jobs()[left.job].lengthFrom[left.step]);
    return lateness;
}

// A garment with nothing left for the hands, or for the platen, is not held up by them.
double DayBound::handsLateness(const DayState& state) {
    m_work.clear();
    m_due.clear();
    for (const Left& left : m_left) {
        const TimedJob& job = m_day.jobs()[left.job];
        if (job.handWorkFrom[left.step] > 0) {
            m_work.push_back(job.handWorkFrom[left.step]);
            m_due.push_back(job.due);
        }
    }
    return inTurn(std::max(state.now, state.handsFreeAt), false);
}

double DayBound::platenLateness(const DayState& state) {
    const DayState::Platen& platen = state.platens.front();
    m_work.clear();
    m_due.clear();
    for (const Left& left : m_left) {
        const TimedJob& job = m_day.jobs()[left.job];
        if (job.platenWorkFrom[left.step] > 0) {
            m_work.push_back(job.platenWorkFrom[left.step]);
            m_due.push_back(job.due);
        }
    }
    countChanges(platen);
    return inTurn(std::max({state.now, platen.freeAt, platen.steadyAt}), true);
}

// With so many changes no more garments can be done than need the platen as it is, or at the temperatures
// most asked for.
void DayBound::countChanges(const DayState::Platen& platen) {
    m_needing.assign(m_day.heats(), 0);
    m_asItIs = 0;
    for (const Left& left : m_left) {
        const TimedJob& job = m_day.jobs()[left.job];
        if (job.platenWorkFrom[left.step] <= 0)
            continue;
        if (job.lastHeat == kAnyHeat || job.lastHeat == platen.heat)
            ++m_asItIs;
        else
            ++m_needing[job.lastHeat];
    }
    m_changeInto.clear();
    m_othersCounts.clear();
    for (std::size_t heat = 0; heat < m_needing.size(); ++heat) {
        if (m_needing[heat] == 0)
            continue;
        std::int64_t least = std::numeric_limits<std::int64_t>::max();
        for (std::size_t from = 0; from < m_needing.size(); ++from) {
            if (from != heat)
                least = std::min(least, m_day.changeOn(0, from, heat));
        }
        m_changeInto.push_back(least);
        m_othersCounts.push_back(m_needing[heat]);
    }
    std::ranges::sort(m_changeInto);
    std::ranges::sort(m_othersCounts, std::greater{});
}

// One thing after another: at its best the shortest work first, each for the earliest promise left.
double DayBound::inTurn(std::int64_t from, bool hasChanges) {
    std::ranges::sort(m_work);
    std::ranges::sort(m_due);
    double lateness = 0;
    std::size_t mostDone = m_asItIs;
    std::size_t change = 0;
    std::int64_t done = from;
    for (std::size_t next = 0; next < m_due.size(); ++next) {
        while (hasChanges && next == mostDone && change < m_changeInto.size()) {
            done += m_changeInto[change];
            mostDone += m_othersCounts[change];
            ++change;
        }
        done += m_work[next];
        lateness += m_lightest * static_cast<double>(std::max<std::int64_t>(0, done - m_due[next]));
    }
    return lateness;
}

} // namespace holdfast
