// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/day_plan_timing.h"

#include "core/press/day_plan_runs.h"
#include "core/press/day_plan_simulation.h"
#include "core/trade/unit_words.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdfast {

namespace {

// Due times further away than this are as good as never; keeps every difference within 64 bits.
constexpr std::int64_t kFarFuture = std::int64_t{1} << 50;
constexpr double kHeaviest = 1e6;

std::int64_t counted(Seconds duration) {
    return std::clamp<std::int64_t>(duration.count(), 0, kLongestStep);
}

std::int64_t secondsAfter(Instant start, Instant when) {
    std::int64_t seconds = 0;
    if (__builtin_sub_overflow(when.time_since_epoch().count(), start.time_since_epoch().count(), &seconds))
        return when < start ? -kFarFuture : kFarFuture;
    return std::clamp(seconds, -kFarFuture, kFarFuture);
}

bool canChange(const Press& press) {
    return std::isfinite(press.heatsPerMinute) && std::isfinite(press.coolsPerMinute) &&
           press.heatsPerMinute > 0 && press.coolsPerMinute > 0;
}

Celsius platenNow(const PlatenNow& platen) {
    const bool isKnown = platen.temperature && std::isfinite(platen.temperature->value);
    return isKnown ? *platen.temperature : kRoomTemperature;
}

// Nothing: this platen serves the job.
std::optional<Sentence> whyNotOn(const PlatenNow& platen, const PressJob& job) {
    for (const RouteStep& step : job.steps) {
        if (!needsPlaten(step) || !step.temperature)
            continue;
        if (!std::isfinite(step.temperature->value))
            return said("A step of its route gives no temperature that a platen can have.");
        if (*step.temperature != platenNow(platen) && !canChange(platen.press))
            return said(
                "{press} cannot come to {temperature}: its heating and cooling, in °C a minute, must both "
                "be above 0.",
                {{"press", platen.press.name}, {"temperature", *step.temperature}});
    }
    return std::nullopt;
}

} // namespace

TimedDay::TimedDay(const PlanRequest& request)
    : m_request(request) {
    for (const PlatenNow& platen : request.platens)
        m_heatsNow.push_back(heatOf(platenNow(platen).value));
    m_jobs.reserve(request.jobs.size());
    for (const PressJob& job : request.jobs)
        m_jobs.push_back(timedJob(job));
    for (const PlatenNow& platen : request.platens) {
        for (const double from : m_temperatures) {
            for (const double to : m_temperatures)
                m_changes.push_back(counted(changeTime(platen.press, Celsius{from}, Celsius{to})));
        }
    }
}

// Its number, a new one where none has it yet. What is no number means any: no platen serves it.
std::size_t TimedDay::heatOf(double temperature) {
    if (!std::isfinite(temperature))
        return kAnyHeat;
    const auto found = std::ranges::find(m_temperatures, temperature);
    if (found != m_temperatures.end())
        return static_cast<std::size_t>(found - m_temperatures.begin());
    m_temperatures.push_back(temperature);
    return m_temperatures.size() - 1;
}

TimedJob TimedDay::timedJob(const PressJob& job) {
    TimedJob timed;
    timed.garment = job.garment;
    for (std::size_t platen = 0; platen < m_request.platens.size(); ++platen) {
        const PlatenNow& offered = m_request.platens[platen];
        if ((!job.press || *job.press == offered.press.id) && !whyNotOn(offered, job))
            timed.platens.push_back(platen);
    }
    timed.weight = job.weight > 0 ? std::min(job.weight, kHeaviest) : 0;
    timed.due = secondsAfter(m_request.start, job.due);
    timed.isUnderway = job.isUnderway;

    timed.hasBeenOnPlaten = job.hasBeenOnPlaten;
    timed.isOnPlaten = job.isOnPlaten;
    timed.steps =
        timedSteps(job.steps, job.isOnPlaten, [this](double temperature) { return heatOf(temperature); });

    timed.nextOnPlaten.resize(timed.steps.size());
    timed.handWorkFrom.resize(timed.steps.size() + 1, 0);
    timed.platenWorkFrom.resize(timed.steps.size() + 1, 0);
    timed.lengthFrom.resize(timed.steps.size() + 1, 0);
    std::size_t next = timed.steps.size();
    for (std::size_t step = timed.steps.size(); step-- > 0;) {
        const TimedStep& each = timed.steps[step];
        if (each.usesPlaten) {
            next = step;
            timed.firstHeat = each.heat;
            timed.lastHeat = timed.lastHeat == kAnyHeat ? each.heat : timed.lastHeat;
        }
        timed.nextOnPlaten[step] = next;
        timed.work += each.attended + each.platen;
        timed.handWorkFrom[step] = timed.handWorkFrom[step + 1] + each.attended;
        timed.platenWorkFrom[step] =
            timed.platenWorkFrom[step + 1] + (each.usesPlaten ? each.attended + each.platen : 0);
        timed.lengthFrom[step] = timed.lengthFrom[step + 1] + each.attended + each.platen + each.waiting;
    }
    return timed;
}

std::vector<std::size_t> TimedDay::cleaned(std::span<const std::size_t> order) const {
    std::vector<bool> isNamed(m_jobs.size(), false);
    std::vector<std::size_t> cleaned;
    cleaned.reserve(order.size());
    for (const std::size_t job : order) {
        if (job >= m_jobs.size() || isNamed[job])
            continue;
        isNamed[job] = true;
        if (isPlaced(job))
            cleaned.push_back(job);
    }
    std::ranges::stable_partition(cleaned, [this](std::size_t job) { return m_jobs[job].isUnderway; });
    return cleaned;
}

DayScore TimedDay::score(std::span<const std::size_t> order) const {
    DaySimulation simulation{*this};
    simulation.begin(order);
    for (const std::size_t job : order) {
        simulation.give(job);
        simulation.run();
    }
    return simulation.state().score;
}

DayPlan TimedDay::plan(std::span<const std::size_t> order) const {
    DayRecord record;
    DaySimulation simulation{*this, &record};
    simulation.begin(order);
    for (const std::size_t job : order) {
        simulation.give(job);
        simulation.run(); // as far as it goes, so that few are waiting
    }
    return writtenOut(*this, record, simulation.state().score);
}

Seconds changeTime(const Press& press, Celsius from, Celsius to) {
    if (from == to)
        return Seconds{0};
    const double difference = std::abs(to.value - from.value);
    if (!canChange(press) || !std::isfinite(difference))
        return Seconds::max();
    const double perMinute = to > from ? press.heatsPerMinute : press.coolsPerMinute;
    const double seconds = std::ceil(difference * 60.0 / perMinute);
    return seconds < static_cast<double>(kLongestStep) ? Seconds{static_cast<std::int64_t>(seconds)}
                                                       : Seconds{kLongestStep};
}

std::optional<Sentence> whyUnplaced(const PlanRequest& request, const PressJob& job) {
    if (request.platens.empty())
        return said("The shop has no press.");
    std::optional<Sentence> why;
    for (const PlatenNow& platen : request.platens) {
        if (job.press && *job.press != platen.press.id)
            continue;
        const std::optional<Sentence> whyNot = whyNotOn(platen, job);
        if (!whyNot)
            return std::nullopt;
        if (!why)
            why = whyNot;
    }
    return why ? why : said("The press it is to be pressed on is not in use.");
}

} // namespace holdfast
