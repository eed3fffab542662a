#include "core/press/day_plan.h"

#include "core/press/day_plan_rules.h"
#include "core/press/day_plan_timing.h"
#include "core/press/day_search.h"

#include <algorithm>
#include <cassert>
#include <numeric>
#include <optional>
#include <utility>

namespace holdfast {

namespace {

DayPlan planned(const TimedDay& day, std::span<const std::size_t> order) {
    DayPlan plan = day.plan(order);
    for (const std::size_t job : order)
        plan.order.push_back(day.jobs()[job].garment);
    for (std::size_t job = 0; job < day.jobs().size(); ++job) {
        if (!day.isPlaced(job))
            plan.unplaced.push_back(day.jobs()[job].garment);
    }
    return plan;
}

// What is left of the plan before, and what is new behind it.
std::vector<std::size_t> goneOnFrom(const TimedDay& day, std::span<const GarmentId> before) {
    const std::span<const TimedJob> jobs = day.jobs();
    std::vector<std::size_t> order;
    for (const GarmentId garment : before) {
        const auto found = std::ranges::find(jobs, garment, &TimedJob::garment);
        if (found != jobs.end())
            order.push_back(static_cast<std::size_t>(found - jobs.begin()));
    }
    std::vector<std::size_t> byPromise(jobs.size());
    std::iota(byPromise.begin(), byPromise.end(), std::size_t{0});
    std::ranges::stable_sort(byPromise, {}, [&](std::size_t job) { return jobs[job].due; });
    order.insert(order.end(), byPromise.begin(), byPromise.end()); // those named before are passed over
    return day.cleaned(order);
}

} // namespace

const PlannedGarment* DayPlan::find(GarmentId garment) const {
    for (const HeatRun& run : runs) {
        const auto found = std::ranges::find(run.garments, garment, &PlannedGarment::garment);
        if (found != run.garments.end())
            return &*found;
    }
    return nullptr;
}

bool DayPlan::isBetterThan(const DayPlan& other) const {
    const auto score = [](const DayPlan& plan) {
        return DayScore{static_cast<double>(plan.lateness.count()), plan.ends.time_since_epoch().count(),
                        plan.changes};
    };
    return score(*this) < score(other);
}

DayPlan planDay(const PlanRequest& request) {
    const TimedDay day{request};
    std::vector<std::size_t> best;
    std::optional<DayScore> bestScore;
    if (!request.search.goesOnFrom.empty()) {
        best = goneOnFrom(day, request.search.goesOnFrom);
        bestScore = day.score(best);
    }
    for (const DispatchRule& rule : dispatchRules()) {
        std::vector<std::size_t> order = rule(day);
        const DayScore score = day.score(order);
        if (!bestScore || score < *bestScore) {
            bestScore = score;
            best = std::move(order);
        }
        // The first rule, by earliest promise, is always heard: stopped or not, there is a plan.
        if (request.shouldStop && request.shouldStop()) {
            DayPlan plan = planned(day, best);
            plan.isCutShort = true;
            return plan;
        }
    }
    const SearchedOrder found = searchedOrder(day, std::move(best));
    DayPlan plan = planned(day, found.order);
    plan.isCutShort = found.isCutShort;
    return plan;
}

DayPlan planInOrder(const PlanRequest& request, const std::vector<std::size_t>& order) {
    assert(std::ranges::all_of(order, [&](std::size_t job) { return job < request.jobs.size(); }));
    const TimedDay day{request};
    return planned(day, day.cleaned(order));
}

} // namespace holdfast
