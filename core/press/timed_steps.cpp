// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/timed_steps.h"

#include <algorithm>
#include <optional>

namespace holdfast {

namespace {

std::int64_t counted(Seconds duration) {
    return std::clamp<std::int64_t>(duration.count(), 0, kLongestStep);
}

// Laid down just before a press, on the lower platen.
bool isLaidOnPlaten(const RouteStep& step) {
    return step.kind == StepKind::PlaceDecal && step.waiting.count() <= 0;
}

TimedStep timedStep(const RouteStep& step) {
    TimedStep timed;
    timed.attended = counted(step.attended);
    timed.platen = counted(step.platen);
    timed.waiting = counted(step.waiting);
    timed.usesPlaten = needsPlaten(step);
    return timed;
}

// Loading just before a press takes its platen.
void takePlatenForLoading(std::span<const RouteStep> steps, std::vector<TimedStep>& timed) {
    for (std::size_t step = timed.size(); step-- > 1;) {
        if (timed[step].usesPlaten && isLaidOnPlaten(steps[step - 1]))
            timed[step - 1].usesPlaten = true;
    }
}

// A step on the platen that names no temperature is done at that of the next one that does, else of the last.
void fillHeats(std::vector<TimedStep>& steps) {
    const auto fill = [known = kAnyHeat](TimedStep& step) mutable {
        if (!step.usesPlaten)
            return;
        if (step.heat == kAnyHeat)
            step.heat = known;
        known = step.heat;
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
            if (last && steps[*last].heat == steps[step].heat) {
                for (std::size_t between = *last; between < step; ++between) {
                    steps[between].usesPlaten = true;
                    steps[between].keepsPlaten = true;
                    steps[between].heat = steps[step].heat;
                }
            }
            last = step;
        }
        if (steps[step].waiting > 0)
            last.reset();
    }
}

// What is done before the first step on the platen is done there.
void lieFromTheStart(std::vector<TimedStep>& steps) {
    const auto first = std::ranges::find_if(
        steps, [](const TimedStep& step) { return step.usesPlaten || step.waiting > 0; });
    if (first == steps.end() || !first->usesPlaten)
        return;
    for (auto step = steps.begin(); step != first; ++step) {
        step->usesPlaten = true;
        step->keepsPlaten = true;
        step->heat = first->heat;
    }
}

} // namespace

bool needsPlaten(const RouteStep& step) {
    return step.platen.count() > 0 || (step.temperature && step.waiting.count() <= 0);
}

std::vector<TimedStep> timedSteps(std::span<const RouteStep> steps, bool liesOnPlaten,
                                  const HeatNumber& heatOf) {
    std::vector<TimedStep> timed;
    for (const RouteStep& step : steps) {
        timed.push_back(timedStep(step));
        if (timed.back().usesPlaten && step.temperature)
            timed.back().heat = heatOf(step.temperature->value);
    }
    takePlatenForLoading(steps, timed);
    fillHeats(timed);
    joinSittings(timed);
    if (liesOnPlaten)
        lieFromTheStart(timed);
    return timed;
}

PlatenSoFar platenSoFar(std::span<const RouteStep> route, std::size_t behind, bool isUnderway) {
    std::vector<double> temperatures;
    const auto timed = timedSteps(route, false, [&](double temperature) {
        const auto known = std::ranges::find(temperatures, temperature);
        if (known != temperatures.end())
            return static_cast<std::size_t>(known - temperatures.begin());
        temperatures.push_back(temperature);
        return temperatures.size() - 1;
    });
    const std::size_t begun = std::min(behind + (isUnderway ? 1 : 0), timed.size());
    PlatenSoFar soFar;
    soFar.hasBeenThere = std::any_of(timed.begin(), timed.begin() + static_cast<std::ptrdiff_t>(begun),
                                     [](const TimedStep& step) { return step.usesPlaten; });
    soFar.liesThere = (behind > 0 && behind < timed.size() && timed[behind - 1].keepsPlaten) ||
                      (behind < begun && timed[behind].usesPlaten);
    return soFar;
}

} // namespace holdfast
