#include "core/press/day_plan_simulation.h"

#include <algorithm>
#include <cassert>

namespace holdfast {

namespace {

constexpr std::int64_t kNever = std::numeric_limits<std::int64_t>::max();

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
    const bool liesThere =
        job.isUnderway && job.isOnPlaten && !job.steps.empty() && job.steps.front().usesPlaten;
    if (liesThere && !platen.holder && suits(platen, job.steps.front()))
        platen.holder = garment.place;
    (job.isUnderway ? platen.begun : platen.queue).push_back(garment);
    if (m_record) {
        m_record->jobs.push_back(index);
        m_record->garments.push_back({best, 0, 0, 0});
    }
}

const TimedStep* DaySimulation::nextOnPlaten(const Garment& garment) const {
    const TimedJob& job = jobOf(garment);
    if (isDone(garment) || job.nextOnPlaten[garment.next] == job.steps.size())
        return nullptr;
    return &job.steps[job.nextOnPlaten[garment.next]];
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
        for (std::size_t platen = 0; platen < m_state.platens.size(); ++platen) {
            m_demands[platen] = demandOn(m_state.platens[platen]);
            decide(platen, m_demands[platen]);
        }
        if (const std::optional<Choice> choice = firstToStart()) {
            start(*choice);
            continue;
        }
        const std::int64_t next = nextMoment();
        assert(next != kNever && "a garment waits for what never comes");
        if (next == kNever)
            break;
        m_state.now = next;
    }
}

// What the garments begun on a platen still ask of it.
DaySimulation::Demand DaySimulation::demandOn(const Platen& platen) const {
    Demand demand;
    for (const Garment& garment : platen.begun) {
        const TimedStep* step = nextOnPlaten(garment);
        if (!step)
            continue;
        demand.isPreparing = demand.isPreparing || !garment.hasBeenOnPlaten;
        if (suits(platen, *step)) {
            demand.isNeededAsItIs = true;
        } else {
            demand.isOtherReady =
                demand.isOtherReady || (&stepOf(garment) == step && garment.readyAt <= m_state.now);
            if (!demand.other)
                demand.other = step->heat;
        }
    }
    return demand;
}

// Sets a platen's temperature when it is let go and nobody needs it as it is.
void DaySimulation::decide(std::size_t index, const Demand& demand) {
    const Platen& platen = m_state.platens[index];
    if (platen.holder || platen.freeAt > m_state.now || platen.steadyAt > m_state.now)
        return;
    if (demand.isNeededAsItIs || mayTakeUpNext(platen, demand))
        return;
    if (demand.other)
        change(index, *demand.other);
    else if (!platen.queue.empty())
        change(index, nextOnPlaten(platen.queue.front())->heat);
    else
        return;
    m_demands[index] = demandOn(platen);
}

bool DaySimulation::mayTakeUpNext(const Platen& platen, const Demand& demand) const {
    if (platen.queue.empty() || demand.isPreparing || demand.isOtherReady)
        return false;
    const TimedStep* first = nextOnPlaten(platen.queue.front());
    return !first || suits(platen, *first);
}

void DaySimulation::change(std::size_t index, std::size_t heat) {
    Platen& platen = m_state.platens[index];
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
}

bool DaySimulation::mayStart(const Platen& platen, const Garment& garment) const {
    const std::int64_t now = m_state.now;
    if (garment.readyAt > now)
        return false;
    if (isDone(garment))
        return true;
    const TimedStep& step = stepOf(garment);
    if (step.attended > 0) {
        if (m_state.handsFreeAt > now)
            return false;
        for (const Platen& other : m_state.platens) {
            if (other.opensAt > now && other.opensAt < now + step.attended)
                return false;
        }
    }
    if (!step.usesPlaten)
        return true;
    if (step.platen > 0 && m_state.handsFreeAt > now + step.attended + step.platen)
        return false;
    if (platen.holder)
        return platen.holder == garment.place;
    return platen.freeAt <= now && platen.steadyAt <= now && suits(platen, step);
}

// What lies on an open platen goes before all else, then the earlier in the order.
std::optional<DaySimulation::Choice> DaySimulation::firstToStart() const {
    std::optional<Choice> first;
    std::size_t firstPlace = 0;
    bool firstIsOnPlaten = false;
    const auto consider = [&](const Platen& platen, const Garment& garment, const Choice& choice) {
        const bool isOnPlaten = platen.holder == garment.place;
        const bool isBefore = !first || isOnPlaten > firstIsOnPlaten ||
                              (isOnPlaten == firstIsOnPlaten && garment.place < firstPlace);
        if (isBefore && mayStart(platen, garment)) {
            first = choice;
            firstPlace = garment.place;
            firstIsOnPlaten = isOnPlaten;
        }
    };
    for (std::size_t index = 0; index < m_state.platens.size(); ++index) {
        const Platen& platen = m_state.platens[index];
        for (std::size_t at = 0; at < platen.begun.size(); ++at)
            consider(platen, platen.begun[at], {index, at, false});
        if (mayTakeUpNext(platen, m_demands[index]))
            consider(platen, platen.queue.front(), {index, platen.begun.size(), true});
    }
    return first;
}

void DaySimulation::start(const Choice& choice) {
    Platen& platen = m_state.platens[choice.platen];
    const std::int64_t now = m_state.now;
    if (choice.isTakenUp) {
        platen.begun.push_back(platen.queue.front());
        platen.queue.erase(platen.queue.begin());
        platen.begun.back().readyAt = now;
    }
    Garment& garment = platen.begun[choice.at];
    if (!isDone(garment)) {
        const TimedStep& step = stepOf(garment);
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
            takePlaten(choice.platen, garment, step);
        note(garment, Resource::Rack, opens, opens + step.waiting);
        garment.readyAt = opens + step.waiting;
        ++garment.next;
    }
    if (isDone(garment)) {
        finish(choice.platen, garment);
        platen.begun.erase(platen.begun.begin() + static_cast<std::ptrdiff_t>(choice.at));
    }
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
    m_state.score.ends = std::max(m_state.score.ends, garment.readyAt);
    if (!m_record)
        return;
    DayRecord::Garment& entry = m_record->garments[garment.place];
    entry.platen = platen;
    entry.begins = garment.begins < 0 ? m_state.now : garment.begins;
    entry.ends = garment.readyAt;
}

std::int64_t DaySimulation::nextMoment() const {
    std::int64_t next = kNever;
    const auto consider = [&](std::int64_t moment) {
        if (moment > m_state.now)
            next = std::min(next, moment);
    };
    // From then on a platen opens when the hands are free again.
    const auto considerClosing = [&](const Garment& garment) {
        if (!isDone(garment) && stepOf(garment).usesPlaten)
            consider(m_state.handsFreeAt - stepOf(garment).attended - stepOf(garment).platen);
    };
    consider(m_state.handsFreeAt);
    for (const Platen& platen : m_state.platens) {
        consider(platen.steadyAt);
        consider(platen.freeAt);
        consider(platen.opensAt);
        for (const Garment& garment : platen.begun) {
            consider(garment.readyAt);
            considerClosing(garment);
        }
        if (!platen.queue.empty())
            considerClosing(platen.queue.front());
    }
    return next;
}

void DaySimulation::note(const Garment& garment, Resource resource, std::int64_t begins, std::int64_t ends) {
    if (m_record && ends > begins)
        m_record->spans.push_back({garment.job, garment.next, resource, begins, ends});
}

} // namespace holdfast
