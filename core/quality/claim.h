// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Something came back: what a customer reported about a garment after it was handed over, and what was done
// about it.

#include "core/trade/dates.h"
#include "core/trade/ids.h"
#include "core/trade/phrase.h"

#include <optional>
#include <string>
#include <string_view>

namespace holdfast {

using ClaimId = Id<struct ClaimKind>;

enum class Fault { EdgeLifts, CameOff, Cracked, Bubbled, Faded, Scorched, BlankGaveWay, NotAsOrdered, Other };

enum class ClaimAnswer { PressedAgain, MadeAgain, MoneyBack, Advised, NotOurs };

struct Claim {
    ClaimId id;
    GarmentId garment;
    std::optional<DecalId> decal; // none: the garment as a whole
    LocalDate toldOn{};
    Fault fault = Fault::EdgeLifts;
    std::optional<int> washes; // before it showed, as the customer said; none: not known
    std::string note;
    std::optional<ClaimAnswer> answer; // none: nothing was done yet
    std::optional<LocalDate> answeredOn;
};

// Faults that pressing well, the right film and a clean blank prevent. The others say nothing of them.
bool isOfPressing(Fault fault);

Phrase faultWords(Fault fault);         // "edge lifts"
Phrase answerWords(ClaimAnswer answer); // "pressed again"

} // namespace holdfast
