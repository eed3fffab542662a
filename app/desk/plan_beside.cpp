// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/plan_beside.h"

#include <algorithm>

namespace holdfast::app {

namespace {

// Garments run through: the first search takes some tenths of a second, the longest a few seconds. Each
// further one takes twice the work of the one before.
constexpr std::uint64_t kFirstWork = 1'000'000;
constexpr std::uint64_t kMostWork = 4'000'000;

// All of a request but its moment: what is still to be done, when it is due, and the platens. What is left of
// a step that is under way is a matter of the moment.
std::vector<double> outlineOf(const PlanRequest& request) {
    std::vector<double> outline;
    const auto add = [&](auto... values) { (outline.push_back(static_cast<double>(values)), ...); };
    for (const PlatenNow& platen : request.platens)
        add(platen.press.id.value, platen.press.heatsPerMinute, platen.press.coolsPerMinute,
            platen.temperature ? platen.temperature->value : -1);
    for (const PressJob& job : request.jobs) {
        add(job.garment.value, job.press ? job.press->value : 0, job.due.time_since_epoch().count(),
            job.weight, job.isUnderway, job.isOnPlaten, job.steps.size());
        for (std::size_t at = job.isUnderway ? 1 : 0; at < job.steps.size(); ++at) {
            const RouteStep& step = job.steps[at];
            add(step.attended.count(), step.platen.count(), step.waiting.count(),
                step.temperature ? step.temperature->value : 0);
        }
    }
    return outline;
}

} // namespace

void PlanBeside::begin(PlanRequest request) {
    drop();
    if (std::vector<double> of = outlineOf(request); of != m_of) {
        m_of = std::move(of);
        m_work = kFirstWork;
        m_isThrough = false;
    }
    if (m_isThrough)
        return;
    m_beside.begin(
        [request = std::move(request), work = m_work](auto& reporter) mutable {
            request.shouldStop = [&] { return reporter.shouldStop(); };
            return search(reporter, request, work);
        },
        [this](Done) { emit ended(); },
        [this](const Found& so) {
            m_work = so.nextWork;
            m_isThrough = so.isDone;
            emit found(so.plan);
        });
}

// Until a long search finds nothing more.
Done PlanBeside::search(Search::Reporter& reporter, PlanRequest& request, std::uint64_t work) {
    std::optional<DayPlan> best;
    for (;; work = std::min(2 * work, kMostWork)) {
        request.search.work = work;
        DayPlan plan = planDay(request);
        if (reporter.shouldStop())
            return {};
        const bool isBetter = !best || plan.isBetterThan(*best);
        const bool isDone = !plan.isCutShort || (!isBetter && work == kMostWork);
        if (isBetter) {
            request.search.goesOnFrom = plan.order;
            best = std::move(plan);
        }
        reporter.report({*best, std::min(2 * work, kMostWork), isDone});
        if (isDone)
            return {};
    }
}

} // namespace holdfast::app
