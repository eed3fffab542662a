// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Where a decal sits on a garment, in the words of the trade, and on which side of the garment that is.

#include "core/trade/phrase.h"

namespace holdfast {

enum class Placement { Chest, LeftChest, Front, Back, Sleeve };
Phrase placementName(Placement placement); // "left chest"

enum class Side { Front, Back, Sleeve };
Side sideOf(Placement placement);
Phrase sideName(Side side); // "front"

} // namespace holdfast
