// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stock/reorder.h"

#include "core/trade/assertion.h"

#include <algorithm>

namespace holdfast {

namespace {

double measuredEnough(const Demand& demand, double runOut) {
    return demand.variance > 0 ? std::max(0.0, normalQuantity(demand, 1 - runOut)) : demand.mean;
}

ReorderLevels inOrder(double point, double upTo) {
    return {point, std::max(point, upTo)};
}

} // namespace

Demand overPeriods(const Demand& inPeriod, double periods) {
    return {inPeriod.mean * periods, inPeriod.variance * periods};
}

ReorderLevels measuredLevels(const Demand& inLead, const Demand& inLeadAndAfter, double runOut) {
    HOLDFAST_ASSERT(runOut > 0 && runOut <= 0.5);
    return inOrder(measuredEnough(inLead, runOut), measuredEnough(inLeadAndAfter, runOut));
}

ReorderLevels countedLevels(const Demand& inLead, const Demand& inLeadAndAfter, double runOut) {
    HOLDFAST_ASSERT(runOut > 0 && runOut <= 0.5);
    return inOrder(static_cast<double>(quantityEnough(inLead, 1 - runOut)),
                   static_cast<double>(quantityEnough(inLeadAndAfter, 1 - runOut)));
}

} // namespace holdfast
