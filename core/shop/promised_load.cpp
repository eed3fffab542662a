#include "core/shop/promised_load.h"

namespace holdfast {

Seconds pressTime(const Route& route, std::size_t fromStep) {
    Seconds work{0};
    for (std::size_t step = fromStep; step < route.steps.size(); ++step)
        work += route.steps[step].attended + route.steps[step].platen;
    return work;
}

std::vector<PressLoad> promisedLoad(const ReckonedShop& shop) {
    std::vector<PressLoad> load;
    for (const auto& [id, assessment] : shop.assessments) {
        const Garment* garment = shop.facts.garments.find(id);
        if (!garment || garment->handedOverAt || assessment.progress.isPressed())
            continue;
        const Order& order = shop.facts.orderOf(*garment);
        if (order.state == OrderState::Confirmed)
            load.push_back({order.promised - assessment.route.restAfter,
                            pressTime(assessment.route, assessment.progress.finished)});
    }
    return load;
}

} // namespace holdfast
