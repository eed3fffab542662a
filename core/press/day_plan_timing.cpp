#include "core/press/day_plan_timing.h"

#include "core/press/day_plan_runs.h"
#include "core/press/day_plan_simulation.h"
#include "core/trade/unit_words.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace holdfast {

namespace {

constexpr std::int64_t kLongest = std::int64_t{366} * 24 * 3600;
// Due times further away than this are as good as never; keeps every difference within 64 bits.
constexpr std::int64_t kFarAway = std::int64_t{1} << 50;
constexpr double kHeaviest = 1e6;

std::int64_t counted(Seconds duration) {
    return std::clamp<std::int64_t>(duration.count(), 0, kLongest);
}

std::int64_t secondsAfter(Instant start, Instant when) {
    std::int64_t seconds = 0;
    if (__builtin_sub_overflow(when.time_since_epoch().count(), start.time_since_epoch().count(), &seconds))
        return when < start ? -kFarAway : kFarAway;
    return std::clamp(seconds, -kFarAway, kFarAway);
}

bool canChange(const Press& press) {
    return std::isfinite(press.heatsPerMinute) && std::isfinite(press.coolsPerMinute) &&
           press.heatsPerMinute > 0 && press.coolsPerMinute > 0;
}

bool isOnPlaten(const RouteStep& step) {
    return step.platen.count() > 0 || (step.temperature && step.waiting.count() <= 0);
}

// Laid down just before a press, on the lower platen.
bool isLaidOnPlaten(const RouteStep& step) {
    return step.kind == StepKind::PlaceDecal && step.waiting.count() <= 0;
}

Celsius platenNow(const PlatenNow& platen) {
    return platen.temperature.value_or(kRoomTemperature);
}

// Nothing: this platen serves the job.
std::optional<std::string> whyNotOn(const PlatenNow& platen, const PressJob& job) {
    for (const RouteStep& step : job.steps) {
        if (!isOnPlaten(step) || !step.temperature)
            continue;
        if (!std::isfinite(step.temperature->value))
            return "A step of its route gives no temperature that a platen can have.";
        if (*step.temperature != platenNow(platen) && !canChange(platen.press))
            return platen.press.name + " cannot come to " + temperatureWords(*step.temperature) +
                   ": its heating and cooling, in °C a minute, must both be above 0.";
    }
    return std::nullopt;
}

std::vector<TimedStep> timedSteps(const PressJob& job) {
    std::vector<TimedStep> timed;
    timed.reserve(job.steps.size());
    for (const RouteStep& step : job.steps) {
        TimedStep next;
        next.attended = counted(step.attended);
        next.platen = counted(step.platen);
        next.waiting = counted(step.waiting);
        next.usesPlaten = isOnPlaten(step);
        if (next.usesPlaten && step.temperature)
            next.temperature = step.temperature->value;
        timed.push_back(next);
    }

    // Loading just before a press takes its platen.
    for (std::size_t step = timed.size(); step-- > 1;) {
        if (timed[step].usesPlaten && isLaidOnPlaten(job.steps[step - 1]))
            timed[step - 1].usesPlaten = true;
    }
    return timed;
}

// A step on the platen that names no temperature is done at that of the next one that does, else of the last.
void fillTemperatures(std::vector<TimedStep>& steps) {
    const auto fill = [known = std::optional<double>{}](TimedStep& step) mutable {
        if (!step.usesPlaten)
            return;
        if (!step.temperature)
            step.temperature = known;
        known = step.temperature;
    };
    std::for_each(steps.rbegin(), steps.rend(), fill);
    std::for_each(steps.begin(), steps.end(), fill);
}

// From its first step on the platen to its last before a wait or another temperature, a garment stays there:
// hand work between two presses is done where it lies.
void joinSittings(std::vector<TimedStep>& steps) {
    std::optional<std::size_t> last;
    for (std::size_t step = 0; step < steps.size(); ++step) {
        if (steps[step].usesPlaten) {
            if (last && steps[*last].temperature == steps[step].temperature) {
                for (std::size_t between = *last; between < step; ++between) {
                    steps[between].usesPlaten = true;
                    steps[between].keepsPlaten = true;
                    steps[between].temperature = steps[step].temperature;
                }
            }
            last = step;
        }
        if (steps[step].waiting > 0)
            last.reset();
    }
}

TimedJob timedJob(const PlanRequest& request, const PressJob& job) {
    TimedJob timed;
    timed.garment = job.garment;
    timed.steps = timedSteps(job);
    fillTemperatures(timed.steps);
    joinSittings(timed.steps);
    timed.nextOnPlaten.resize(timed.steps.size());
    std::size_t next = timed.steps.size();
    for (std::size_t step = timed.steps.size(); step-- > 0;) {
        if (timed.steps[step].usesPlaten)
            next = step;
        timed.nextOnPlaten[step] = next;
        timed.work += timed.steps[step].attended + timed.steps[step].platen;
    }
    for (std::size_t platen = 0; platen < request.platens.size(); ++platen) {
        const PlatenNow& offered = request.platens[platen];
        if ((!job.press || *job.press == offered.press.id) && !whyNotOn(offered, job))
            timed.platens.push_back(platen);
    }
    timed.weight = job.weight > 0 ? std::min(job.weight, kHeaviest) : 0;
    timed.due = secondsAfter(request.start, job.due);
    timed.isUnderway = job.isUnderway;
    return timed;
}

} // namespace

std::optional<double> TimedJob::firstTemperature() const {
    for (const TimedStep& step : steps) {
        if (step.usesPlaten && step.temperature)
            return step.temperature;
    }
    return std::nullopt;
}

std::optional<double> TimedJob::lastTemperature() const {
    for (auto step = steps.rbegin(); step != steps.rend(); ++step) {
        if (step->usesPlaten && step->temperature)
            return step->temperature;
    }
    return std::nullopt;
}

TimedDay::TimedDay(const PlanRequest& request)
    : m_request(request) {
    m_jobs.reserve(request.jobs.size());
    for (const PressJob& job : request.jobs)
        m_jobs.push_back(timedJob(request, job));
}

double TimedDay::temperatureNow(std::size_t platen) const {
    return platenNow(m_request.platens[platen]).value;
}

std::int64_t TimedDay::changeOn(std::size_t platen, double from, std::optional<double> to) const {
    if (!to)
        return 0;
    const Seconds change = changeTime(m_request.platens[platen].press, Celsius{from}, Celsius{*to});
    return std::min<std::int64_t>(change.count(), kLongest);
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
    return DaySimulation{*this, order, nullptr}.run();
}

DayPlan TimedDay::plan(std::span<const std::size_t> order) const {
    DayRecord record;
    const DayScore reached = DaySimulation{*this, order, &record}.run();
    return writtenOut(*this, record, reached);
}

Seconds changeTime(const Press& press, Celsius from, Celsius to) {
    if (from == to)
        return Seconds{0};
    const double difference = std::abs(to.value - from.value);
    if (!canChange(press) || !std::isfinite(difference))
        return Seconds::max();
    const double perMinute = to > from ? press.heatsPerMinute : press.coolsPerMinute;
    const double seconds = std::ceil(difference * 60.0 / perMinute);
    return seconds < static_cast<double>(kLongest) ? Seconds{static_cast<std::int64_t>(seconds)}
                                                   : Seconds{kLongest};
}

std::optional<std::string> whyUnplaced(const PlanRequest& request, const PressJob& job) {
    if (request.platens.empty())
        return "The shop has no press.";
    std::optional<std::string> why;
    for (const PlatenNow& platen : request.platens) {
        if (job.press && *job.press != platen.press.id)
            continue;
        const std::optional<std::string> whyNot = whyNotOn(platen, job);
        if (!whyNot)
            return std::nullopt;
        if (!why)
            why = whyNot;
    }
    return why ? why : "The press it is to be pressed on is not in use.";
}

} // namespace holdfast
