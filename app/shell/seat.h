#pragma once
// What this laptop keeps for itself in the shop's notes: the last place and the light.

#include "app/desk/shop_desk.h"
#include "app/theme/tokens.h"

#include <optional>

namespace holdfast::app {

struct BuiltPlace;

// Day until the person chose otherwise.
Light keptLight(db::Shop& shop);
void keepLight(db::Shop& shop, Light light);

// The place that was open last; the first built one for a shop that was never open.
const BuiltPlace& keptPlace(db::Shop& shop);
void keepPlace(db::Shop& shop, const BuiltPlace& place);

} // namespace holdfast::app
