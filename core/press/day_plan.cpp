// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/press/day_plan.h"

#include "core/press/day_plan_rules.h"
#include "core/press/day_plan_timing.h"
#include "core/press/day_search.h"
#include "core/trade/assertion.h"

#include <algorithm>
#include <numeric>
#include <optional>
#include <utility>

namespace holdfast {

namespace {

// Longer days leave out the rules whose time grows with the square of the garments.
constexpr std::size_t kSlowRulesUpTo = 400;

constexpr Seconds kWorthSooner{300};

DayPlan planned(const TimedDay& day, std::span<const std::size_t> order) {
    DayPlan plan = day.plan(order);
    for (const std::size_t job : order)
        plan.order.push_back(day.jobs()[job].garment);
    plan.bestOrder = plan.order;
    for (std::size_t job = 0; job < day.jobs().size(); ++job) {
        if (!day.isPlaced(job))
            plan.unplaced.push_back(day.jobs()[job].garment);
    }
    return plan;
}

// What is left of the plan before, and then what is new.
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

int DayPlan::lateGarments() const {
    int late = 0;
    for (const HeatRun& run : runs)
        late += static_cast<int>(std::ranges::count_if(
            run.garments, [](const PlannedGarment& garment) { return garment.late > Seconds{0}; }));
    return late;
}

bool isWorthTheChange(const DayPlan& better, const DayPlan& shown) {
    if (!better.isBetterThan(shown))
        return false;
    if (better.lateGarments() != shown.lateGarments())
        return better.lateGarments() < shown.lateGarments();
    if (shown.lateness > Seconds{0})
        return shown.lateness - better.lateness >= std::max(Seconds{1}, shown.lateness / 20);
    const Seconds gain =
        shown.ends - better.ends + Seconds{kChangeCountsFor} * (shown.changes - better.changes);
    return gain >= kWorthSooner;
}

namespace {

DayPlan unlessShownWillDo(const TimedDay& day, DayPlan plan) {
    if (day.request().search.shown.empty())
        return plan;
    DayPlan shown = planned(day, goneOnFrom(day, day.request().search.shown));
    if (isWorthTheChange(plan, shown))
        return plan;
    shown.bestOrder = std::move(plan.bestOrder);
    return shown;
}

} // namespace

DayPlan planDay(const PlanRequest& request) {
    const TimedDay day{request};
    const auto mustStop = [&] { return request.shouldStop && request.shouldStop(); };
    std::vector<ScoredOrder> starts;
    const auto add = [&](std::vector<std::size_t> order) {
        const DayScore score = day.score(order);
        starts.push_back({std::move(order), score});
    };
    if (!request.search.goesOnFrom.empty())
        add(goneOnFrom(day, request.search.goesOnFrom));
    for (const DispatchRule& rule : dispatchRules()) {
        if (rule.isQuick || day.jobs().size() <= kSlowRulesUpTo)
            add(rule.order(day));
        // The first rule, by earliest promise, is always heard: stopped or not, there is a plan.
        if (mustStop()) {
            DayPlan plan = planned(day, bestOf(starts).order);
            plan.isCutShort = true;
            return plan;
        }
    }
    const SearchedOrder found = searchedOrder(day, starts);
    DayPlan plan = unlessShownWillDo(day, planned(day, found.order));
    plan.isCutShort = found.isCutShort;
    return plan;
}

DayPlan planInOrder(const PlanRequest& request, const std::vector<std::size_t>& order) {
    HOLDFAST_ASSERT(std::ranges::all_of(order, [&](std::size_t job) { return job < request.jobs.size(); }));
    const TimedDay day{request};
    return planned(day, day.cleaned(order));
}

} // namespace holdfast
