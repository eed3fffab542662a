// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/day_plan_simulation.h"

#include "core/trade/assertion.h"

#include <algorithm>

namespace holdfast {

namespace {

bool suits(const DayState::Platen& platen, const TimedStep& step) {
    return step.heat == kAnyHeat || step.heat == platen.heat;
}

} // namespace

void DaySimulation::begin(std::span<const std::size_t> jobs) {
    m_state = {};
    m_state.platens.resize(m_day.request().platens.size());
    for (std::size_t platen = 0; platen < m_state.platens.size(); ++platen) {
        Platen& starting = m_state.platens[platen];
        starting.heat = starting.sharedHeat = m_day.heatNow(platen);
        starting.isCold = !m_day.request().platens[platen].temperature;
    }
    for (const std::size_t job : jobs) {
        m_state.handWorkLeft += m_day.jobs()[job].handWorkFrom.front();
        for (const std::size_t platen : m_day.jobs()[job].platens)
            ++m_state.platens[platen].toCome;
    }
}

// The platen that would have it done first if each worked down its own garments, waits left out.
std::size_t DaySimulation::quickestPlaten(const TimedJob& job) const {
    std::size_t best = job.platens.front();
    std::int64_t bestEnd = kNever;
    for (const std::size_t platen : job.platens) {
        const Platen& offered = m_state.platens[platen];
        const std::int64_t end =
            offered.sharedUntil + m_day.changeOn(platen, offered.sharedHeat, job.firstHeat) + job.work;
        if (end < bestEnd) {
            best = platen;
            bestEnd = end;
        }
    }
    return best;
}

void DaySimulation::give(std::size_t index) {
    const TimedJob& job = m_day.jobs()[index];
    for (const std::size_t platen : job.platens)
        --m_state.platens[platen].toCome;
    const std::size_t best = job.platens.size() == 1 ? job.platens.front() : quickestPlaten(job);
    Platen& platen = m_state.platens[best];
    platen.sharedUntil += m_day.changeOn(best, platen.sharedHeat, job.firstHeat) + job.work;
    if (job.lastHeat != kAnyHeat)
        platen.sharedHeat = job.lastHeat;

    Garment garment;
    garment.place = m_state.given++;
    garment.job = index;
    garment.hasBeenOnPlaten = job.hasBeenOnPlaten;
    moveOn(garment, 0);
    const bool liesThere =
        job.isUnderway && job.isOnPlaten && !job.steps.empty() && job.steps.front().usesPlaten;
    if (liesThere && !platen.holder && suits(platen, job.steps.front()))
        platen.holder = garment.place;
    (job.isUnderway ? platen.begun : platen.queue).push_back(garment);
    if (job.isUnderway)
        assess(platen);
    if (m_record) {
        m_record->jobs.push_back(index);
        m_record->garments.push_back({best, 0, 0, 0});
    }
}

void DaySimulation::moveOn(Garment& garment, std::size_t step) const {
    const TimedJob& job = m_day.jobs()[garment.job];
    const std::size_t count = job.steps.size();
    garment.next = step;
    garment.step = step < count ? &job.steps[step] : nullptr;
    const std::size_t onPlaten = step < count ? job.nextOnPlaten[step] : count;
    garment.onPlaten = onPlaten < count ? &job.steps[onPlaten] : nullptr;
}

bool DaySimulation::waitsForTheNextGiven() const {
    return std::ranges::any_of(
        m_state.platens, [](const Platen& platen) { return platen.queue.empty() && platen.toCome > 0; });
}

bool DaySimulation::isAllDone() const {
    return std::ranges::all_of(
        m_state.platens, [](const Platen& platen) { return platen.queue.empty() && platen.begun.empty(); });
}

void DaySimulation::run(double mostLateness) {
    while (!waitsForTheNextGiven() && !isAllDone() && m_state.score.lateness <= mostLateness) {
        const Event event = nextEvent();
        HOLDFAST_ASSERT(event.at != kNever && "a garment waits for what never comes");
        if (event.at == kNever)
            break;
        m_state.now = event.at;
        if (event.isChange)
            change(event.platen);
        else
            start(event);
    }
}

void DaySimulation::assess(Platen& platen) const {
    DayState::Demand& demand = platen.demand;
    demand = {};
    for (const Garment& garment : platen.begun) {
        if (!garment.onPlaten)
            continue;
        demand.isPreparing = demand.isPreparing || !garment.hasBeenOnPlaten;
        if (suits(platen, *garment.onPlaten)) {
            demand.isNeededAsItIs = true;
            continue;
        }
        if (garment.step == garment.onPlaten)
            demand.otherReadyAt = std::min(demand.otherReadyAt, garment.readyAt);
        if (demand.other == kAnyHeat)
            demand.other = garment.onPlaten->heat;
    }
}

// A platen's temperature is set when it is let go and nobody needs it as it is.
std::int64_t DaySimulation::changesAt(const Platen& platen) const {
    const DayState::Demand& demand = platen.demand;
    if (demand.isNeededAsItIs || platen.holder || (demand.other == kAnyHeat && platen.queue.empty()))
        return kNever;
    std::int64_t at = std::max({m_state.now, platen.freeAt, platen.steadyAt});
    if (!platen.queue.empty() && !demand.isPreparing) {
        // The next is taken up as the platen is, until one is ready for another temperature.
        const TimedStep* first = platen.queue.front().onPlaten;
        if (!first || suits(platen, *first))
            at = demand.otherReadyAt == kNever ? kNever : std::max(at, demand.otherReadyAt);
    }
    return at;
}

void DaySimulation::change(std::size_t index) {
    Platen& platen = m_state.platens[index];
    const std::size_t heat =
        platen.demand.other != kAnyHeat ? platen.demand.other : platen.queue.front().onPlaten->heat;
    const std::int64_t takes = m_day.changeOn(index, platen.heat, heat);
    if (!platen.isCold)
        ++m_state.score.changes;
    if (m_record)
        m_record->changes.push_back(
            {index, platen.isCold ? std::nullopt : std::optional{m_day.temperatureOf(platen.heat)},
             m_state.now, takes});
    platen.heat = heat;
    platen.isCold = false;
    platen.steadyAt = m_state.now + takes;
    assess(platen);
}

// The first moment at which its next step can be begun, if nothing else is begun before.
std::int64_t DaySimulation::startsAt(const Platen& platen, const Garment& garment,
                                     std::int64_t readyAt) const {
    std::int64_t at = std::max(readyAt, m_state.now);
    if (!garment.step)
        return at;
    const TimedStep& step = *garment.step;
    if (step.usesPlaten && platen.holder != garment.place) {
        if (platen.holder || !suits(platen, step))
            return kNever;
        at = std::max({at, platen.freeAt, platen.steadyAt});
    }
    if (step.attended == 0)
        return step.usesPlaten && step.platen > 0 ? std::max(at, m_state.handsFreeAt - step.platen) : at;
    at = std::max(at, m_state.handsFreeAt);
    // After each opening that it would run past.
    for (bool isClear = false; !isClear;) {
        isClear = true;
        for (const Platen& other : m_state.platens) {
            if (at < other.opensAt && other.opensAt < at + step.attended) {
                at = other.opensAt;
                isClear = false;
            }
        }
    }
    return at;
}

std::int64_t DaySimulation::takesUpNextAt(const Platen& platen) const {
    const Garment& next = platen.queue.front();
    if (platen.demand.isPreparing || (next.onPlaten && !suits(platen, *next.onPlaten)))
        return kNever;
    const std::int64_t at = startsAt(platen, next, m_state.now);
    return at < platen.demand.otherReadyAt ? at : kNever;
}

// Of what comes at once, a change of temperature goes first, then what lies on an open platen, then the
// earlier in the order.
DaySimulation::Event DaySimulation::nextEvent() const {
    Event next;
    const auto hear = [&](const Event& event) {
        if (event.at > next.at || event.at == kNever)
            return;
        const bool isBefore =
            event.at < next.at || (!next.isChange && event.isOnPlaten > next.isOnPlaten) ||
            (!next.isChange && event.isOnPlaten == next.isOnPlaten && event.place < next.place);
        if (isBefore)
            next = event;
    };
    for (std::size_t index = 0; index < m_state.platens.size(); ++index) {
        if (const std::int64_t at = changesAt(m_state.platens[index]); at < next.at)
            next = {at, index, 0, 0, true, false, false};
    }
    for (std::size_t index = 0; index < m_state.platens.size(); ++index) {
        const Platen& platen = m_state.platens[index];
        for (std::size_t at = 0; at < platen.begun.size(); ++at) {
            const Garment& garment = platen.begun[at];
            hear({startsAt(platen, garment, garment.readyAt), index, at, garment.place, false, false,
                  platen.holder == garment.place});
        }
        if (!platen.queue.empty())
            hear({takesUpNextAt(platen), index, platen.begun.size(), platen.queue.front().place, false, true,
                  false});
    }
    return next;
}

void DaySimulation::start(const Event& event) {
    Platen& platen = m_state.platens[event.platen];
    const std::int64_t now = m_state.now;
    if (event.isTakenUp) {
        platen.begun.push_back(platen.queue.front());
        platen.queue.erase(platen.queue.begin());
        platen.begun.back().readyAt = now;
    }
    Garment& garment = platen.begun[event.index];
    if (garment.step) {
        const TimedStep& step = *garment.step;
        const std::int64_t closes = now + step.attended;
        const std::int64_t opens = closes + step.platen;
        if (garment.begins < 0) {
            garment.begins = now;
            if (m_record)
                m_record->garments[garment.place].temperature = m_day.temperatureOf(platen.heat);
        }
        if (step.attended > 0) {
            m_state.handsFreeAt = closes;
            m_state.handWorkLeft -= step.attended;
            note(garment, Resource::Hands, now, closes);
        }
        if (step.usesPlaten)
            takePlaten(event.platen, garment, step);
        note(garment, Resource::Rack, opens, opens + step.waiting);
        garment.readyAt = opens + step.waiting;
        moveOn(garment, garment.next + 1);
    }
    if (!garment.step) {
        finish(event.platen, garment);
        platen.begun.erase(platen.begun.begin() + static_cast<std::ptrdiff_t>(event.index));
    }
    assess(platen);
}

void DaySimulation::takePlaten(std::size_t index, Garment& garment, const TimedStep& step) {
    Platen& platen = m_state.platens[index];
    if (!platen.holder) {
        platen.holder = garment.place;
        platen.heldSince = m_state.now;
        garment.hasBeenOnPlaten = true;
    }
    platen.freeAt = m_state.now + step.attended + step.platen;
    if (step.platen > 0)
        platen.opensAt = platen.freeAt;
    note(garment, Resource::Platen, m_state.now, platen.freeAt);
    if (step.keepsPlaten)
        return;
    platen.holder.reset();
    if (m_record)
        m_record->sittings.push_back(
            {index, garment.job, m_day.temperatureOf(platen.heat), platen.heldSince, platen.freeAt});
}

void DaySimulation::finish(std::size_t platen, const Garment& garment) {
    m_state.score.lateness += m_day.latenessOf(garment.job, garment.readyAt);
    m_state.score.lateGarments += garment.readyAt > m_day.jobs()[garment.job].due ? 1 : 0;
    m_state.score.ends = std::max(m_state.score.ends, garment.readyAt);
    if (!m_record)
        return;
    DayRecord::Garment& entry = m_record->garments[garment.place];
    entry.platen = platen;
    entry.begins = garment.begins < 0 ? m_state.now : garment.begins;
    entry.ends = garment.readyAt;
}

void DaySimulation::note(const Garment& garment, Resource resource, std::int64_t begins, std::int64_t ends) {
    if (m_record && ends > begins)
        m_record->spans.push_back({garment.job, garment.next, resource, begins, ends});
}

} // namespace holdfast
