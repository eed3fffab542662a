#include "core/press/day_trials.h"

#include <algorithm>

namespace holdfast {

namespace {

// What is past has been: how long ago makes no difference.
std::int64_t ahead(std::int64_t moment, std::int64_t now) {
    return std::max<std::int64_t>(0, moment - now);
}

using Garments = std::vector<DayState::Garment>;

// The garments of `one` are at places further on by `further`.
bool standAlike(const Garments& one, std::int64_t oneNow, const Garments& other, std::int64_t otherNow,
                std::size_t further) {
    return std::ranges::equal(one, other, [&](const DayState::Garment& a, const DayState::Garment& b) {
        return a.job == b.job && a.place == b.place + further && a.next == b.next &&
               a.hasBeenOnPlaten == b.hasBeenOnPlaten &&
               ahead(a.readyAt, oneNow) == ahead(b.readyAt, otherNow);
    });
}

// The rest of the day goes on alike from both, only at another time.
bool standAlike(const DayState& one, const DayState& other, std::size_t further) {
    if (ahead(one.handsFreeAt, one.now) != ahead(other.handsFreeAt, other.now))
        return false;
    // Sharing out compares the platens with each other.
    const std::int64_t sharedShift = one.platens.front().sharedUntil - other.platens.front().sharedUntil;
    return std::ranges::equal(
        one.platens, other.platens, [&](const DayState::Platen& a, const DayState::Platen& b) {
            return a.heat == b.heat && a.isCold == b.isCold && a.holder.has_value() == b.holder.has_value() &&
                   (!a.holder || *a.holder == *b.holder + further) && a.sharedHeat == b.sharedHeat &&
                   a.sharedUntil - b.sharedUntil == sharedShift &&
                   ahead(a.steadyAt, one.now) == ahead(b.steadyAt, other.now) &&
                   ahead(a.freeAt, one.now) == ahead(b.freeAt, other.now) &&
                   ahead(a.opensAt, one.now) == ahead(b.opensAt, other.now) &&
                   standAlike(a.queue, one.now, b.queue, other.now, further) &&
                   standAlike(a.begun, one.now, b.begun, other.now, further);
        });
}

// How much later a day stands as another does; what was shared out is counted by itself.
struct Shift {
    std::int64_t by = 0;
    std::int64_t shared = 0;
};

Shift shiftBetween(const DayState& then, const DayState& now) {
    return {now.now - then.now, now.platens.front().sharedUntil - then.platens.front().sharedUntil};
}

void moveOn(DayState& state, const Shift& shift) {
    state.now += shift.by;
    state.handsFreeAt += shift.by;
    for (DayState::Platen& platen : state.platens) {
        platen.steadyAt += shift.by;
        platen.freeAt += shift.by;
        platen.opensAt += shift.by;
        platen.heldSince += shift.by;
        platen.sharedUntil += shift.shared;
        if (platen.demand.otherReadyAt != kNever)
            platen.demand.otherReadyAt += shift.by;
        for (auto* garments : {&platen.begun, &platen.queue}) {
            for (DayState::Garment& garment : *garments)
                garment.readyAt += shift.by;
        }
    }
}

bool isLeftAt(const DayState& state, std::size_t place) {
    return std::ranges::any_of(state.platens, [&](const DayState::Platen& platen) {
        return std::ranges::find(platen.begun, place, &DayState::Garment::place) != platen.begun.end() ||
               std::ranges::find(platen.queue, place, &DayState::Garment::place) != platen.queue.end();
    });
}

} // namespace

DayScore leastFrom(const DayState& state) {
    DayScore least = state.score;
    least.ends = std::max(least.ends, std::max(state.now, state.handsFreeAt) + state.handWorkLeft);
    return least;
}

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
    m_record.jobs.resize(first);
    m_record.garments.resize(first);
    m_record.sittings.clear();
    m_record.changes.clear();
    m_record.spans.clear();
    if (first == 0)
        m_settling.begin(m_order);
    else
        m_settling.begin(m_before[first]);
    for (std::size_t place = first; place < m_order.size(); ++place) {
        m_settling.run();
        if (place >= last && standAlike(m_settling.state(), m_before[place], 0)) {
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
    std::ranges::transform(m_record.garments, m_end.begin(), &DayRecord::Garment::ends);
}

// From this place on the day goes on as it did, only earlier or later.
void DayTrials::settleAsBefore(std::size_t from) {
    const DayState& now = m_settling.state();
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
        m_end[place] = isAsBefore ? m_end[place] + shift.by : m_record.garments[place].ends;
    }
    m_record.garments.resize(m_order.size());
    for (std::size_t place = 0; place < m_order.size(); ++place)
        m_record.garments[place].ends = m_end[place];
}

DayScore DayTrials::after(const OrderMove& move, const DayScore& limit) {
    const auto& [first, firstEnd, second, last] = move;
    m_simulation.begin(m_before[first]);
    DayScore reached;
    const std::size_t between = first + (last - second);
    if (!runThrough({second, last, first}, limit, reached) ||
        !runThrough({firstEnd, second, between}, limit, reached) ||
        !runThrough({first, firstEnd, between + (second - firstEnd)}, limit, reached) ||
        !runThrough({last, m_order.size(), last}, limit, reached))
        return reached;
    m_simulation.run(limit.lateness);
    return m_simulation.state().score;
}

// False: the score is known already, or that it is not below the limit.
bool DayTrials::runThrough(const Stretch& stretch, const DayScore& limit, DayScore& reached) {
    const bool isTheRest = stretch.asked == stretch.begin && stretch.end == m_order.size();
    for (std::size_t place = stretch.begin; place < stretch.end; ++place) {
        const std::size_t asked = stretch.asked + (place - stretch.begin);
        m_simulation.run(limit.lateness);
        reached = leastFrom(m_simulation.state());
        if (!(reached < limit))
            return false;
        // The end of the settled day is reached only where nothing else is still to be given.
        if ((isTheRest || stretch.end < m_order.size()) && standsAsBefore(place, asked)) {
            goOnAsBefore(place, stretch.end, asked);
            reached = m_simulation.state().score;
            return !isTheRest;
        }
        m_simulation.give(m_order[place]);
        ++m_garmentsRun;
    }
    return true;
}

// The day stands as it did in the settled order when that place was asked for, though earlier or later.
bool DayTrials::standsAsBefore(std::size_t settled, std::size_t asked) const {
    return asked >= settled ? standAlike(m_simulation.state(), m_before[settled], asked - settled)
                            : standAlike(m_before[settled], m_simulation.state(), settled - asked);
}

// From the settled place `from`, which is asked for as the place `asked` now, straight to the place `to`.
void DayTrials::goOnAsBefore(std::size_t from, std::size_t to, std::size_t asked) {
    const DayState& now = m_simulation.state();
    const DayState& then = m_before[from];
    const Shift shift = shiftBetween(then, now);
    m_jumped = m_before[to];
    m_jumped.score = now.score;
    m_jumped.score.changes += m_before[to].score.changes - then.score.changes;
    addEnds(m_jumped.score, from, to, shift.by);
    m_jumped.handWorkLeft = now.handWorkLeft - (then.handWorkLeft - m_before[to].handWorkLeft);
    m_jumped.given = asked + (to - from);
    moveOn(m_jumped, shift);
    for (std::size_t index = 0; index < m_jumped.platens.size(); ++index) {
        DayState::Platen& platen = m_jumped.platens[index];
        platen.toCome = now.platens[index].toCome - (then.platens[index].toCome - platen.toCome);
        if (platen.holder)
            platen.holder = *platen.holder + asked - from;
        for (auto* garments : {&platen.begun, &platen.queue}) {
            for (DayState::Garment& garment : *garments)
                garment.place = garment.place + asked - from;
        }
    }
    m_simulation.begin(m_jumped);
}

// Of the garments that were not done at the settled place `from` and are done at `to`.
void DayTrials::addEnds(DayScore& score, std::size_t from, std::size_t to, std::int64_t shift) const {
    const auto add = [&](std::size_t place) {
        if (m_end[place] > m_before[to].now && isLeftAt(m_before[to], place))
            return;
        const std::int64_t end = m_end[place] + shift;
        const std::int64_t late = end - m_day.jobs()[m_order[place]].due;
        score.lateness += m_day.latenessOf(m_order[place], end);
        score.lateGarments += late > 0 ? 1 : 0;
        score.ends = std::max(score.ends, end);
    };
    for (const DayState::Platen& platen : m_before[from].platens) {
        for (const DayState::Garment& garment : platen.begun)
            add(garment.place);
        for (const DayState::Garment& garment : platen.queue)
            add(garment.place);
    }
    for (std::size_t place = from; place < to; ++place)
        add(place);
}

} // namespace holdfast
