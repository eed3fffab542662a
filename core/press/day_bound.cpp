#include "core/press/day_bound.h"

#include "core/press/day_trials.h"

#include <algorithm>
#include <functional>
#include <limits>

namespace holdfast {

DayScore DayBound::least(const DayState& state, std::span<const std::size_t> notGiven) {
    list(state, notGiven);
    double alone = 0;
    double onPlatens = 0;
    for (const Left& left : m_left) {
        alone += latenessAlone(left);
        if (!left.platen)
            onPlatens += latenessAlone(left);
    }
    for (std::size_t platen = 0; platen < state.platens.size(); ++platen)
        onPlatens += latenessOnPlaten(state, platen);

    DayScore least = leastFrom(state);
    least.lateness += std::max({alone, onPlatens, latenessOnHands(state)});
    return least;
}

void DayBound::list(const DayState& state, std::span<const std::size_t> notGiven) {
    m_left.clear();
    for (std::size_t platen = 0; platen < state.platens.size(); ++platen) {
        for (const DayState::Garment& garment : state.platens[platen].begun)
            m_left.push_back({garment.job, garment.next, std::max(state.now, garment.readyAt), platen});
        for (const DayState::Garment& garment : state.platens[platen].queue)
            m_left.push_back({garment.job, 0, state.now, platen});
    }
    for (const std::size_t job : notGiven) {
        const std::vector<std::size_t>& platens = m_day.jobs()[job].platens;
        m_left.push_back(
            {job, 0, state.now, platens.size() == 1 ? std::optional{platens.front()} : std::nullopt});
    }
}

double DayBound::latenessAlone(const Left& left) const {
    return m_day.latenessOf(left.job, left.from + m_day.jobs()[left.job].lengthFrom[left.step]);
}

void DayBound::take(const Left& left, std::int64_t work) {
    m_work.push_back(work);
    m_due.push_back(m_day.jobs()[left.job].due);
    m_lightest = std::min(m_lightest, m_day.jobs()[left.job].weight);
}

// A garment with nothing left for the hands, or for the platen, is not held up by them.
double DayBound::latenessOnHands(const DayState& state) {
    m_work.clear();
    m_due.clear();
    m_lightest = std::numeric_limits<double>::infinity();
    m_asItIs = m_left.size();
    for (const Left& left : m_left) {
        if (const std::int64_t work = m_day.jobs()[left.job].handWorkFrom[left.step]; work > 0)
            take(left, work);
    }
    std::ranges::sort(m_work);
    std::ranges::sort(m_due);
    return inTurn(std::max(state.now, state.handsFreeAt));
}

double DayBound::latenessOnPlaten(const DayState& state, std::size_t index) {
    const DayState::Platen& platen = state.platens[index];
    m_work.clear();
    m_due.clear();
    m_lightest = std::numeric_limits<double>::infinity();
    m_asItIs = 0;
    m_needing.assign(m_day.heats(), 0);
    double others = 0;
    for (const Left& left : m_left) {
        if (left.platen != index)
            continue;
        const TimedJob& job = m_day.jobs()[left.job];
        const std::int64_t work = job.platenWorkFrom[left.step];
        if (work <= 0) {
            others += latenessAlone(left);
            continue;
        }
        take(left, work);
        if (job.lastHeat == kAnyHeat || job.lastHeat == platen.heat)
            ++m_asItIs;
        else
            ++m_needing[job.lastHeat];
    }
    listChanges(index);
    std::ranges::sort(m_work);
    std::ranges::sort(m_due);
    return others + inTurn(std::max({state.now, platen.freeAt, platen.steadyAt}));
}

// With so many changes no more garments can be done than need the platen as it is, or at the temperatures
// most asked for.
void DayBound::listChanges(std::size_t platen) {
    m_changeInto.clear();
    m_othersCounts.clear();
    for (std::size_t heat = 0; heat < m_needing.size(); ++heat) {
        if (m_needing[heat] == 0)
            continue;
        std::int64_t least = std::numeric_limits<std::int64_t>::max();
        for (std::size_t from = 0; from < m_needing.size(); ++from) {
            if (from != heat)
                least = std::min(least, m_day.changeOn(platen, from, heat));
        }
        m_changeInto.push_back(least);
        m_othersCounts.push_back(m_needing[heat]);
    }
    std::ranges::sort(m_changeInto);
    std::ranges::sort(m_othersCounts, std::greater{});
}

// One thing after another: at its best the shortest work first, each for the earliest promise left.
double DayBound::inTurn(std::int64_t from) const {
    double lateness = 0;
    std::size_t mostDone = m_asItIs;
    std::size_t change = 0;
    std::int64_t done = from;
    for (std::size_t next = 0; next < m_due.size(); ++next) {
        if (next == mostDone) {
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
