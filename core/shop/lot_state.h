// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// What is still to be done before a lot of blanks can go under the platen. A style that is pressed as it
// comes needs no wash.

#include "core/facts/blank_lot.h"

namespace holdfast {

struct ShopFacts;

enum class LotState {
    Ready,
    Drying, // in the washer, or hung up and not found dry yet
    Unwashed,
    HasSoftener, // washed with it or dried with a sheet: to be washed again
};

LotState stateOf(const ShopFacts& facts, const BlankLot& lot);

} // namespace holdfast
