// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/strip_packing.h"

#include "core/cutting/strip_improvement.h"

namespace holdfast {

namespace {

Filling constructed(const StripPlan& plan, const ShouldStop& shouldStop) {
    return plan.hasLength ? fillByPrecedence(plan, shouldStop)
                          : fillInSeveralOrders(plan.frame, plan.pieces, shouldStop);
}

} // namespace

Result<StripPacking> packAtOnce(const StripTask& task, const std::function<bool()>& shouldStop) {
    if (const Result<Done> checked = checkTask(task); !checked)
        return checked.error();
    return packingOf(task, constructed(planOf(task), shouldStop).places);
}

Result<StripPacking> packWithin(const StripTask& task, const StripSearch& search) {
    if (const Result<Done> checked = checkTask(task); !checked)
        return checked.error();
    const StripPlan plan = planOf(task);
    const Filling first = constructed(plan, search.shouldStop);
    StripPacking best = packingOf(task, first.places);
    const auto tell = [&] {
        if (search.improved)
            search.improved(best);
    };
    tell();
    if (first.isStopped)
        return best;
    improveFilling(task, plan, first, search, [&](const Filling& filling) {
        StripPacking packing = packingOf(task, filling.places);
        if (!isBetter(packing, best))
            return;
        best = std::move(packing);
        tell();
    });
    return best;
}

} // namespace holdfast
