// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/day_course.h"

#include "core/press/day_plan_simulation.h"

#include <algorithm>

namespace holdfast {

namespace {

using Number = CourseDay::Number;

// No next event is so far away: a step takes at most 366 days, and few are joined.
constexpr std::int64_t kNotAtAll = (std::int64_t{1} << 31) - 1;
constexpr std::int64_t kLongestJoined = 8 * kLongestStep;

// Of events at the same time, a change of temperature goes first, then what lies on an open platen, then the
// earlier place in the order.
constexpr std::uint64_t kLiesThere = std::uint64_t{1} << 30;
constexpr std::uint64_t kDoesNotLieThere = std::uint64_t{1} << 31;

constexpr std::int64_t kFarAway = kNever / 4;

// The handsLead of a step that needs no hands, not even to lift.
constexpr std::int64_t kHandsDoNotMatter = kNever / 2;

// What Candidate::index is where no garment goes on.
constexpr Number kTakesUp = CourseDay::kNone;
constexpr Number kChanges = CourseDay::kNone - 1;

bool suits(Number heat, const CourseState::Platen& platen) {
    return (heat == CourseDay::kNone) | (heat == platen.heat);
}

CourseDay::Number numbered(std::size_t heat) {
    return heat == kAnyHeat ? CourseDay::kNone : static_cast<CourseDay::Number>(heat);
}

} // namespace

CourseDay::CourseDay(const TimedDay& day)
    : m_day(day)
    , m_heats(day.heats()) {
    for (std::size_t platen = 0; platen < day.request().platens.size(); ++platen) {
        for (std::size_t from = 0; from < m_heats; ++from) {
            for (std::size_t to = 0; to < m_heats; ++to)
                m_changes.push_back(day.changeOn(platen, from, to));
        }
    }
    for (const TimedJob& timed : day.jobs()) {
        Job job;
        job.firstStep = static_cast<Number>(m_steps.size());
        job.firstHeat = numbered(timed.firstHeat);
        job.lastHeat = numbered(timed.lastHeat);
        job.firstPlaten = static_cast<Number>(m_platens.size());
        job.platens = static_cast<Number>(timed.platens.size());
        job.isUnderway = timed.isUnderway;
        job.hasBeenOnPlaten = timed.hasBeenOnPlaten;
        job.isOnPlaten = timed.isOnPlaten;
        job.work = timed.work;
        job.due = timed.due;
        job.weight = timed.weight;
        m_jobs.push_back(job);
        for (const std::size_t platen : timed.platens)
            m_platens.push_back(static_cast<Number>(platen));
        addSteps(timed);
    }
}

void CourseDay::addSteps(const TimedJob& job) {
    const std::size_t first = m_steps.size();
    for (const TimedStep& timed : job.steps) {
        const bool isWait = timed.attended == 0 && !timed.usesPlaten;
        if (isWait && m_steps.size() > first && m_steps.back().after + timed.waiting <= kLongestJoined) {
            m_steps.back().after += timed.waiting;
            continue;
        }
        Step step;
        step.attended = timed.attended;
        step.platen = timed.platen;
        step.after = timed.waiting;
        if (timed.attended == 0)
            step.handsLead = timed.platen > 0 ? timed.platen : kHandsDoNotMatter;
        step.heat = numbered(timed.heat);
        step.usesPlaten = timed.usesPlaten;
        step.keepsPlaten = timed.keepsPlaten;
        m_steps.push_back(step);
    }
    Step done;
    done.heat = kNone;
    done.handsLead = kHandsDoNotMatter;
    done.isDone = true;
    m_steps.push_back(done);
    Number heat = kNone;
    bool isOnPlaten = false;
    for (std::size_t step = m_steps.size(); step-- > first;) {
        if (m_steps[step].usesPlaten) {
            heat = m_steps[step].heat;
            isOnPlaten = true;
        }
        m_steps[step].nextHeat = heat;
        m_steps[step].isNextOnPlaten = isOnPlaten;
    }
}

void DayCourse::begin(std::span<const std::size_t> jobs) {
    const std::vector<PlatenNow>& platens = m_day.day().request().platens;
    m_state = {};
    m_state.platens.resize(platens.size());
    for (std::size_t platen = 0; platen < platens.size(); ++platen) {
        Platen& starting = m_state.platens[platen];
        starting.heat = starting.sharedHeat = numbered(m_day.day().heatNow(platen));
        starting.isCold = !platens[platen].temperature;
    }
    for (const std::size_t job : jobs) {
        for (const Number platen : m_day.platensOf(m_day.job(job)))
            ++m_state.platens[platen].toCome;
    }
    m_places.resize(jobs.size());
    assessAll();
}

void DayCourse::assessAll() {
    m_candidates.resize(m_state.platens.size());
    m_counts.resize(m_state.platens.size());
    m_starving = 0;
    for (Number platen = 0; platen < m_state.platens.size(); ++platen) {
        m_starving += m_state.platens[platen].front == kNone && m_state.platens[platen].toCome > 0 ? 1 : 0;
        assess(platen);
    }
}

void DayCourse::begin(const CourseState& state, const DayCourse& of, Number further) {
    m_state.platens = state.platens;
    m_state.now = state.now;
    m_state.handsFreeAt = state.handsFreeAt;
    m_state.given = state.given + further;
    m_state.score = state.score;
    Number front = state.given;
    for (Platen& platen : m_state.platens) {
        front = std::min(front, platen.front);
        platen.front += platen.front == kNone ? 0 : further;
        platen.holder += platen.holder == kNone ? 0 : further;
        for (Garment& garment : platen.begun)
            garment.place += further;
    }
    if (&of != this || further != 0) {
        m_places.resize(of.m_places.size());
        for (Number place = front; place < state.given; ++place)
            m_places[place + further] = of.m_places[place];
    }
    assessAll();
}

// The platen that would have it done first if each worked down its own garments, waits left out.
DayCourse::Number DayCourse::sharedTo(const CourseDay::Job& job) const {
    const std::span<const Number> platens = m_day.platensOf(job);
    Number best = platens.front();
    if (platens.size() == 1)
        return best;
    std::int64_t bestEnd = kNever;
    for (const Number platen : platens) {
        const Platen& offered = m_state.platens[platen];
        const std::int64_t end =
            offered.sharedUntil + m_day.changeOn(platen, offered.sharedHeat, job.firstHeat);
        if (end < bestEnd) {
            best = platen;
            bestEnd = end;
        }
    }
    return best;
}

void DayCourse::give(std::size_t number) {
    const CourseDay::Job& job = m_day.job(number);
    for (const Number platen : m_day.platensOf(job)) {
        Platen& serving = m_state.platens[platen];
        m_starving -= serving.front == kNone && serving.toCome == 1 ? 1 : 0;
        --serving.toCome;
    }
    const Number best = sharedTo(job);
    Platen& platen = m_state.platens[best];
    platen.sharedUntil += m_day.changeOn(best, platen.sharedHeat, job.firstHeat) + job.work;
    if (job.lastHeat != kNone)
        platen.sharedHeat = job.lastHeat;
    const Number place = m_state.given++;
    m_places[place] = {static_cast<Number>(number), best, 0};
    const Step& first = m_day.firstStepOf(number);
    if (job.isUnderway) {
        if (job.isOnPlaten && first.usesPlaten && platen.holder == kNone && suits(first.heat, platen))
            platen.holder = place;
        platen.begun.push_back({&first, 0, place, static_cast<Number>(number), job.hasBeenOnPlaten});
        assess(best);
    } else if (platen.front == kNone) {
        m_starving -= platen.toCome > 0 ? 1 : 0;
        setFront(platen, place);
        assess(best);
    }
}

void DayCourse::setFront(Platen& platen, Number place) {
    platen.front = place;
    if (place != kNone)
        platen.frontStep = &m_day.firstStepOf(m_places[place].job);
}

void DayCourse::run(double mostLateness) {
    if (m_state.platens.size() == 1)
        runOn<1>(mostLateness);
    else if (m_state.platens.size() == 2)
        runOn<2>(mostLateness);
    else
        runOn<0>(mostLateness);
}

// kPlatens is 0 where the number is not known when compiling.
template <DayCourse::Number kPlatens>
void DayCourse::runOn(double mostLateness) {
    while (m_starving == 0 && m_state.score.lateness <= mostLateness) {
        std::int64_t at = 0;
        const Candidate* event = next<kPlatens>(at);
        if (!event)
            return; // all done
        m_state.now = at;
        if (event->index == kTakesUp)
            takeUp(event->platen);
        else if (event->index == kChanges)
            change(event->platen);
        else
            goOn(event->platen, event->index);
    }
}

// Hand work that would run past the opening of a platen is done after it.
template <DayCourse::Number kPlatens>
std::int64_t DayCourse::clearOfOpenings(std::int64_t at, std::int64_t attended) const {
    const auto moveAfter = [&](std::int64_t opens) {
        at = ((at < opens) & (opens < at + attended)) ? opens : at;
    };
    if constexpr (kPlatens == 1) {
        moveAfter(m_state.platens[0].opensAt);
    } else if constexpr (kPlatens == 2) {
        moveAfter(std::min(m_state.platens[0].opensAt, m_state.platens[1].opensAt));
        moveAfter(std::max(m_state.platens[0].opensAt, m_state.platens[1].opensAt));
    } else {
        std::int64_t before = at;
        do {
            before = at;
            for (const Platen& platen : m_state.platens)
                moveAfter(platen.opensAt);
        } while (at != before);
    }
    return at;
}

// Without branches where possible: they are hard to predict here, and a wrong prediction costs more time than
// the arithmetic.
template <DayCourse::Number kPlatens>
const DayCourse::Candidate* DayCourse::next(std::int64_t& at) const {
    const Number platens = kPlatens > 0 ? kPlatens : static_cast<Number>(m_state.platens.size());
    const std::int64_t now = m_state.now;
    const std::int64_t handsFreeAt = m_state.handsFreeAt;
    std::uint64_t least = static_cast<std::uint64_t>(kNotAtAll) << 32;
    const Candidate* best = nullptr;
    for (Number number = 0; number < platens; ++number) {
        const Candidate* candidate = m_candidates[number].data();
        for (const Candidate* end = candidate + m_counts[number]; candidate != end; ++candidate) {
            const std::int64_t handsAt = handsFreeAt - candidate->handsLead;
            std::int64_t starts = candidate->from > now ? candidate->from : now;
            starts = handsAt > starts ? handsAt : starts;
            starts = clearOfOpenings<kPlatens>(starts, candidate->attended);
            const std::int64_t wait = starts < candidate->before ? starts - now : kNotAtAll;
            const std::uint64_t key = static_cast<std::uint64_t>(wait) << 32 | candidate->rank;
            best = key < least ? candidate : best;
            least = key < least ? key : least;
        }
    }
    at = now + static_cast<std::int64_t>(least >> 32);
    return best;
}

// Works out what may come next on a platen.
void DayCourse::assess(Number number) {
    const Platen& platen = m_state.platens[number];
    std::vector<Candidate>& candidates = m_candidates[number];
    if (candidates.size() < platen.begun.size() + 2)
        candidates.resize(platen.begun.size() + 2);
    const bool isHeld = platen.holder != kNone;
    const std::int64_t reachAt = std::max(platen.freeAt, platen.steadyAt);
    bool isPreparing = false; // one of those begun has not come to the platen yet
    bool isNeededAsItIs = false;
    bool isNeededOtherwise = false;
    std::int64_t otherReadyAt = kFarAway;
    Candidate* candidate = candidates.data();
    const auto count = static_cast<Number>(platen.begun.size());
    for (Number index = 0; index < count; ++index) {
        const Garment& garment = platen.begun[index];
        const Step& step = *garment.step;
        const bool isOther = step.isNextOnPlaten & !suits(step.nextHeat, platen);
        isPreparing |= step.isNextOnPlaten & !garment.hasBeenOnPlaten;
        isNeededAsItIs |= step.isNextOnPlaten & !isOther;
        isNeededOtherwise |= isOther;
        const std::int64_t otherAt = (isOther & step.usesPlaten) ? garment.readyAt : kFarAway;
        otherReadyAt = otherAt < otherReadyAt ? otherAt : otherReadyAt;
        const bool liesThere = platen.holder == garment.place;
        const bool comesThere = step.usesPlaten & !liesThere;
        const std::int64_t there = comesThere ? reachAt : 0;
        *candidate = {std::max(garment.readyAt, there),
                      step.handsLead,
                      step.attended,
                      kFarAway,
                      (liesThere ? kLiesThere : kDoesNotLieThere) | garment.place,
                      number,
                      index};
        candidate += comesThere & (isHeld | isOther) ? 0 : 1;
    }
    const bool isQueue = platen.front != kNone;
    // The next is taken up at the present temperature until a garment is ready for another one.
    const bool isNext = isQueue && !isPreparing &&
                        (!platen.frontStep->isNextOnPlaten || suits(platen.frontStep->nextHeat, platen));
    if (isNext && !(platen.frontStep->usesPlaten && isHeld))
        *candidate++ = {platen.frontStep->usesPlaten ? reachAt : 0,
                        platen.frontStep->handsLead,
                        platen.frontStep->attended,
                        otherReadyAt,
                        kDoesNotLieThere | platen.front,
                        number,
                        kTakesUp};
    if (!isNeededAsItIs && !isHeld && (isNeededOtherwise || isQueue) && !(isNext && otherReadyAt == kFarAway))
        *candidate++ = {isNext ? std::max(reachAt, otherReadyAt) : reachAt,
                        kHandsDoNotMatter,
                        0,
                        kFarAway,
                        number,
                        number,
                        kChanges};
    m_counts[number] = static_cast<Number>(candidate - candidates.data());
}

void DayCourse::change(Number number) {
    Platen& platen = m_state.platens[number];
    Number heat = kNone;
    for (const Garment& garment : platen.begun) {
        if (garment.step->isNextOnPlaten && !suits(garment.step->nextHeat, platen)) {
            heat = garment.step->nextHeat;
            break;
        }
    }
    if (heat == kNone)
        heat = platen.frontStep->nextHeat;
    if (!platen.isCold)
        ++m_state.score.changes;
    platen.steadyAt = m_state.now + m_day.changeOn(number, platen.heat, heat);
    platen.heat = heat;
    platen.isCold = false;
    assess(number);
}

void DayCourse::takeUp(Number number) {
    Platen& platen = m_state.platens[number];
    const Number place = platen.front;
    const Number job = m_places[place].job;
    platen.begun.push_back({platen.frontStep, m_state.now, place, job, m_day.job(job).hasBeenOnPlaten});
    Number next = place + 1;
    while (next < m_state.given && m_places[next].platen != number)
        ++next;
    setFront(platen, next < m_state.given ? next : kNone);
    m_starving += platen.front == kNone && platen.toCome > 0 ? 1 : 0;
    goOn(number, static_cast<Number>(platen.begun.size() - 1));
}

void DayCourse::goOn(Number number, Number index) {
    Platen& platen = m_state.platens[number];
    Garment& garment = platen.begun[index];
    const Step& step = *garment.step;
    const bool wasFree = platen.holder == kNone;
    const std::int64_t closes = m_state.now + step.attended;
    const std::int64_t opens = closes + step.platen;
    m_state.handsFreeAt = step.attended > 0 ? closes : m_state.handsFreeAt;
    platen.freeAt = step.usesPlaten ? opens : platen.freeAt;
    platen.opensAt = step.platen > 0 ? opens : platen.opensAt;
    const Number staying = step.keepsPlaten ? (wasFree ? garment.place : platen.holder) : kNone;
    platen.holder = step.usesPlaten ? staying : platen.holder;
    garment.hasBeenOnPlaten |= step.usesPlaten & wasFree;
    garment.readyAt = opens + step.after;
    garment.step += step.isDone ? 0 : 1;
    if (garment.step->isDone) {
        const CourseDay::Job& job = m_day.job(garment.job);
        const std::int64_t late = garment.readyAt - job.due;
        m_state.score.lateness += late > 0 ? job.weight * static_cast<double>(late) : 0;
        m_state.score.lateGarments += late > 0 ? 1 : 0;
        m_state.score.ends = std::max(m_state.score.ends, garment.readyAt);
        m_places[garment.place].ends = garment.readyAt;
        platen.begun.erase(platen.begun.begin() + index);
    }
    assess(number);
}

} // namespace holdfast
