// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A percentage as a number of a sentence, with as many decimals as it has: "20", "7.5", "8.25".

#include "core/trade/money.h"
#include "core/trade/sentence_value.h"

namespace holdfast {

inline Decimal decimalOf(Percentage share) {
    const int places = share.hundredths % 100 == 0 ? 0 : share.hundredths % 10 == 0 ? 1 : 2;
    return {share.percent(), places};
}

} // namespace holdfast
