#pragma once
// Where a garment stands, derived from its facts.

#include "core/press/route.h"
#include "core/shop/shop_facts.h"
#include "core/trade/dates.h"

#include <optional>
#include <string>
#include <string_view>

namespace holdfast {

enum class Stage {
    ToConfirm,   // the order is a quotation, or wording is not confirmed
    ToBuy,       // no blank is kept for it
    ToWash,
    Drying,
    ToCut,
    ToPress,     // on the walk
    OnPress,     // a step is under way
    Cooling,     // the step under way is a wait
    Resting,
    Ready,
    HandedOver,
    Cancelled,
};

// Where along its route a garment is: steps finished, and the one under way.
struct Progress {
    std::size_t finished = 0;                 // steps of the route that are done
    std::optional<std::size_t> underway;      // index into route.steps
    std::optional<Instant> underwaySince;
    std::optional<Instant> pressedAt;         // when the last step was finished

    bool hasBegun() const { return finished > 0 || underway.has_value(); }
    bool isPressed() const { return pressedAt.has_value(); }
};

Progress progressOf(const ShopFacts& facts, const Garment& garment, const Route& route);

// When the first wash is allowed: last press and rest. None until it is pressed.
std::optional<Instant> restUntil(const ShopFacts& facts, const Progress& progress);

Stage stageOf(const ShopFacts& facts, const Garment& garment, const Route& route, const Progress& progress,
              const Now& now);

std::string_view stageCode(Stage stage); // "to-wash"; stable, used in reports
std::string stageWords(Stage stage);     // "To wash"

} // namespace holdfast
