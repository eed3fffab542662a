#include "core/press/day_plan_simulation.h"

#include <algorithm>
#include <cassert>
#include <limits>

namespace holdfast {

namespace {

constexpr std::int64_t kNever = std::numeric_limits<std::int64_t>::max();

} // namespace

DaySimulation::DaySimulation(const TimedDay& day, std::span<const std::size_t> order, DayRecord* record)
    : m_day(day)
    , m_order(order)
    , m_record(record)
    , m_garments(order.size())
    , m_platens(day.request().platens.size())
    , m_left(order.size()) {
    for (std::size_t platen = 0; platen < m_platens.size(); ++platen) {
        m_platens[platen].temperature = m_day.temperatureNow(platen);
        m_platens[platen].isCold = !m_day.request().platens[platen].temperature;
    }
    for (std::size_t garment = 0; garment < m_order.size(); ++garment)
        m_garments[garment].job = &m_day.jobs()[m_order[garment]];
    if (m_record) {
        m_record->jobs.assign(m_order.begin(), m_order.end());
        m_record->garments.assign(m_order.size(), {});
    }
    shareOutToPlatens();
}

const TimedStep* DaySimulation::Garment::nextOnPlaten() const {
    if (isDone() || job->nextOnPlaten[next] == job->steps.size())
        return nullptr;
    return &job->steps[job->nextOnPlaten[next]];
}

// To the platen that would have it done first if each worked down its own garments, waits left out.
void DaySimulation::shareOutToPlatens() {
    std::vector<std::int64_t> busyUntil(m_platens.size(), 0);
    std::vector<double> leftAt;
    for (const Platen& platen : m_platens)
        leftAt.push_back(platen.temperature);

    for (std::size_t garment = 0; garment < m_garments.size(); ++garment) {
        const TimedJob& job = *m_garments[garment].job;
        std::size_t best = job.platens.front();
        std::int64_t bestEnd = kNever;
        for (const std::size_t platen : job.platens) {
            const std::int64_t change = m_day.changeOn(platen, leftAt[platen], job.firstTemperature());
            const std::int64_t end = busyUntil[platen] + change + job.work;
            if (end < bestEnd) {
                best = platen;
                bestEnd = end;
            }
        }
        busyUntil[best] = bestEnd;
        leftAt[best] = job.lastTemperature().value_or(leftAt[best]);
        m_garments[garment].platen = best;
        if (job.isUnderway)
            m_platens[best].begun.push_back(garment);
        else
            m_platens[best].queue.push_back(garment);
    }
}

DayScore DaySimulation::run() {
    while (m_left > 0) {
        for (std::size_t platen = 0; platen < m_platens.size(); ++platen)
            decide(platen);
        if (const std::size_t garment = firstToStart(); garment != kNobody) {
            start(garment);
            continue;
        }
        const std::int64_t next = nextMoment();
        assert(next != kNever && "a garment waits for what never comes");
        if (next == kNever)
            break;
        m_now = next;
    }
    return m_score;
}

// What the garments begun on a platen still ask of it.
DaySimulation::Demand DaySimulation::demandOn(const Platen& platen) const {
    Demand demand;
    for (const std::size_t begun : platen.begun) {
        const Garment& garment = m_garments[begun];
        const TimedStep* step = garment.nextOnPlaten();
        if (!step)
            continue;
        demand.isPreparing = demand.isPreparing || !(garment.hasBeenOnPlaten || garment.job->isUnderway);
        if (platen.suits(*step)) {
            demand.isNeededAsItIs = true;
        } else {
            demand.isOtherReady =
                demand.isOtherReady || (&garment.step() == step && garment.readyAt <= m_now);
            if (!demand.other)
                demand.other = step->temperature;
        }
    }
    return demand;
}

// Sets a platen's temperature when it is let go and nobody needs it as it is.
void DaySimulation::decide(std::size_t index) {
    const Platen& platen = m_platens[index];
    if (platen.holder != kNobody || platen.freeAt > m_now || platen.steadyAt > m_now)
        return;
    const Demand demand = demandOn(platen);
    if (demand.isNeededAsItIs || mayTakeUpNext(platen, demand))
        return;
    if (demand.other)
        change(index, *demand.other);
    else if (platen.hasNext())
        change(index, *m_garments[platen.next()].nextOnPlaten()->temperature);
}

bool DaySimulation::mayTakeUpNext(const Platen& platen, const Demand& demand) const {
    if (!platen.hasNext() || demand.isPreparing || demand.isOtherReady)
        return false;
    const TimedStep* first = m_garments[platen.next()].nextOnPlaten();
    return !first || platen.suits(*first);
}

void DaySimulation::change(std::size_t index, double temperature) {
    Platen& platen = m_platens[index];
    const std::int64_t takes = m_day.changeOn(index, platen.temperature, temperature);
    if (!platen.isCold)
        ++m_score.changes;
    if (m_record)
        m_record->changes.push_back(
            {index, platen.isCold ? std::nullopt : std::optional{platen.temperature}, m_now, takes});
    platen.temperature = temperature;
    platen.isCold = false;
    platen.steadyAt = m_now + takes;
}

bool DaySimulation::mayStart(std::size_t index) const {
    const Garment& garment = m_garments[index];
    if (garment.readyAt > m_now)
        return false;
    if (garment.isDone())
        return true;
    const TimedStep& step = garment.step();
    if (step.attended > 0) {
        if (m_handsFreeAt > m_now)
            return false;
        for (const Platen& platen : m_platens) {
            if (platen.opensAt > m_now && platen.opensAt < m_now + step.attended)
                return false;
        }
    }
    if (!step.usesPlaten)
        return true;
    if (step.platen > 0 && m_handsFreeAt > m_now + step.attended + step.platen)
        return false;
    const Platen& platen = m_platens[garment.platen];
    if (platen.holder != kNobody)
        return platen.holder == index;
    return platen.freeAt <= m_now && platen.steadyAt <= m_now && platen.suits(step);
}

// What lies on an open platen goes before all else, then the earlier in the order.
std::size_t DaySimulation::firstToStart() const {
    std::size_t first = kNobody;
    bool firstIsOnPlaten = false;
    const auto consider = [&](std::size_t garment, bool isOnPlaten) {
        const bool isBefore = first == kNobody || isOnPlaten > firstIsOnPlaten ||
                              (isOnPlaten == firstIsOnPlaten && garment < first);
        if (isBefore && mayStart(garment)) {
            first = garment;
            firstIsOnPlaten = isOnPlaten;
        }
    };
    for (const Platen& platen : m_platens) {
        for (const std::size_t garment : platen.begun)
            consider(garment, platen.holder == garment);
        if (platen.hasNext() && mayTakeUpNext(platen, demandOn(platen)))
            consider(platen.next(), false);
    }
    return first;
}

void DaySimulation::start(std::size_t index) {
    Garment& garment = m_garments[index];
    Platen& platen = m_platens[garment.platen];
    if (platen.hasNext() && platen.next() == index) {
        ++platen.queueFront;
        platen.begun.push_back(index);
        garment.readyAt = m_now;
    }
    if (garment.isDone()) {
        finish(index);
        return;
    }
    const TimedStep& step = garment.step();
    const std::int64_t closes = m_now + step.attended;
    const std::int64_t opens = closes + step.platen;
    if (garment.begins < 0) {
        garment.begins = m_now;
        if (m_record)
            m_record->garments[index].temperature = platen.temperature;
    }
    if (step.attended > 0) {
        m_handsFreeAt = closes;
        note(index, Resource::Hands, m_now, closes);
    }
    if (step.usesPlaten)
        takePlaten(index, step);
    note(index, Resource::Rack, opens, opens + step.waiting);
    garment.readyAt = opens + step.waiting;
    ++garment.next;
    if (garment.isDone())
        finish(index);
}

void DaySimulation::takePlaten(std::size_t index, const TimedStep& step) {
    Garment& garment = m_garments[index];
    Platen& platen = m_platens[garment.platen];
    if (platen.holder == kNobody) {
        platen.holder = index;
        platen.heldSince = m_now;
        garment.hasBeenOnPlaten = true;
    }
    platen.freeAt = m_now + step.attended + step.platen;
    if (step.platen > 0)
        platen.opensAt = platen.freeAt;
    note(index, Resource::Platen, m_now, platen.freeAt);
    if (step.keepsPlaten)
        return;
    platen.holder = kNobody;
    if (m_record)
        m_record->sittings.push_back(
            {garment.platen, m_order[index], platen.temperature, platen.heldSince, platen.freeAt});
}

void DaySimulation::finish(std::size_t index) {
    Garment& garment = m_garments[index];
    std::erase(m_platens[garment.platen].begun, index);
    --m_left;
    const std::int64_t late = std::max<std::int64_t>(0, garment.readyAt - garment.job->due);
    m_score.lateness += garment.job->weight * static_cast<double>(late);
    m_score.ends = std::max(m_score.ends, garment.readyAt);
    if (!m_record)
        return;
    DayRecord::Garment& entry = m_record->garments[index];
    entry.platen = garment.platen;
    entry.begins = garment.begins < 0 ? m_now : garment.begins;
    entry.ends = garment.readyAt;
}

std::int64_t DaySimulation::nextMoment() const {
    std::int64_t next = kNever;
    const auto consider = [&](std::int64_t moment) {
        if (moment > m_now)
            next = std::min(next, moment);
    };
    // From then on a platen opens when the hands are free again.
    const auto considerClosing = [&](const Garment& garment) {
        if (!garment.isDone() && garment.step().usesPlaten)
            consider(m_handsFreeAt - garment.step().attended - garment.step().platen);
    };
    consider(m_handsFreeAt);
    for (const Platen& platen : m_platens) {
        consider(platen.steadyAt);
        consider(platen.freeAt);
        consider(platen.opensAt);
        for (const std::size_t garment : platen.begun) {
            consider(m_garments[garment].readyAt);
            considerClosing(m_garments[garment]);
        }
        if (platen.hasNext())
            considerClosing(m_garments[platen.next()]);
    }
    return next;
}

void DaySimulation::note(std::size_t index, Resource resource, std::int64_t begins, std::int64_t ends) {
    if (m_record && ends > begins)
        m_record->spans.push_back({m_order[index], m_garments[index].next, resource, begins, ends});
}

} // namespace holdfast
