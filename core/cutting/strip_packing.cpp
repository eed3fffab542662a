#include "core/cutting/strip_packing.h"

#include "core/cutting/strip_construction.h"

namespace holdfast {

namespace {

StripPacking constructed(const StripTask& task, const StripPlan& plan, const ShouldStop& shouldStop) {
    const Filling filling = plan.hasLength ? fillByPrecedence(plan, shouldStop)
                                           : fillInSeveralOrders(plan, plan.pieces, shouldStop);
    return packingOf(task, filling.places);
}

} // namespace

Result<StripPacking> packAtOnce(const StripTask& task) {
    if (const Result<Done> checked = checkTask(task); !checked)
        return checked.error();
    return constructed(task, planOf(task), {});
}

Result<StripPacking> packWithin(const StripTask& task, const StripSearch& search) {
    if (const Result<Done> checked = checkTask(task); !checked)
        return checked.error();
    const auto ends = std::chrono::steady_clock::now() + search.budget;
    const auto shouldStop = [&] {
        return (search.shouldStop && search.shouldStop()) ||
               (!search.rounds && std::chrono::steady_clock::now() >= ends);
    };
    StripPacking packing = constructed(task, planOf(task), shouldStop);
    if (search.improved)
        search.improved(packing);
    return packing;
}

} // namespace holdfast
