// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Looks a plan of the day over, knowing nothing of how it was made: only the request and what is planned.

#include "core/press/day_plan.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <vector>

namespace holdfast::press_days {

class PlanValidator {
public:
    PlanValidator(const PlanRequest& request, const DayPlan& plan)
        : m_request(request)
        , m_plan(plan) {}

    // Everything that is wrong with the plan; empty: nothing.
    std::vector<std::string> faults() {
        everyGarmentOnce();
        for (const PressJob& job : m_request.jobs)
            stepsInOrder(job);
        neverTwoAtOnce();
        for (const PlatenNow& platen : m_request.platens)
            platenKeepsItsTemperatures(platen);
        makerStandsReadyToLift();
        sumsAreRight();
        return m_faults;
    }

private:
    using Spans = std::vector<PlannedSpan>;

    void fault(std::string text) { m_faults.push_back(std::move(text)); }

    const PressJob& jobOf(GarmentId garment) const {
        return *std::ranges::find(m_request.jobs, garment, &PressJob::garment);
    }

    bool isUnplaced(GarmentId garment) const {
        return std::ranges::find(m_plan.unplaced, garment) != m_plan.unplaced.end();
    }

    Spans spansWhere(auto holds) const {
        Spans spans;
        std::ranges::copy_if(m_plan.spans, std::back_inserter(spans), holds);
        std::ranges::stable_sort(spans, {}, &PlannedSpan::begins);
        return spans;
    }

    void everyGarmentOnce() {
        std::map<GarmentId, int> seen;
        for (const HeatRun& run : m_plan.runs) {
            for (const PlannedGarment& garment : run.garments)
                ++seen[garment.garment];
        }
        for (const PressJob& job : m_request.jobs) {
            if (seen[job.garment] != (isUnplaced(job.garment) ? 0 : 1))
                fault("garment " + std::to_string(job.garment.value) + " is planned " +
                      std::to_string(seen[job.garment]) + " times");
        }
    }

    // Each step's spans are as long as they should be, and none begins before the step before it is over.
    void stepsInOrder(const PressJob& job) {
        if (isUnplaced(job.garment))
            return;
        const std::string name = "garment " + std::to_string(job.garment.value);
        const PlannedGarment& planned = *m_plan.find(job.garment);
        Instant before = planned.begins;
        bool isBegun = false;
        for (std::size_t index = 0; index < job.steps.size(); ++index) {
            const RouteStep& step = job.steps[index];
            const Spans spans = spansWhere(
                [&](const PlannedSpan& span) { return span.garment == job.garment && span.step == index; });
            if (spans.empty()) {
                if (step.total().count() > 0)
                    fault(name + " leaves out a step");
                continue;
            }
            const Instant begins = spans.front().begins;
            if (begins < before)
                fault(name + " begins a step before the last is over");
            if (!isBegun && begins != planned.begins)
                fault(name + " is not taken up when it is said to be");
            isBegun = true;
            const Instant closes = begins + step.attended;
            const Instant opens = closes + step.platen;
            before = opens + step.waiting;
            for (const PlannedSpan& span : spans) {
                if (span.press != planned.press)
                    fault(name + " is at two presses");
                const bool isRight =
                    span.resource == Resource::Hands    ? span.begins == begins && span.ends == closes
                    : span.resource == Resource::Platen ? span.begins == begins && span.ends == opens
                                                        : span.begins == opens && span.ends == before;
                if (!isRight)
                    fault(name + " has a span of the wrong length");
            }
            const auto has = [&](Resource resource) {
                return std::ranges::find(spans, resource, &PlannedSpan::resource) != spans.end();
            };
            if (has(Resource::Hands) != (step.attended.count() > 0) ||
                has(Resource::Rack) != (step.waiting.count() > 0) ||
                (step.platen.count() > 0 && !has(Resource::Platen)))
                fault(name + " has a step without its hands, its platen or its rack");
        }
        if (before != planned.ends)
            fault(name + " does not end when it is said to");
        const Seconds late = std::max(Seconds{0}, planned.ends - job.due);
        if (late != planned.late)
            fault(name + " is late by another time than it is said to be");
    }

    void neverTwoAtOnce() {
        noOverlap(spansWhere([](const PlannedSpan& span) { return span.resource == Resource::Hands; }),
                  "the hands");
        for (const PlatenNow& platen : m_request.platens)
            noOverlap(platenSpans(platen.press.id), "a platen");
    }

    Spans platenSpans(PressId press) const {
        return spansWhere([&](const PlannedSpan& span) {
            return span.resource == Resource::Platen && span.press == press;
        });
    }

    void noOverlap(const Spans& spans, const std::string& what) {
        for (std::size_t next = 1; next < spans.size(); ++next) {
            if (spans[next].begins < spans[next - 1].ends)
                fault(what + " is used for two things at once");
        }
    }

    // Between two uses at unlike temperatures lies at least the time of the change; between two presses of
    // one garment with no wait between, nobody else is on the platen.
    void platenKeepsItsTemperatures(const PlatenNow& platen) {
        double temperature = platen.temperature.value_or(kRoomTemperature).value;
        Instant free = m_request.start;
        int changes = 0;
        bool isWarm = platen.temperature.has_value();
        const PlannedSpan* before = nullptr;
        const Spans spans = platenSpans(platen.press.id);
        for (const PlannedSpan& span : spans) {
            const std::optional<Celsius> asked = askedBy(span);
            if (asked && asked->value != temperature) {
                const double rate =
                    asked->value > temperature ? platen.press.heatsPerMinute : platen.press.coolsPerMinute;
                const double least = std::abs(asked->value - temperature) / rate * 60;
                if (static_cast<double>((span.begins - free).count()) < least - 1e-6)
                    fault("a change of temperature is too short");
                changes += isWarm ? 1 : 0;
                isWarm = true;
                temperature = asked->value;
            }
            if (before && before->garment != span.garment && staysOnPlatenAfter(*before))
                fault("a garment is taken off the platen between two presses");
            if (!isInRunOf(span, temperature))
                fault("a press stands in no run of its temperature");
            free = span.ends;
            before = &span;
        }
        m_changes += changes;
    }

    // What is loaded is loaded for the next press of its garment.
    std::optional<Celsius> askedBy(const PlannedSpan& span) const {
        const std::vector<RouteStep>& steps = jobOf(span.garment).steps;
        for (std::size_t next = span.step; next < steps.size(); ++next) {
            if (steps[next].temperature)
                return steps[next].temperature;
        }
        return std::nullopt;
    }

    bool staysOnPlatenAfter(const PlannedSpan& span) const {
        const std::vector<RouteStep>& steps = jobOf(span.garment).steps;
        const std::optional<Celsius> temperature = steps[span.step].temperature;
        if (steps[span.step].waiting.count() > 0 || !temperature)
            return false;
        for (std::size_t next = span.step + 1; next < steps.size() && steps[next].waiting.count() == 0;
             ++next) {
            if (steps[next].platen.count() > 0)
                return steps[next].temperature == temperature;
        }
        return false;
    }

    bool isInRunOf(const PlannedSpan& span, double temperature) const {
        return std::ranges::any_of(m_plan.runs, [&](const HeatRun& run) {
            const bool isListed = std::ranges::find(run.garments, span.garment, &PlannedGarment::garment) !=
                                      run.garments.end() ||
                                  std::ranges::find(run.again, span.garment) != run.again.end();
            return run.press == span.press && run.temperature.value == temperature &&
                   run.begins <= span.begins && span.ends <= run.ends && isListed;
        });
    }

    void makerStandsReadyToLift() {
        const Spans hands =
            spansWhere([](const PlannedSpan& span) { return span.resource == Resource::Hands; });
        for (const PlannedSpan& closed :
             spansWhere([](const PlannedSpan& span) { return span.resource == Resource::Platen; })) {
            if (jobOf(closed.garment).steps[closed.step].platen.count() == 0)
                continue;
            for (const PlannedSpan& busy : hands) {
                if (busy.begins < closed.ends && closed.ends < busy.ends)
                    fault("the hands are busy when a platen opens");
            }
        }
    }

    void sumsAreRight() {
        Instant ends = m_request.start;
        double lateness = 0;
        for (const HeatRun& run : m_plan.runs) {
            for (const PlannedGarment& garment : run.garments) {
                ends = std::max(ends, garment.ends);
                lateness += jobOf(garment.garment).weight * static_cast<double>(garment.late.count());
            }
        }
        if (ends != m_plan.ends)
            fault("the day does not end with its last garment");
        Instant lastRun = m_request.start;
        for (const HeatRun& run : m_plan.runs)
            lastRun = std::max(lastRun, run.ends);
        if (ends != lastRun)
            fault("the last run does not end with the day");
        if (std::abs(lateness - static_cast<double>(m_plan.lateness.count())) > 1)
            fault("the lateness is not the weighted sum of the garments'");
        if (m_changes != m_plan.changes)
            fault("changes are counted " + std::to_string(m_plan.changes) + ", seen " +
                  std::to_string(m_changes));
        for (std::size_t next = 1; next < m_plan.runs.size(); ++next) {
            if (m_plan.runs[next].begins < m_plan.runs[next - 1].begins)
                fault("runs do not stand by their beginning");
        }
    }

    const PlanRequest& m_request;
    const DayPlan& m_plan;
    std::vector<std::string> m_faults;
    int m_changes = 0;
};

} // namespace holdfast::press_days
