#pragma once
// Strip packings made in one go, by filling the strip in several orders.

#include "core/cutting/strip_plan.h"

namespace holdfast {

using ShouldStop = std::function<bool()>;

// The shortest that several orders give of all these pieces; whatever end the frame has is not looked at.
// Stopped, what is not laid yet follows in rows.
Filling fillInSeveralOrders(const StripPlan& plan, std::span<const FillPiece> pieces,
                            const ShouldStop& shouldStop);

// On a strip that ends: as many of the earlier pieces as are found to fit.
Filling fillByPrecedence(const StripPlan& plan, const ShouldStop& shouldStop);

} // namespace holdfast
