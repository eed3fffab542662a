// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/day_bound.h"

#include <algorithm>
#include <functional>
#include <limits>

namespace holdfast {

namespace {

// Nothing that is still to come from this state on can make its score better than this.
DayScore leastFrom(const DayState& state) {
    DayScore least = state.score;
    least.ends = std::max(least.ends, std::max(state.now, state.handsFreeAt) + state.handWorkLeft);
    return least;
}

} // namespace

DayBound::DayBound(const TimedDay& day)
    : m_day(day) {
    for (const TimedJob& job : day.jobs()) {
        std::int64_t afterHands = 0;
        std::int64_t afterPlaten = 0;
        std::int64_t length = 0;
        for (const TimedStep& step : job.steps) {
            length += step.attended + step.platen + step.waiting;
            if (step.attended > 0)
                afterHands = length - step.platen - step.waiting;
            if (step.usesPlaten)
                afterPlaten = length - step.waiting;
        }
        m_afterHands.push_back(length - afterHands);
        m_afterPlaten.push_back(length - afterPlaten);
        std::int64_t sitting = 0;
        if (job.isPressed()) {
            std::size_t step = job.nextOnPlaten.front();
            do {
                sitting += job.steps[step].attended + job.steps[step].platen;
            } while (job.steps[step++].keepsPlaten);
        }
        m_firstSitting.push_back(sitting);
    }
}

DayScore DayBound::least(const DayState& state, std::span<const std::size_t> notGiven) {
    list(state, notGiven);
    DayScore least = leastFrom(state);
    double lateness = 0;
    const auto take = [&](const Least& other) {
        lateness = std::max(lateness, other.lateness);
        least.ends = std::max(least.ends, other.ends);
    };
    take(alone([](const Left&) { return true; }));
    take(onHands(state));
    for (const bool isNotGivenOnly : {false, true}) {
        // What is given is counted by itself where only the rest is added up.
        const Least given = isNotGivenOnly ? alone([](const Left& left) { return left.isGiven; }) : Least{};
        const std::vector<Behind>& from = isNotGivenOnly ? m_behind : m_now;
        Least each = given;
        each.add(alone([](const Left& left) { return !left.platen; }));
        for (std::size_t platen = 0; platen < state.platens.size(); ++platen)
            each.add(onPlaten(platen, from[platen], isNotGivenOnly));
        take(each);
        if (state.platens.size() > 1) {
            Least all = given;
            all.add(onAllPlatens(isNotGivenOnly));
            take(all);
        }
    }
    least.lateness += lateness;
    least.changes += leastChanges(state);
    return least;
}

void DayBound::list(const DayState& state, std::span<const std::size_t> notGiven) {
    m_left.clear();
    m_now.clear();
    m_behind.clear();
    for (std::size_t platen = 0; platen < state.platens.size(); ++platen)
        listGiven(state, platen);
    for (const std::size_t job : notGiven) {
        const std::vector<std::size_t>& platens = m_day.jobs()[job].platens;
        std::int64_t ends = std::numeric_limits<std::int64_t>::max();
        for (const std::size_t platen : platens)
            ends = std::min(ends, endBehind(job, platen));
        m_left.push_back(
            {job, 0, ends, platens.size() == 1 ? std::optional{platens.front()} : std::nullopt, false});
    }
}

// Those that are queueing come to the platen in their order.
void DayBound::listGiven(const DayState& state, std::size_t index) {
    const DayState::Platen& platen = state.platens[index];
    for (const DayState::Garment& garment : platen.begun) {
        const std::int64_t from = std::max(state.now, garment.readyAt);
        m_left.push_back({garment.job, garment.next,
                          from + m_day.jobs()[garment.job].lengthFrom[garment.next], index, true});
    }
    m_now.push_back({state.now, std::max({state.now, platen.freeAt, platen.steadyAt}), platen.heat});
    m_behind.push_back(m_now.back());
    for (const DayState::Garment& garment : platen.queue) {
        m_left.push_back({garment.job, 0, endBehind(garment.job, index), index, true});
        const TimedJob& job = m_day.jobs()[garment.job];
        if (!job.isPressed())
            continue;
        Behind& behind = m_behind.back();
        behind.taken = std::max(behind.taken + job.lengthFrom[0] - job.lengthFrom[job.nextOnPlaten[0]],
                                behind.free + m_day.changeOn(index, behind.heat, job.firstHeat));
        behind.free = behind.taken + m_firstSitting[garment.job];
        if (job.firstHeat != kAnyHeat)
            behind.heat = job.firstHeat;
    }
}

// The earliest end of a garment that comes to a platen after those listed for it.
std::int64_t DayBound::endBehind(std::size_t index, std::size_t platen) const {
    const TimedJob& job = m_day.jobs()[index];
    const Behind& behind = m_behind[platen];
    const std::int64_t takenUp = behind.taken + job.lengthFrom.front();
    if (!job.isPressed())
        return takenUp;
    const std::int64_t onPlaten = behind.free + m_day.changeOn(platen, behind.heat, job.firstHeat);
    return std::max(takenUp, onPlaten + job.lengthFrom[job.nextOnPlaten.front()]);
}

template <class Counts>
DayBound::Least DayBound::alone(Counts counts) const {
    Least least;
    for (const Left& left : m_left) {
        if (counts(left))
            least.add({latenessAlone(left), left.endsAlone});
    }
    return least;
}

void DayBound::Least::add(const Least& other) {
    lateness += other.lateness;
    ends = std::max(ends, other.ends);
}

void DayBound::Queue::clear() {
    work.clear();
    due.clear();
    lightest = std::numeric_limits<double>::infinity();
    leastTail = std::numeric_limits<std::int64_t>::max();
}

void DayBound::Queue::add(std::int64_t takes, const TimedJob& job, std::int64_t tail) {
    work.push_back(takes);
    due.push_back(job.due - tail);
    lightest = std::min(lightest, job.weight);
    leastTail = std::min(leastTail, tail);
}

void DayBound::Queue::settle() {
    std::ranges::sort(work);
    std::ranges::sort(due);
}

// A garment with nothing left for the hands, or for the platen, is not held up by them.
DayBound::Least DayBound::onHands(const DayState& state) {
    m_queue.clear();
    for (const Left& left : m_left) {
        const TimedJob& job = m_day.jobs()[left.job];
        if (const std::int64_t work = job.handWorkFrom[left.step]; work > 0)
            m_queue.add(work, job, m_afterHands[left.job]);
    }
    m_queue.settle();
    m_asItIs = m_queue.work.size();
    return inTurn(std::max(state.now, state.handsFreeAt));
}

DayBound::Least DayBound::onPlaten(std::size_t platen, const Behind& from, bool isNotGivenOnly) {
    m_queue.clear();
    m_asItIs = 0;
    m_needing.assign(m_day.heats(), 0);
    double others = 0;
    for (const Left& left : m_left) {
        if (left.platen != platen || (isNotGivenOnly && left.isGiven))
            continue;
        const TimedJob& job = m_day.jobs()[left.job];
        const std::int64_t work = job.platenWorkFrom[left.step];
        if (work <= 0) {
            others += latenessAlone(left);
            continue;
        }
        m_queue.add(work, job, m_afterPlaten[left.job]);
        if (job.lastHeat == kAnyHeat || job.lastHeat == from.heat)
            ++m_asItIs;
        else
            ++m_needing[job.lastHeat];
    }
    listChanges(platen);
    m_queue.settle();
    Least least = inTurn(from.free);
    least.lateness += others;
    return least;
}

// With that many changes no more garments can be done than need the platen as it is, or at the temperatures
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
DayBound::Least DayBound::inTurn(std::int64_t from) const {
    if (m_queue.work.empty())
        return {};
    Least least;
    std::size_t mostDone = m_asItIs;
    std::size_t change = 0;
    std::int64_t done = from;
    for (std::size_t next = 0; next < m_queue.work.size(); ++next) {
        if (next == mostDone) {
            done += m_changeInto[change];
            mostDone += m_othersCounts[change];
            ++change;
        }
        done += m_queue.work[next];
        least.lateness +=
            m_queue.lightest * static_cast<double>(std::max<std::int64_t>(0, done - m_queue.due[next]));
    }
    least.ends = done + m_queue.leastTail;
    return least;
}

// So many jobs are done no sooner than the platens together have had time for the least work of that number.
DayBound::Least DayBound::onAllPlatens(bool isNotGivenOnly) {
    m_queue.clear();
    for (const Left& left : m_left) {
        const TimedJob& job = m_day.jobs()[left.job];
        const std::int64_t work = job.platenWorkFrom[left.step];
        if (work > 0 && !(isNotGivenOnly && left.isGiven))
            m_queue.add(work, job, m_afterPlaten[left.job]);
    }
    if (m_queue.work.empty())
        return {};
    m_queue.settle();
    m_free.clear();
    for (const Behind& platen : isNotGivenOnly ? m_behind : m_now)
        m_free.push_back(platen.free);
    std::ranges::sort(m_free);

    Least least;
    std::int64_t done = m_free.front();
    std::int64_t work = 0;   // of those done by then
    std::int64_t worked = 0; // the platens' time from each one's freeing until then
    std::size_t working = 1;
    for (std::size_t next = 0; next < m_queue.work.size(); ++next) {
        work += m_queue.work[next];
        while (worked < work) {
            const auto platens = static_cast<std::int64_t>(working);
            const std::int64_t takes = (work - worked + platens - 1) / platens;
            const bool isJoined = working < m_free.size() && done + takes > m_free[working];
            const std::int64_t until = isJoined ? m_free[working] : done + takes;
            worked += (until - done) * platens;
            done = until;
            working += isJoined ? 1 : 0;
        }
        least.lateness +=
            m_queue.lightest * static_cast<double>(std::max<std::int64_t>(0, done - m_queue.due[next]));
    }
    least.ends = done + m_queue.leastTail;
    return least;
}

// Every temperature asked for that no platen has must be come to, at least once; the first of a cold platen
// is none.
int DayBound::leastChanges(const DayState& state) {
    m_isThere.assign(m_day.heats(), false);
    for (const DayState::Platen& platen : state.platens) {
        if (!platen.isCold)
            m_isThere[platen.heat] = true;
    }
    int least = 0;
    int stillCold = 0;
    for (std::size_t index = 0; index < state.platens.size(); ++index) {
        const DayState::Platen& platen = state.platens[index];
        m_isNeeded.assign(m_day.heats(), false);
        int needed = 0;
        for (const Left& left : m_left) {
            if (left.platen != index)
                continue;
            const TimedJob& job = m_day.jobs()[left.job];
            for (std::size_t step = left.step; step < job.steps.size(); ++step) {
                const std::size_t heat = job.steps[step].heat;
                if (heat == kAnyHeat || (heat == platen.heat && !platen.isCold) || m_isNeeded[heat])
                    continue;
                m_isNeeded[heat] = m_isThere[heat] = true;
                ++needed;
            }
        }
        if (platen.isCold && needed == 0)
            ++stillCold;
        least += std::max(0, needed - (platen.isCold ? 1 : 0));
    }
    int others = 0;
    for (const Left& left : m_left) {
        if (left.platen)
            continue;
        for (const TimedStep& step : m_day.jobs()[left.job].steps) {
            if (step.heat == kAnyHeat || m_isThere[step.heat])
                continue;
            m_isThere[step.heat] = true;
            ++others;
        }
    }
    return least + std::max(0, others - stillCold);
}

} // namespace holdfast
