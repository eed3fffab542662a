// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where a garment is, derived from its facts.

#include "core/facts/shop_facts.h"
#include "core/press/route.h"
#include "core/trade/dates.h"
#include "core/trade/phrase.h"

#include <optional>
#include <string>
#include <string_view>

namespace holdfast {

enum class Stage {
    ToConfirm, // the order is a quotation, or wording is not confirmed
    ToBuy,     // no blank is kept for it
    ToWash,
    Drying,
    ToCut,
    ToPress, // on the walk
    OnPress, // a step is under way
    Cooling, // the step under way is a wait
    Resting,
    Ready,
    HandedOver,
    Cancelled,
};

// Where along its route a garment is: steps finished, and the one under way.
struct Progress {
    std::size_t finished = 0;            // steps of the route that are done
    std::optional<std::size_t> underway; // index into route.steps
    std::optional<Instant> underwaySince;
    std::optional<Instant> pressedAt; // when the last step was finished

    bool hasBegun() const { return finished > 0 || underway.has_value(); }
    bool isPressed() const { return pressedAt.has_value(); }
};

// From the records of the garment's present attempt, matched to the route by key. The walk goes in order, so
// all steps before the furthest finished one count as finished; a record whose key is no longer in the route
// (a recipe or a decal was changed under way) is passed over. A garment is pressed once the last step of the
// route is finished with no step open and, where the route has heat at all, some step with heat was finished.
// So it stays pressed when a recipe is changed afterwards, and a new step that such a change puts before the
// present one is not gone back for.
Progress progressOf(const ShopFacts& facts, const Garment& garment, const Route& route);

// When the first wash is allowed: last press and rest. None until it is pressed.
std::optional<Instant> restUntil(const ShopFacts& facts, const Progress& progress);

// The first step with heat is finished: the blank's washing and the cutting are past. The last press pass is
// finished: film and roll are past.
bool firstHeatIsBehind(const Route& route, const Progress& progress);
bool lastPressIsBehind(const Route& route, const Progress& progress);

// Asked in this order: cancelled, handed over, pressed (resting until restUntil, then ready), a step under
// way, begun but between two steps (still to press), a quotation or wording not confirmed, no blank kept,
// unwashed, damp, any decal uncut; else to press. Wording, washing or drying that a person waived for this
// attempt is not asked for.
Stage stageOf(const ShopFacts& facts, const Garment& garment, const Route& route, const Progress& progress,
              const Now& now);

std::string_view stageCode(Stage stage); // "to-wash"; stable, used in reports
Phrase stageWords(Stage stage);          // "To wash"

} // namespace holdfast
