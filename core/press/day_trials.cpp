// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/day_trials.h"

#include <algorithm>

namespace holdfast {

namespace {

// What is past has been: how long ago makes no difference.
std::int64_t ahead(std::int64_t moment, std::int64_t now) {
    return std::max<std::int64_t>(0, moment - now);
}

using Number = CourseDay::Number;
// The second place is further on by `further`, or there is neither.
bool isAsFar(Number one, Number other, Number further) {
    const bool isThere = one != CourseDay::kNone && other != CourseDay::kNone;
    return isThere ? one + further == other : one == other;
}

// The rest of the day goes on alike from both, only at another time. What was given and is not begun is for
// the caller to compare.
bool standAlike(const CourseState& one, const CourseState& other, Number further) {
    if (ahead(one.handsFreeAt, one.now) != ahead(other.handsFreeAt, other.now))
        return false;
    const auto areAlike = [&](const CourseState::Garment& a, const CourseState::Garment& b) {
        return a.step == b.step && a.place + further == b.place && a.hasBeenOnPlaten == b.hasBeenOnPlaten &&
               ahead(a.readyAt, one.now) == ahead(b.readyAt, other.now);
    };
    // Sharing out compares the platens with each other.
    const std::int64_t sharedShift = one.platens.front().sharedUntil - other.platens.front().sharedUntil;
    return std::ranges::equal(
        one.platens, other.platens, [&](const CourseState::Platen& a, const CourseState::Platen& b) {
            return a.heat == b.heat && a.isCold == b.isCold && isAsFar(a.holder, b.holder, further) &&
                   isAsFar(a.front, b.front, further) && a.sharedHeat == b.sharedHeat &&
                   a.sharedUntil - b.sharedUntil == sharedShift &&
                   ahead(a.steadyAt, one.now) == ahead(b.steadyAt, other.now) &&
                   ahead(a.freeAt, one.now) == ahead(b.freeAt, other.now) &&
                   ahead(a.opensAt, one.now) == ahead(b.opensAt, other.now) &&
                   std::ranges::equal(a.begun, b.begun, areAlike);
        });
}

// The first place that is given and not begun; where all are, the next to be given.
Number firstQueued(const CourseState& state) {
    Number first = state.given;
    for (const CourseState::Platen& platen : state.platens)
        first = std::min(first, platen.front);
    return first;
}

// How much later a day reaches the same state as another; what was shared out is counted by itself.
struct Shift {
    std::int64_t by = 0;
    std::int64_t shared = 0;
};

Shift shiftBetween(const CourseState& then, const CourseState& now) {
    return {now.now - then.now, now.platens.front().sharedUntil - then.platens.front().sharedUntil};
}

void moveOn(CourseState& state, const Shift& shift) {
    state.now += shift.by;
    state.handsFreeAt += shift.by;
    for (CourseState::Platen& platen : state.platens) {
        platen.steadyAt += shift.by;
        platen.freeAt += shift.by;
        platen.opensAt += shift.by;
        platen.sharedUntil += shift.shared;
        for (CourseState::Garment& garment : platen.begun)
            garment.readyAt += shift.by;
    }
}

} // namespace

void DayTrials::settle(std::span<const std::size_t> order) {
    std::size_t first = 0;
    std::size_t last = order.size();
    if (m_order.size() == order.size()) {
        first = static_cast<std::size_t>(std::ranges::mismatch(m_order, order).in1 - m_order.begin());
        while (last > first && m_order[last - 1] == order[last - 1])
            --last;
    }
    m_order.assign(order.begin(), order.end());
    m_before.resize(m_order.size() + 1);
    m_end.resize(m_order.size());
    m_platen.resize(m_order.size());
    if (first == 0)
        m_settling.begin(m_order);
    else
        m_settling.begin(m_before[first], m_settling, 0);
    for (std::size_t place = first; place < m_order.size(); ++place) {
        m_settling.run();
        if (place >= last && firstQueued(m_settling.state()) >= last && sharedAsBefore(place) &&
            standAlike(m_settling.state(), m_before[place], 0)) {
            settleAsBefore(place);
            return;
        }
        m_before[place] = m_settling.state();
        m_settling.give(m_order[place]);
        ++m_garmentsRun;
    }
    m_settling.run();
    m_before.back() = m_settling.state();
    m_score = m_settling.state().score;
    for (std::size_t place = 0; place < m_order.size(); ++place) {
        m_end[place] = m_settling.endAt(static_cast<Number>(place));
        m_platen[place] = m_settling.platenAt(static_cast<Number>(place));
    }
}

// What was given and is not begun waits for the platens that it waited for before.
bool DayTrials::sharedAsBefore(std::size_t to) const {
    for (Number place = firstQueued(m_settling.state()); place < to; ++place) {
        if (m_settling.platenAt(place) != m_platen[place])
            return false;
    }
    return true;
}

// From this place on the day goes on as it did, only earlier or later.
void DayTrials::settleAsBefore(std::size_t from) {
    const CourseState& now = m_settling.state();
    const Shift shift = shiftBetween(m_before[from], now);
    DayScore score = now.score;
    for (std::size_t place = from; place < m_order.size(); ++place) {
        DayScore next = score;
        next.changes += m_before[place + 1].score.changes - m_before[place].score.changes;
        addEnds(next, place, place + 1, shift.by);
        m_before[place].score = score;
        moveOn(m_before[place], shift);
        score = next;
    }
    m_before.back().score = m_score = score;
    moveOn(m_before.back(), shift);
    for (std::size_t place = 0; place < m_order.size(); ++place) {
        const bool isAsBefore = place >= from || isLeftAt(now, place);
        m_end[place] = isAsBefore ? m_end[place] + shift.by : m_settling.endAt(static_cast<Number>(place));
        m_settling.setEndAt(static_cast<Number>(place), m_end[place]);
        m_platen[place] = m_settling.platenAt(static_cast<Number>(place));
    }
}

DayScore DayTrials::after(const OrderMove& move, double mostLateness) {
    const auto& [first, firstEnd, second, last] = move;
    m_trying.begin(m_before[first], m_settling, 0);
    const std::size_t between = first + (last - second);
    if (runThrough({second, last, first}, mostLateness) &&
        runThrough({firstEnd, second, between}, mostLateness) &&
        runThrough({first, firstEnd, between + (second - firstEnd)}, mostLateness) &&
        runThrough({last, m_order.size(), last}, mostLateness))
        m_trying.run(mostLateness);
    return m_trying.state().score;
}

// False: the score is known already, or that it is later than that.
bool DayTrials::runThrough(const Stretch& stretch, double mostLateness) {
    const bool isTheRest = stretch.asked == stretch.begin && stretch.end == m_order.size();
    for (std::size_t place = stretch.begin; place < stretch.end; ++place) {
        const std::size_t asked = stretch.asked + (place - stretch.begin);
        m_trying.run(mostLateness);
        if (m_trying.state().score.lateness > mostLateness)
            return false;
        // The end of the settled day is reached only where nothing else is still to be given.
        if ((isTheRest || stretch.end < m_order.size()) && standsAsBefore(place, asked)) {
            goOnAsBefore(place, stretch.end, asked);
            return !isTheRest;
        }
        m_trying.give(m_order[place]);
        ++m_garmentsRun;
    }
    return true;
}

// The day is in the same state as in the settled order when that place was asked for, though earlier or
// later.
bool DayTrials::standsAsBefore(std::size_t settled, std::size_t asked) const {
    const CourseState& then = m_before[settled];
    const auto further = static_cast<Number>(asked - settled); // round the clock of unsigned numbers
    if (!standAlike(then, m_trying.state(), further))
        return false;
    for (Number place = firstQueued(then); place < then.given; ++place) {
        if (m_settling.jobAt(place) != m_trying.jobAt(place + further) ||
            m_settling.platenAt(place) != m_trying.platenAt(place + further))
            return false;
    }
    return true;
}

// From the settled place `from`, which is asked for as the place `asked` now, straight to the place `to`.
void DayTrials::goOnAsBefore(std::size_t from, std::size_t to, std::size_t asked) {
    const CourseState& now = m_trying.state();
    const CourseState& then = m_before[from];
    const Shift shift = shiftBetween(then, now);
    m_jumped = m_before[to];
    m_jumped.score = now.score;
    m_jumped.score.changes += m_before[to].score.changes - then.score.changes;
    addEnds(m_jumped.score, from, to, shift.by);
    moveOn(m_jumped, shift);
    for (std::size_t index = 0; index < m_jumped.platens.size(); ++index) {
        Number& toCome = m_jumped.platens[index].toCome;
        toCome = now.platens[index].toCome - (then.platens[index].toCome - toCome);
    }
    m_trying.begin(m_jumped, m_settling, static_cast<Number>(asked - from));
}

bool DayTrials::isLeftAt(const CourseState& state, std::size_t place) const {
    if (place >= state.given)
        return true;
    const auto number = static_cast<Number>(place);
    const CourseState::Platen& platen = state.platens[m_settling.platenAt(number)];
    return platen.front <= number ||
           std::ranges::find(platen.begun, number, &CourseState::Garment::place) != platen.begun.end();
}

// Of the garments that were not done at the settled place `from` and are done at `to`.
void DayTrials::addEnds(DayScore& score, std::size_t from, std::size_t to, std::int64_t shift) const {
    const CourseState& then = m_before[from];
    const auto add = [&](std::size_t place) {
        if (m_end[place] > m_before[to].now && isLeftAt(m_before[to], place))
            return;
        const CourseDay::Job& job = m_day.job(m_order[place]);
        const std::int64_t end = m_end[place] + shift;
        if (end > job.due) {
            score.lateness += job.weight * static_cast<double>(end - job.due);
            ++score.lateGarments;
        }
        score.ends = std::max(score.ends, end);
    };
    for (const CourseState::Platen& platen : then.platens) {
        for (const CourseState::Garment& garment : platen.begun)
            add(garment.place);
    }
    for (Number place = firstQueued(then); place < from; ++place) {
        if (then.platens[m_settling.platenAt(place)].front <= place)
            add(place);
    }
    for (std::size_t place = from; place < to; ++place)
        add(place);
}

} // namespace holdfast
