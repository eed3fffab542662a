// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What the maker is offered next at the press.
//
//   1. What lies under the closed platen: it is lifted, and nothing else is touched before.
//   2. A warm peel that is due. It is peeled while it is warm, so it waits neither for a cool peel, which
//   keeps,
//      nor for hand work on another garment, however late those are.
//   3. The garment in hand.
//   4. A cool peel that is due.
//   5. The next garment of the plan.
//   6. The garment on the rack whose count ends first, which can only be waited for.
//
// Of several due at once the one that is due longest comes first. That a warm peel does not keep is what its
// name says; that the one due longest goes first is common practice, no source.

#include "core/facts/film.h"
#include "core/trade/ids.h"

#include <chrono>
#include <optional>
#include <span>

namespace holdfast {

struct OnTheRack {
    GarmentId garment;
    Peel peel = Peel::Cool;
    std::chrono::milliseconds left{0}; // until it is due; negative: it has been due so long
    bool isKnown = true;               // false: its count cannot be known, so it is never due by itself

    bool isDue() const { return isKnown && left.count() <= 0; }
};

struct AtThePress {
    std::optional<GarmentId> inHand;
    bool isUnderPlaten = false; // the garment in hand, by a closed platen
    std::span<const OnTheRack> rack;
    std::optional<GarmentId> planned; // the first of those not begun
};

struct NextAtPress {
    enum class Kind { Nothing, GoOn, BringBack, TakeUp, AwaitRack };

    Kind kind = Kind::Nothing;
    std::optional<GarmentId> garment; // none only for Nothing

    bool operator==(const NextAtPress&) const = default;
};

// The garment on the rack to bring back first of those that are due; none while none is.
std::optional<GarmentId> dueOnRack(std::span<const OnTheRack> rack);

NextAtPress nextAtPress(const AtThePress& press);

} // namespace holdfast
