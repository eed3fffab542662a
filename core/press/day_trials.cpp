#include "core/press/day_trials.h"

#include <algorithm>

namespace holdfast {

namespace {

// What is past has been: how long ago makes no difference.
std::int64_t ahead(std::int64_t moment, std::int64_t now) {
    return std::max<std::int64_t>(0, moment - now);
}

using Garments = std::vector<DayState::Garment>;

bool standAlike(const Garments& one, std::int64_t oneNow, const Garments& other, std::int64_t otherNow) {
    return std::ranges::equal(one, other, [&](const DayState::Garment& a, const DayState::Garment& b) {
        return a.job == b.job && a.place == b.place && a.next == b.next &&
               a.hasBeenOnPlaten == b.hasBeenOnPlaten &&
               ahead(a.readyAt, oneNow) == ahead(b.readyAt, otherNow);
    });
}

// The rest of the day goes on alike from both, only at another time.
bool standAlike(const DayState& one, const DayState& other) {
    if (ahead(one.handsFreeAt, one.now) != ahead(other.handsFreeAt, other.now))
        return false;
    // Sharing out compares the platens with each other.
    const std::int64_t sharedShift = one.platens.front().sharedUntil - other.platens.front().sharedUntil;
    return std::ranges::equal(
        one.platens, other.platens, [&](const DayState::Platen& a, const DayState::Platen& b) {
            return a.heat == b.heat && a.isCold == b.isCold && a.holder == b.holder &&
                   a.sharedHeat == b.sharedHeat && a.sharedUntil - b.sharedUntil == sharedShift &&
                   ahead(a.steadyAt, one.now) == ahead(b.steadyAt, other.now) &&
                   ahead(a.freeAt, one.now) == ahead(b.freeAt, other.now) &&
                   ahead(a.opensAt, one.now) == ahead(b.opensAt, other.now) &&
                   standAlike(a.queue, one.now, b.queue, other.now) &&
                   standAlike(a.begun, one.now, b.begun, other.now);
        });
}

} // namespace

DayScore leastFrom(const DayState& state) {
    DayScore least = state.score;
    least.ends = std::max(least.ends, std::max(state.now, state.handsFreeAt) + state.handWorkLeft);
    return least;
}

void DayTrials::settle(std::span<const std::size_t> order) {
    m_order.assign(order.begin(), order.end());
    m_before.resize(m_order.size());
    DayRecord record;
    DaySimulation simulation{m_day, &record};
    simulation.begin(m_order);
    for (std::size_t place = 0; place < m_order.size(); ++place) {
        simulation.run();
        m_before[place] = simulation.state();
        simulation.give(m_order[place]);
    }
    simulation.run();
    m_score = simulation.state().score;
    m_end.clear();
    for (const DayRecord::Garment& garment : record.garments)
        m_end.push_back(garment.ends);
    m_garmentsRun += m_order.size();
}

DayScore DayTrials::after(const OrderMove& move, const DayScore& limit) {
    m_tried.assign(m_order.begin(), m_order.end());
    carryOut(move, m_tried);
    m_simulation.begin(m_before[move.first]);
    for (std::size_t place = move.first; place < m_tried.size(); ++place) {
        if (place > move.first) {
            m_simulation.run(limit.lateness);
            if (const DayScore least = leastFrom(m_simulation.state()); !(least < limit))
                return least;
            if (place >= move.last) {
                if (const std::optional<DayScore> known = asBefore(place))
                    return *known;
            }
        }
        m_simulation.give(m_tried[place]);
        ++m_garmentsRun;
    }
    m_simulation.run(limit.lateness);
    return m_simulation.state().score;
}

// The score, if the day now stands as it did in the settled order when so many garments had been given.
std::optional<DayScore> DayTrials::asBefore(std::size_t given) const {
    const DayState& now = m_simulation.state();
    const DayState& then = m_before[given];
    if (!standAlike(now, then))
        return std::nullopt;
    const std::int64_t shift = now.now - then.now;
    DayScore score = now.score;
    score.changes += m_score.changes - then.score.changes;
    const auto add = [&](std::size_t place) {
        score.lateness += m_day.latenessOf(m_order[place], m_end[place] + shift);
        score.ends = std::max(score.ends, m_end[place] + shift);
    };
    for (const DayState::Platen& platen : then.platens) {
        for (const DayState::Garment& garment : platen.begun)
            add(garment.place);
        for (const DayState::Garment& garment : platen.queue)
            add(garment.place);
    }
    for (std::size_t place = given; place < m_order.size(); ++place)
        add(place);
    return score;
}

} // namespace holdfast
